// Holds every tape against all the others: what length they give it, and whether one tape alone explains the misfit.
//
// Promises: each tape that anything checks is left out once and the rest adjusted afresh. One is named only when the
//   rest then agree, with a tape to spare, and every other explanation fits worse by `clearer_by`.
// Comes from: data snooping by leaving one out (Baarda), without linearising; docs/formulas.md#outline.
// Does not: hunt for two wrong tapes at once; then none is named and the tape that fits worst is the one to repeat.
// Threads: pure functions on values.
#pragma once

#include "trade/outline_fit.h"

namespace undersheet::trade {

struct WithoutOne {
    std::optional<double> from_others_m{}; // nothing where no other tape checks this one
    double vpv = 0;                        // of the others among themselves
};

struct TapeCheck {
    std::vector<WithoutOne> without;    // one per tape
    std::optional<std::size_t> wrong{}; // the tape that is wrong
    std::vector<std::size_t> perhaps{}; // or those that could each be it
};

struct CheckRules {
    double accept_share = 0.95;
    double suspect_w = 3.29;
    double clearer_by = 10.83;
};

[[nodiscard]] TapeCheck checked_tapes(const Fit& whole, const Strength& strength,
                                      const std::vector<TapedLine>& lines, const CheckRules& rules);

} // namespace undersheet::trade
