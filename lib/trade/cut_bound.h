// What pieces are worth beside whole bars: shows that bars cannot hold them, or what bars for them cost at the least.
//
// Promises: a bound that rules bars out is right. The worths come from a fractional plan in doubles, but they are rounded to whole
//   numbers, and what a bar can hold of them is then found afresh in whole numbers.
// Comes from: column generation (Gilmore and Gomory) with proper patterns only, docs/formulas.md#cuts.
// Does not: find plans. That nothing is ruled out says nothing.
// Threads: values, and an object that learns.
#pragma once

#include "trade/cut_task.h"

#include <optional>

namespace undersheet::trade {

struct CutBound {
    Amounts piece; // what one of each size is worth
    Amounts bar;   // no bar of a stock holds pieces worth more than this
};

[[nodiscard]] bool is_ruled_out(const CutBound& bound, const Counts& need, const Counts& bars);

// Keeps the ways to fill a bar that it came upon, so that the next question is quicker.
class CutBounds {
public:
    explicit CutBounds(const CutTask& task) : task_(task) {}

    [[nodiscard]] CutBound by_cost(); // worths that follow the cost of the bars, for the whole task
    // Worths that rule it out that these bars hold these pieces, if some are found before `steps` has come down to 0; holds for stocks with bars only.
    [[nodiscard]] std::optional<CutBound> against(const Counts& need, const Counts& bars,
                                                  std::int64_t& steps);
    [[nodiscard]] CutBound for_all_stocks(const Amounts& piece) const; // the same worths, for the whole task

private:
    const CutTask& task_;
    std::vector<CutBar> known_;
};

} // namespace undersheet::trade
