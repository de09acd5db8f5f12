// A wall edge seen from the deck: the heights that were measured along it, against the least that is asked for.
//
// Promises: along the edge to scale, upwards larger than life; every figure on it stands in words below as well. A wall without a
//   height, or on a roof whose outline is not known, has no drawing.
#pragma once

#include "paper/making.h"

namespace undersheet::paper {

[[nodiscard]] std::optional<Drawing> wall_heights(const Making& making, const job::Edge& edge);

} // namespace undersheet::paper
