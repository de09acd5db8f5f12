// The most worth of pieces that one bar can hold.
//
// Promises: no filling is worth more than at_most; pieces is one worth `worth`. The two are equal unless the look at fillings
//   was cut short, after a fixed number of them. A piece worth nothing is not taken.
// Comes from: the bounded knapsack by branch and bound after Dantzig, docs/formulas.md#cuts.
// Threads: pure function on values.
#pragma once

#include "trade/cut_task.h"

namespace undersheet::trade {

struct Filling {
    Counts pieces;
    std::int64_t worth = 0;
    std::int64_t at_most = 0;
};

// most: how many there are of each size. Worths are 0 or more, and worth times room below 2^62.
[[nodiscard]] Filling best_filling(const Amounts& sizes, const Counts& most, const Amounts& worths,
                                   std::int64_t room);

} // namespace undersheet::trade
