// Chooses the one shape that the tapes mean, and owns up when they could mean another.
//
// Promises: the shape given fits best among those found; among shapes that fit about equally well the clearly
//   right-angled one is taken, else the one with the fewest corners pointing inwards, and the other is named with it.
// Comes from: first_shapes() adjusted by fit(); the choice between equals is practice. docs/formulas.md#outline.
// Does not: look at single tapes (outline_check.h).
// Threads: pure functions on values.
#pragma once

#include "trade/outline_next.h"
#include "trade/outline_start.h"

namespace undersheet::trade {

struct Rival {
    CornerPair tape;   // the length that differs most between the two shapes
    double here_m = 0; // in the shape chosen
    double there_m = 0;
    bool is_undecided = false; // nothing speaks for either
};

struct FoundShape {
    Fit fit;
    std::optional<Rival> rival;
};

// Nothing when no simple shape of that many corners comes near the lengths.
[[nodiscard]] std::optional<FoundShape> found_shape(std::size_t corners, const std::vector<TapedLine>& lines,
                                                    const SearchEffort& effort = {});

} // namespace undersheet::trade
