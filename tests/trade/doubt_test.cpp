#include "trade/doubt.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>

using namespace undersheet;
using namespace undersheet::trade;

TEST_CASE("the chance to conform is the normal chance of the room to the limit") {
    struct Row {
        double value, u, limit;
        Side side;
        double chance;
    };
    // Computed: scipy 1.10.1 norm.cdf.
    constexpr Row rows[] = {
        {18.0, 1, 20, Side::upper, 0.97725},   {19, 1, 20, Side::upper, 0.84134},
        {20, 1, 20, Side::upper, 0.5},         {18.355, 1, 20, Side::upper, 0.95002},
        {19.5, 0.8, 20, Side::upper, 0.73401}, {3.8, 0.5, 3, Side::lower, 0.9452},
        {3.2, 0.5, 3, Side::lower, 0.65542},   {152, 3, 150, Side::lower, 0.74751},
        {155, 3, 150, Side::lower, 0.95221},
    };
    for (const auto& row : rows) {
        CAPTURE(row.value, row.u, row.limit);
        CHECK(doubt({row.value, row.u, row.limit, row.side})->conforms_pct ==
              Approx(100 * row.chance).margin(0.0006));
    }
}

TEST_CASE("a guard band of 1.6449 u gives 95 % and one of 2 u gives 97.72 %") {
    // Computed; that 2 u is the r = 1 rule of JCGM 106 8.3.2 is from memory, not confirmed.
    CHECK(doubt({20 - 1.6449, 1, 20, Side::upper})->conforms_pct == Approx(95).margin(0.002));
    CHECK(doubt({20 - 2.0, 1, 20, Side::upper})->conforms_pct == Approx(97.72).margin(0.006));
}

TEST_CASE("an upper and a lower limit share the chance between them") {
    const double below = doubt({10.3, 0.7, 10, Side::upper})->conforms_pct;
    const double above = doubt({10.3, 0.7, 10, Side::lower})->conforms_pct;
    CHECK(below + above == Approx(100));
    CHECK(below < above);
}

TEST_CASE("a value without doubt meets a limit at the limit") {
    CHECK(doubt({20, 0, 20, Side::upper})->conforms_pct == 100);
    CHECK(doubt({20, 0, 20, Side::lower})->conforms_pct == 100);
    CHECK(doubt({20.001, 0, 20, Side::upper})->conforms_pct == 0);
    CHECK(doubt({19.999, 0, 20, Side::lower})->conforms_pct == 0);
}

TEST_CASE("an error known only by its limit has a standard uncertainty of that over the root of three") {
    CHECK(limit_u(3) == Approx(1.7320508)); // JCGM 100 4.3.7, from memory, not confirmed
    CHECK(limit_u(0) == 0);
}

TEST_CASE("a doubt that cannot be is refused by the name of its field") {
    CHECK(doubt({20, -0.001, 20, Side::upper}).fault().where == "u");
    CHECK(doubt({std::nan(""), 1, 20, Side::upper}).fault().where == "value");
    CHECK(doubt({1, 1, std::numeric_limits<double>::infinity(), Side::upper}).fault().where == "limit");
}
