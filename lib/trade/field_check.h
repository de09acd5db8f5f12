// Looks at the numbers that go into a computation and keeps the first that cannot be, by the name of its
// field.
//
// Promises: NaN and infinities are refused everywhere; an absent optional value is never refused; limits
//   stand in the answer as they were given, so the line a person reads says what would be right, in any language.
// Does not: judge. A value can be possible and still far past a limit of the trade.
#pragma once

#include "base/fault.h"

#include <optional>
#include <string>
#include <string_view>

namespace undersheet::trade {

// The fault of every computation here: the field, what was found, what would be right.
[[nodiscard]] Fault impossible(std::string_view field, const Worded& detail, const Worded& clears);

// if (const auto wrong = FieldCheck().between("rh_pct", rh, 0, 100).fault()) return *wrong;
class FieldCheck {
public:
    FieldCheck& between(std::string_view field, std::optional<double> value, double least, double most);
    FieldCheck& above(std::string_view field, std::optional<double> value, double limit,
                      double most); // not the limit itself

    [[nodiscard]] const std::optional<Fault>& fault() const { return fault_; }

private:
    std::optional<Fault> fault_;
};

} // namespace undersheet::trade
