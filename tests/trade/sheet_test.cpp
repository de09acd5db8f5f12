#include "trade/sheet.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

using namespace undersheet;
using namespace undersheet::trade;

namespace {

const std::vector<double> kRolls_m{3.05, 4.6, 6.1, 7.6, 9.15};

SheetInput ell() {
    // Worked by hand: gutter 150, kerb 200, wall 250 beyond the edge (practice).
    return {.outline = {{0, 0}, {3.6, 0}, {3.6, 1.5}, {6, 1.5}, {6, 5.1}, {0, 5.1}},
            .extra_mm = {150, 200, 150, 250, 250, 200},
            .rolls_m = kRolls_m,
            .cut_to_m = 0.1,
            .thickness_mm = 1.2,
            .density_kg_m3 = 1250};
}

Polygon turned(Polygon outline, double by_deg, double factor = 1) {
    const double c = std::cos(by_deg * std::numbers::pi / 180), s = std::sin(by_deg * std::numbers::pi / 180);
    for (Point& p : outline) p = {factor * (p.x_m * c - p.y_m * s), factor * (p.x_m * s + p.y_m * c)};
    return outline;
}

// The least area that any angle on a fine scan needs, from the definition; infinity where no roll is wide enough.
double scanned_m2(const Polygon& points, double cut_to_m, double step_deg) {
    double least = INFINITY;
    for (double angle = 0; angle < 180; angle += step_deg) {
        const Polygon at = turned(points, -angle);
        const auto [left, right] = std::minmax_element(
            at.begin(), at.end(), [](const Point& a, const Point& b) { return a.x_m < b.x_m; });
        const auto [low, high] = std::minmax_element(
            at.begin(), at.end(), [](const Point& a, const Point& b) { return a.y_m < b.y_m; });
        const double along = right->x_m - left->x_m, across = high->y_m - low->y_m;
        for (const double roll : kRolls_m)
            if (across <= roll + 1e-9)
                least = std::min(least, roll * std::ceil(along / cut_to_m - 1e-9) * cut_to_m);
    }
    return least;
}

} // namespace

TEST_CASE("the L of 27 m² takes 6.5 m off the roll of 6.10 m, 59.5 kg") {
    const auto found = *sheet(ell());
    CHECK(found.roll_width_m == 6.1);
    CHECK(found.length_m == Approx(6.5));
    CHECK(found.area_m2 == Approx(39.65));
    CHECK(found.weight_kg == Approx(59.475));
    CHECK(found.needs_along_m == Approx(6.45));
    CHECK(found.needs_across_m == Approx(5.5));
    CHECK(found.waste_pct == Approx(100 * (39.65 - 27.0) / 39.65));
}

TEST_CASE("a roll just wide enough is taken, one a tenth of a millimetre too narrow is not") {
    SheetInput in{.outline = {{0, 0}, {5, 0}, {5, 3}, {0, 3}},
                  .extra_mm = {0, 0, 0, 0},
                  .rolls_m = {3},
                  .thickness_mm = 1.2,
                  .density_kg_m3 = 1250};
    CHECK(sheet(in)->length_m == Approx(5));
    in.rolls_m = {2.9999};
    CHECK_FALSE(sheet(in).ok());
    in.rolls_m = {3.0001};
    CHECK(sheet(in)->length_m == Approx(5));
}

TEST_CASE("a roof turned any way takes the same sheet, and says how the sheet lies") {
    const auto straight = *sheet(ell());
    for (const double by_deg : {10.0, 33.3, 90.0, 147.7, 200.0}) {
        SheetInput in = ell();
        in.outline = turned(in.outline, by_deg);
        const auto found = *sheet(in);
        CHECK(found.area_m2 == Approx(straight.area_m2));
        CHECK(found.turn_deg == Approx(straight.turn_deg).margin(1e-6));
    }
}

TEST_CASE("a mirrored roof takes as much sheet") {
    SheetInput in = ell();
    for (Point& p : in.outline) p.x_m = -p.x_m;
    std::reverse(in.outline.begin(), in.outline.end());
    in.extra_mm = {250, 250, 150, 200, 150, 200}; // each edge keeps its own
    CHECK(sheet(in)->area_m2 == Approx(sheet(ell())->area_m2));
}

TEST_CASE("no angle of a fine scan needs less sheet") {
    std::mt19937 random(31);
    const auto between = [&](double least, double most) {
        return std::uniform_real_distribution<double>(least, most)(random);
    };
    for (int i = 0; i < 60; ++i) {
        // A quadrilateral askew, its corners each in a quarter of their own.
        SheetInput in{.outline = {{between(-4, -1), between(-3, -1)},
                                  {between(1, 4), between(-3, -1)},
                                  {between(1, 4), between(1, 3)},
                                  {between(-4, -1), between(1, 3)}},
                      .extra_mm = {150, 200, 250, 200},
                      .rolls_m = kRolls_m,
                      .cut_to_m = 0.01,
                      .thickness_mm = 1.2,
                      .density_kg_m3 = 1250};
        const auto found = *sheet(in);
        const double scanned = scanned_m2(*widened(in.outline, in.extra_mm), in.cut_to_m, 0.01);
        CAPTURE(i, found.area_m2, scanned);
        CHECK(found.area_m2 <= scanned + 1e-9);
    }
}

TEST_CASE("a sheet that cannot be worked out is refused by its field") {
    const auto field = [](SheetInput in) { return sheet(in).fault().where; };
    SheetInput in = ell();
    in.extra_mm.pop_back();
    CHECK_FALSE(field(in).empty());
    in = ell();
    in.rolls_m = {};
    CHECK_FALSE(field(in).empty());
    in = ell();
    in.rolls_m = {3.05};
    CHECK(field(in) == "rolls_m");
    CHECK(sheet(in).fault().clears == "it takes 5.5 m at the least");
}
