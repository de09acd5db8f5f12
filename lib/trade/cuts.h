// Which stock lengths to buy, and which pieces to cut from each.
//
// Promises: every piece comes out of one bar, with a kerf between pieces and before an offcut, none where a piece ends at the end
//   of its bar. The least length bought, or the least price where prices are given; then the fewest bars. `best` only where that
//   is proved; where it is not, no plan needs less than at_least. Exact: worked in whole units of the finest decimal place.
//   The order of the pieces changes nothing.
// From: branch and bound over mixes of bars and fillings under a column-generation bound, docs/formulas.md#cuts.
// Does not: know what offcuts are in the van, or turn a piece round that has a profile.
#pragma once

#include "base/decimal.h"
#include "base/result.h"

#include <cstdint>
#include <vector>

namespace undersheet::trade {

struct CutsInput {
    std::vector<Decimal> pieces_mm = {};   // at most 2000 pieces of 100 lengths, above 0
    std::vector<Decimal> stock_mm = {};    // lengths on sale, at most 20, above 0, at most 100 000
    Decimal kerf_mm;                       // 0 to 100
    std::vector<std::int64_t> prices = {}; // one per stock length, minor units, 0 to 10^9; or none
};

// When to stop looking for a proof. Counted, never timed, so that every machine stops at the same place.
struct CutsEffort {
    std::int64_t steps =
        200'000; // made with fractional plans, which tell whether an unfinished plan is hopeless
    std::int64_t fillings = 20'000'000; // ways to fill a bar looked at
};

struct Bar {
    Decimal stock_mm;
    std::vector<Decimal> pieces_mm = {}; // longest first
    Decimal offcut_mm;                   // what is left after the last cut, 0 for nothing
};

struct Cuts {
    std::vector<Bar> bars = {}; // longest pieces first
    Decimal bought_mm;
    Decimal waste_mm;       // bought less pieces: kerfs and offcuts
    std::int64_t price = 0; // 0 without prices
    bool best = false;
    Decimal at_least_mm;             // no plan buys less; without prices only
    std::int64_t at_least_price = 0; // no plan costs less; with prices only
};

[[nodiscard]] Result<Cuts> cuts(const CutsInput& in, const CutsEffort& effort = {});

} // namespace undersheet::trade
