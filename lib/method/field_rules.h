// What the fields of one entry must be to each other: heads add up, a coat ends before it is mated, "other" says what.
//
// Promises: a sum that is off is refused with its own arithmetic in the line; a rule that only asks becomes a question.
//   A number, time or day that is not there (or not looked at) breaks no rule; in a sum it counts as 0.
// Comes from: the rules of the kind in schema/kinds.json.
// Does not: compare with other entries.
// Threads: pure functions.
#pragma once

#include "entry/value.h"
#include "method/kinds.h"

#include <functional>

namespace undersheet::method {

// The value of a field, from what was typed or what stood before; nullptr when there is none.
using FindValue = std::function<const entry::Value*(const std::string& field)>;

// The questions that remain, or the first breach.
[[nodiscard]] Result<std::vector<std::string>> hold_rules(const Kind& kind, const FindValue& value);

} // namespace undersheet::method
