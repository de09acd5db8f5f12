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

#include <limits>

namespace undersheet::trade {

// How much is tried; the defaults are what a roof of twelve corners is given in a moment.
struct SearchEffort {
    std::size_t most_part_shapes = 256; // followed side by side while corners are placed
    std::size_t most_adjusted = 48;     // of the likeliest shapes
    // Above it a shape is given up (outline_fit.h).
    double hopeless_vpv = std::numeric_limits<double>::infinity();

    // For one of many searches: about the same time for any roof.
    [[nodiscard]] static SearchEffort again(std::size_t corners, double hopeless_vpv);
};

[[nodiscard]] std::vector<Polygon> first_shapes(std::size_t corners, const std::vector<TapedLine>& lines,
                                                std::size_t most_part_shapes);

// Root mean square of how far the angles stand off 90 or 270 degrees, at most 30: 0 for any right-angled roof.
[[nodiscard]] double off_square_deg(const Polygon& polygon);

} // namespace undersheet::trade
