// Any JSON: what is taken can be written, for people and strictly, and both read back to the same value.
#include "base/text.h"
#include "entry/json.h"
#include "tests/fuzz/targets.h"

namespace undersheet::fuzz {

void read_any_json(std::string_view bytes) {
    const auto read = entry::read_json(bytes);
    if (!read) return promise_readable(read.fault());
    promise(is_utf8(bytes), "bytes that are no text were taken");
    for (const auto& written : {entry::write_strict(*read), entry::write_pretty(*read)}) {
        const auto again = entry::read_json(written);
        promise(again.ok(), "what was written cannot be read");
        promise(*again == *read, "what was written reads as something else");
    }
}

} // namespace undersheet::fuzz
