// Walks round a roof whose corners are all quarter turns, from nothing but the lengths of its sides.
//
// Promises: every simple shape with these sides whose walk ends within `gap_m` of where it began, in a fixed order,
//   anticlockwise, the first side along +x.
// Comes from: plain walking; n sides close when (n + 4) / 2 corners turn left and the rest right.
// Does not: try more than 14 sides, or sides that were not taped (0); none come back then.
// Threads: pure functions on values.
#pragma once

#include "trade/polygon.h"

namespace undersheet::trade {

[[nodiscard]] std::vector<Polygon> square_walks(const std::vector<double>& sides_m, double gap_m);

} // namespace undersheet::trade
