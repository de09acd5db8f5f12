// Whether given bars hold given pieces, and how.
//
// Promises: `no` and `yes` are proved; `unknown` is said only when the effort is used up. The same task and effort have the same
//   answer, whatever order the pieces came in.
// Comes from: bin completion: each bar takes the longest piece that is left and is filled until nothing more fits, fullest bars
//   first; what is left is held against the fractional plan, docs/formulas.md#cuts.
// Threads: as cut_bound.h.
#pragma once

#include "trade/cut_bound.h"
#include "trade/cuts.h"

namespace undersheet::trade {

enum class Holds { yes, no, unknown };

struct CutSearch {
    Holds holds = Holds::unknown;
    std::vector<CutBar> plan = {}; // for yes
};

// Takes what it uses from the effort.
[[nodiscard]] CutSearch search_plan(const CutTask& task, const Counts& bars, CutBounds& bounds,
                                    CutsEffort& effort);

} // namespace undersheet::trade
