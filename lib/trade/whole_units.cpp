#include "trade/whole_units.h"

#include <algorithm>

namespace undersheet::trade {
namespace {

constexpr std::int64_t kMostUnits = 1'000'000'000'000'000;

} // namespace

int finest_places(const std::vector<Decimal>& amounts) {
    int places = 0;
    for (const Decimal& amount : amounts) places = std::max(places, amount.places());
    return places;
}

std::optional<std::int64_t> units(const Decimal& amount, int places) {
    std::int64_t counted = amount.digits();
    for (int p = amount.places(); p < places; ++p) {
        if (counted > kMostUnits / 10) return std::nullopt;
        counted *= 10;
    }
    return counted;
}

} // namespace undersheet::trade
