// Reckon: the first line is the topic, the rest is what goes in. An answer is JSON, and the same every time.
#include "desk/reckon.h"
#include "entry/json.h"
#include "tests/fuzz/targets.h"

namespace undersheet::fuzz {

void reckon_anything(std::string_view bytes) {
    const auto end = std::min(bytes.find('\n'), bytes.size());
    const auto topic = bytes.substr(0, end);
    const auto input = bytes.substr(std::min(end + 1, bytes.size()));
    const auto answer = desk::reckon(topic, input);
    if (!answer) return promise_readable(answer.fault());
    const auto read = entry::read_json(*answer);
    promise(read.ok() && read->map() != nullptr, "an answer is no object");
    promise(answer->ends_with('\n'), "an answer does not end its line");
    const auto again = desk::reckon(topic, input);
    promise(again.ok() && *again == *answer, "the same question has two answers");
}

} // namespace undersheet::fuzz
