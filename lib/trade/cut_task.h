// Pieces to be cut from bars, in whole units, with the kerf already counted in. For the cut_*.h files; most readers want cuts.h.
//
// Promises: pieces fit in a bar when their sizes add up to no more than its room, because a size is a length and one kerf,
//   and a room is a stock length and one kerf. Sizes differ and stand longest first, stocks too.
// Does not: know millimetres or money; cost orders plans, and adds up over their bars.
#pragma once

#include <cstdint>
#include <vector>

namespace undersheet::trade {

using Counts = std::vector<int>;           // one per size, or one per stock
using Amounts = std::vector<std::int64_t>; // the same

struct CutStock {
    std::int64_t room = 0;
    std::int64_t cost = 0; // of one bar, above 0; a shorter stock costs less, or it would not be here
};

struct CutTask {
    Amounts sizes;
    Counts need; // of each size, above 0
    std::vector<CutStock> stocks;
    std::int64_t cost_step = 1; // every plan costs a multiple of this and one for each bar, or less than that
};

struct CutBar {
    std::size_t stock = 0;
    Counts pieces; // of each size
};

[[nodiscard]] std::int64_t total_of(const Counts& counts, const Amounts& each);
[[nodiscard]] int total_of(const Counts& counts);
[[nodiscard]] Counts without(Counts counts, const Counts& taken);
[[nodiscard]] bool has_none(const Counts& counts);
[[nodiscard]] std::size_t
first_of(const Counts& counts); // the first that is not 0; the size of the list for none

} // namespace undersheet::trade
