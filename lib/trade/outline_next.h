// Says which tape to take next: the one without which a corner is still loose, or the one that would check most.
//
// Promises: a pair is named exactly when the tapes cannot hold a shape of that many corners, whatever their lengths.
// Comes from: the rank of the rigidity matrix at corners in no special position (generic rigidity in the plane);
//   docs/formulas.md#outline.
// Does not: know obstacles; a tape that cannot be stretched is for the person to say.
// Threads: pure functions on values.
#pragma once

#include "trade/outline_fit.h"

namespace undersheet::trade {

struct CornerPair {
    std::size_t from = 0;
    std::size_t to = 0;
};

// The side, or failing that the diagonal, to tape next; nothing when the tapes hold the shape.
[[nodiscard]] std::optional<CornerPair> missing_tape(std::size_t corners,
                                                     const std::vector<TapedLine>& lines);

// For a shape that is held: the length known worst among those not taped yet, or among all when every one is.
[[nodiscard]] CornerPair most_telling_tape(const Strength& strength, const std::vector<TapedLine>& lines);

} // namespace undersheet::trade
