#include "trade/drains.h"

#include <catch2/catch.hpp>

using namespace undersheet::trade;

namespace {

using Places = std::vector<std::size_t>;

const Segment kGutter{{0, 0}, {6, 0}};

} // namespace

TEST_CASE("levels on the gutter line let the water go, and the foot of a lip behind it does not") {
    const std::vector<Level> levels{{0, 0, 6}, {6, 0.01, 6}, {0, 0.011, 0}, {3, 1, 20}};
    const auto found = drain_levels(levels, kGutter); // a centimetre is still on it
    CHECK(found.levels == Places{0, 1});
    CHECK(found.away_m == 0);
}

TEST_CASE("where no level is on the gutter, those nearest to it stand for it, and it is said how far off "
          "they are") {
    const std::vector<Level> levels{{1, 0.5, 0}, {3, 0.8, 0}, {5, 0.801, 0}, {3, 2, 20}};
    const auto found = drain_levels(levels, kGutter); // up to 0.3 m more than the nearest
    CHECK(found.levels == Places{0, 1});
    CHECK(found.away_m == Approx(0.5));
}

TEST_CASE("an outlet takes the nearest level, and as many as are as near") {
    const Segment outlet{{2, 2}, {2, 2}};
    CHECK(drain_levels({{2, 2, 0}, {2.02, 2, 0}}, outlet).levels == Places{0});
    CHECK(drain_levels({{1, 2, 0}, {3, 2, 0}, {2, 3.2, 0}}, outlet).levels == Places{0, 1});
    CHECK(drain_levels({{1, 2, 0}, {3, 2, 0}}, outlet).away_m == Approx(1));
}

TEST_CASE("beyond the end of a gutter the distance counts to its end") {
    CHECK(drain_levels({{7, 0, 0}, {6, 0.5, 0}}, kGutter).away_m == Approx(0.5));
}

TEST_CASE("without levels nothing lets water go") { CHECK(drain_levels({}, kGutter).levels.empty()); }
