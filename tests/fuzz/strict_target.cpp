// The strict written form: what is taken has exactly one spelling, and means the same to another parser.
#include "entry/json.h"
#include "tests/fuzz/targets.h"

#include <nlohmann/json.hpp>

namespace undersheet::fuzz {

void read_strict_form(std::string_view bytes) {
    const auto read = entry::read_strict(bytes);
    if (!read) return promise_readable(read.fault());
    promise(bytes.size() <= 64U << 10U, "more than 64 KiB were taken");
    promise(entry::write_strict(*read) == bytes, "written again it is another text");
    const auto outside = nlohmann::json::parse(bytes, nullptr, false);
    promise(!outside.is_discarded(), "another parser refuses what was taken");
    if (bytes.find('.') == std::string_view::npos)
        promise(outside.dump() == bytes, "another parser reads something else");
}

} // namespace undersheet::fuzz
