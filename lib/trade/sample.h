// The chance that a random sample looks as good as it did, if so many of the whole lot were bad.
//
// Promises: chance_at_most is good to 1e-9 of itself; is_likelier is exact, ties included, because a chance
//   within that distance of the threshold is decided by counting in whole numbers.
// From: the hypergeometric distribution, docs/formulas.md#heads.
// Does not: check its input; heads.h does. Needs 0 <= bad, checked <= total <= kMostInLot.
#pragma once

#include <cstdint>

namespace undersheet::trade {

inline constexpr std::int64_t kMostInLot = 100'000;

struct Sample {
    std::int64_t total = 0;   // in the lot
    std::int64_t bad = 0;     // supposed bad in the lot
    std::int64_t checked = 0; // drawn at random, none twice
    std::int64_t found = 0;   // bad ones among those
};

struct Share { // a chance as a fraction of two whole numbers, so that 5 % is exactly 5 %
    std::uint32_t parts = 0;
    std::uint32_t of = 1;
};

// P(at most `found` bad ones in the sample).
[[nodiscard]] double chance_at_most(const Sample& sample);

// Whether that chance is greater than the threshold, not equal to it.
[[nodiscard]] bool is_likelier(const Sample& sample, Share threshold);

} // namespace undersheet::trade
