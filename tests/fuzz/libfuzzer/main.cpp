// libFuzzer's way in, compiled once for each target with the name of its row.
#include "tests/fuzz/targets.h"

#include <cstddef>
#include <cstdint>

namespace {

const undersheet::fuzz::Target& the_target() {
    for (const auto& target : undersheet::fuzz::targets()) {
        if (target.name == UNDERSHEET_FUZZ_TARGET) return target;
    }
    throw std::logic_error("no target of that name: " UNDERSHEET_FUZZ_TARGET);
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static const auto& target = the_target();
    target.run(size == 0 ? std::string_view() : std::string_view(reinterpret_cast<const char*>(data), size));
    return 0;
}
