// A number as a roofer types it, with a comma or a unit, brought to the unit of its field and held against its range.
//
// Promises: "12,5", "15 cm" and "17mph" are read and converted as units.h says; two commas, or a comma with a point, are
//   refused because they can be read two ways. Outside the range is refused with value, range and unit; outside the usual
//   values, or a comma before exactly three digits, becomes a question, and the value stands.
// Does not: judge against a limit of the trade.
// Threads: pure functions.
#pragma once

#include "method/kinds.h"

namespace undersheet::method {

struct Number {
    Decimal value;
    std::vector<std::string> questions = {};
};

[[nodiscard]] Result<Number> typed_number(const Field& field, std::string_view typed);

} // namespace undersheet::method
