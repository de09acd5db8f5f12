// Money in whole minor units: an amount at a price, a share of a sum, each rounded half up to the unit.
//
// Promises: exact products of decimals, so a penny never hangs on how a double is held. Amounts and shares are not below 0.
// Does not: know a currency.
// Threads: pure functions.
#pragma once

#include "base/decimal.h"

#include <cstdint>

namespace undersheet::job {

// Refused where the product needs more digits than can be kept exactly.
[[nodiscard]] Result<std::int64_t> cost_of(const Decimal& amount, std::int64_t price);
[[nodiscard]] Result<std::int64_t> share_of(std::int64_t sum, const Decimal& pct);

} // namespace undersheet::job
