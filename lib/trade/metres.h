// What sums of metres share.
#pragma once

namespace undersheet::trade {

inline constexpr double kMmPerM = 1000;
inline constexpr double kHair_m = 1e-9; // sums of typed lengths are not exact in binary

} // namespace undersheet::trade
