// Which packs to buy so that there is enough: tins, rolls and boxes are whole.
//
// Promises: least price; at the same price least left over; then fewest packs; then the packs that stand
//   first in the list. Proved best, worked in whole numbers, so 2.5 l is 2.5 l and a penny is a penny.
// From: the covering knapsack by dynamic programming, docs/formulas.md#packs.
// Does not: know what is on the shelf, or add to the need for waste. Refuses a need of over a million steps
//   of the sizes' greatest common measure rather than guess.
#pragma once

#include "base/decimal.h"
#include "base/result.h"

#include <cstdint>
#include <vector>

namespace undersheet::trade {

struct Pack {
    Decimal size;           // in the unit of the need, above 0
    std::int64_t price = 0; // minor units, 0 to 10^12
};

struct PacksInput {
    Decimal need; // 0 or more
    std::vector<Pack> packs = {};
};

struct PackCount {
    Decimal size;
    std::int64_t count = 0; // 1 or more; a pack that is not bought is not listed
};

struct Packs {
    std::vector<PackCount> mix = {}; // in the order of the list
    Decimal total;
    Decimal spare; // total less need
    std::int64_t price = 0;
};

[[nodiscard]] Result<Packs> packs(const PacksInput& in);

} // namespace undersheet::trade
