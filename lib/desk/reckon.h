// One computation of the trade on its own: JSON in, JSON out, and no book.
//
// Promises: what stands in schema/reckon.json is what a topic takes and gives: an unknown, missing or wrongly typed member,
//   and a value that cannot be, are refused by name. Defaults are those of the schema. Answers have at most nine decimals and
//   15 digits, members ascending, a line feed at the end; the same question has the same answer.
// Does not: judge. What is wanted of a figure is a limit of the method.
// Threads: pure functions.
#pragma once

#include "base/result.h"

#include <string>
#include <string_view>
#include <vector>

namespace undersheet::desk {

struct TopicLine {
    std::string topic = {}, says = {};
};

[[nodiscard]] std::vector<TopicLine> topics();
[[nodiscard]] Result<std::string> reckon(std::string_view topic, std::string_view json);
[[nodiscard]] Result<std::string>
reckon_schema(std::string_view topic); // both JSON Schemas, by "input" and "output"
[[nodiscard]] std::string json_of(const std::vector<TopicLine>& topics);

} // namespace undersheet::desk
