// Units as people type them beside a number, and the one unit each field is kept in.
//
// Promises: every conversion in the table is an exact product of decimals but four, which have no end in decimals and are
//   rounded to six places: km/h and knots to m/s, minutes to hours, seconds to minutes. What was typed is kept by the caller.
// Comes from: the inch is 25.4 mm and the foot 304.8 mm exactly, the mile 1609.344 m (so 1 mph is 0.44704 m/s): the
//   international yard and pound agreement of 1959, as in NIST SP 811 appendix B; the knot is 1852 m an hour: SI brochure.
// Does not: convert Fahrenheit, which nobody reads off an instrument on these roofs; it is refused with what to type.
// Threads: pure functions.
#pragma once

#include "base/decimal.h"

#include <string>
#include <string_view>

namespace undersheet::method {

// The unit that ends a field's name, "" when none does: "pct" of reading_pct, "m" of m, "kg_m3" of density_kg_m3.
[[nodiscard]] std::string_view unit_in_name(std::string_view field_name);

// As it stands behind a number: "%", "°C", "m/s"; "" for "".
[[nodiscard]] std::string_view unit_sign(std::string_view unit);

// What may be typed behind a number of that unit: "mm, cm, m, in"; "" when there is no such unit.
[[nodiscard]] std::string typed_units(std::string_view unit);

// `value` typed with `typed` behind it ("" for nothing), in the unit of the field. A unit of another quantity, or none
// that we know, is unit_unknown and names what may be typed.
[[nodiscard]] Result<Decimal> converted(const Decimal& value, std::string_view typed, std::string_view unit);

} // namespace undersheet::method
