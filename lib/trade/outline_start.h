// Finds rough shapes that the taped lengths could mean, so that the adjustment knows where to begin.
//
// Promises: every shape returned is simple and anticlockwise, A at (0,0), B on +x; the likeliest come first; the same
//   tapes give the same shapes on every machine.
// How: corner after corner is placed from two corners already there (where two tapes leave it on either side, both are
//   followed and crossings dropped); then every right-angled shape the sides can close to; then, for tapes that hold a
//   shape without building it up corner by corner, rough rounds. docs/formulas.md#outline.
// Does not: adjust or judge; a tape that is a metre wrong only spoils the order.
// Threads: pure functions on values.
#pragma once

#include "trade/outline_fit.h"

namespace undersheet::trade {

[[nodiscard]] std::vector<Polygon> first_shapes(std::size_t corners, const std::vector<TapedLine>& lines);

// Root mean square of how far the angles stand off 90 or 270 degrees, at most 30: 0 for any right-angled roof.
[[nodiscard]] double off_square_deg(const Polygon& polygon);

} // namespace undersheet::trade
