// Decimals side by side as whole numbers of one unit, so that sums, measures and tables are exact.
//
// Promises: units() is exact or nothing; nothing stands for more units than can be counted exactly.
// Does not: round. The unit is 10^-places, and the caller keeps the places to get back.
#pragma once

#include "base/decimal.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace undersheet::trade {

[[nodiscard]] int finest_places(const std::vector<Decimal>& amounts); // 0 for none
[[nodiscard]] std::optional<std::int64_t> units(const Decimal& amount, int places);

} // namespace undersheet::trade
