// One number of a JSON text as a plain decimal: "7e-05" is 0.00007, "12.50" is 12.5.
//
// Promises: exact up to 15 digits and 18 places; beyond that rounded, halves up. What is no number (RFC 8259, section 6), or
//   is too great or would vanish, is refused.
#pragma once

#include "base/result.h"

#include <string>
#include <string_view>

namespace undersheet::desk {

[[nodiscard]] Result<std::string> plain_number(std::string_view word);

} // namespace undersheet::desk
