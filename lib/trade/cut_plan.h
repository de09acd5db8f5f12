// The plan of bars that costs least, or the best one found and what every plan costs at the least.
//
// Promises: best only when proved; otherwise no plan costs less than at_least. Every piece is in exactly one bar.
// Comes from: the mixes of bars in the order of their cost, each searched; docs/formulas.md#cuts.
// Threads: pure function on values.
#pragma once

#include "trade/cut_search.h"

namespace undersheet::trade {

struct CutPlan {
    std::vector<CutBar> bars;
    std::int64_t cost = 0;
    std::int64_t at_least = 0;
    bool best = false;
};

// The longest stock has room for the longest piece.
[[nodiscard]] CutPlan best_plan(const CutTask& task, CutsEffort effort);

} // namespace undersheet::trade
