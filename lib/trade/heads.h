// What a check of some of the fixing heads says of all of them: the share found proud, and how many it could
// still be.
//
// Promises: `at_most` is the largest number of proud heads on the roof that the sample does not rule out: the
//   largest D with P(X <= proud | total, D, checked) > 1 - confidence, exact, for a roof with a known number
//   of heads. `check_more` is the smallest number of further heads, all good, that brings `at_most` within
//   the allowance; the allowance is rounded down to whole heads on its exact decimal value (29 % of 100 is
//   29).
// From: hypergeometric distribution, one-sided bound, docs/formulas.md#heads.
// Does not: say that a roof has none proud; only checking every head does. Heads must have been picked
//   without looking.
#pragma once

#include "base/decimal.h"
#include "base/result.h"

#include <cstdint>
#include <optional>

namespace undersheet::trade {

struct HeadsInput {
    std::int64_t total = 0;   // heads on the roof, 1 to 100 000
    std::int64_t checked = 0; // 1 to total
    std::int64_t proud = 0;   // of those checked: every head not below the face, flush included
    Decimal confidence_pct = Decimal::of(95); // above 0, below 100, at most 6 places
    std::optional<Decimal> allow_pct = {};    // of all heads, 0 to 100, at most 9 places
};

struct Heads {
    double found_pct = 0;     // of those checked
    std::int64_t at_most = 0; // heads on the whole roof, those found included
    double at_most_pct = 0;
    // Left out without an allowance, or when more are already found proud than are allowed.
    std::optional<std::int64_t> check_more = {};
};

[[nodiscard]] Result<Heads> heads(const HeadsInput& in);

// How many heads to check so that, if all are good, no more than the allowance can be proud. Planning, before
// a look.
[[nodiscard]] Result<std::int64_t> heads_to_check(std::int64_t total, const Decimal& allow_pct,
                                                  const Decimal& confidence_pct = Decimal::of(95));

} // namespace undersheet::trade
