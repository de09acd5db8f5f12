// Numbers as other programs write them (7e-05, 0.30000000000000004), made into the plain decimals that are read here.
//
// Promises: everything else of the text stays as it is, line for line. A number of more than 15 digits is rounded to 15,
//   which no instrument gives. NaN, infinities, null, and numbers too great or too small to be kept are refused by the
//   name of their member: "layers[2].sd_m: NaN is no number".
// Does not: say whether the text is JSON; that is asked afterwards.
#pragma once

#include "base/result.h"

#include <string>
#include <string_view>

namespace undersheet::desk {

[[nodiscard]] Result<std::string> with_plain_numbers(std::string_view json);

} // namespace undersheet::desk
