// A run of trims along an edge, laid in pieces out of one stock length: how long each piece is.
//
// Promises: whole lengths from the start, the last piece what is missing. No piece is shorter than the shortest allowed, but a run
//   that is itself shorter stays one piece: a last piece that would be shorter is made just so long, and the one before gives.
//   With gaps the pieces and the gaps between them are the run; with laps the pieces less their laps are.
// From: common practice for the rule; the sums are whole numbers.
// Does not: choose the gap (movement.h) or cut the bars (cuts.h).
// Threads: pure function on values.
#pragma once

#include "base/result.h"

#include <cstdint>
#include <vector>

namespace undersheet::trade {

struct TrimRunInput {
    std::int64_t run_mm = 0;   // 1 to 1 000 000
    std::int64_t stock_mm = 0; // 1 to 100 000
    std::int64_t joint_mm = 0; // gap or lap: 0 to half the stock
    bool is_lapped = false;
    std::int64_t least_mm = 0; // the shortest piece allowed: 0 to half of the stock less the joint
};

[[nodiscard]] Result<std::vector<std::int64_t>>
trim_pieces(const TrimRunInput& in); // in mm, in order along the run

} // namespace undersheet::trade
