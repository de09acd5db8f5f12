#include "trade/falls.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace undersheet::trade;

namespace {

// Residuals and coefficients: numpy.linalg.lstsq (numpy 1.24.2), rms with n - 3, downhill anticlockwise from +x.
const std::vector<Level> kPlane1{{0, 0, 0},  {3, 0, 1},  {6, 0, -1}, {0, 2, 42}, {3, 2, 40},
                                 {6, 2, 44}, {0, 4, 81}, {3, 4, 83}, {6, 4, 79}};
const std::vector<Level> kPlane2{{0, 0, 10}, {4, 0, 34}, {0, 3, 55}, {4, 3, 82}, {2, 1.5, 43}};

std::vector<Level> along_y(const std::vector<double>& ys, const std::vector<double>& zs) {
    std::vector<Level> levels;
    for (const double x : {0.0, 1.0}) {
        for (std::size_t i = 0; i < ys.size(); ++i) levels.push_back({x, ys[i], zs[i]});
    }
    return levels;
}

} // namespace

TEST_CASE("nine levels on a deck of about 1:49 fit the plane that an outside least-squares solver finds") {
    const auto plane = fit_plane(kPlane1);
    REQUIRE(plane.ok());
    CHECK(plane->at_origin_mm == Approx(0.66667).margin(0.001));
    CHECK(plane->per_x_mm_m == Approx(-0.055556).margin(0.001));
    CHECK(plane->per_y_mm_m == Approx(20.25).margin(0.001));
    CHECK(*plane->fall_1_in == Approx(49.38).margin(0.05));
    CHECK(*plane->toward_deg == Approx(270.157).margin(0.01));
    CHECK(plane->rms_mm == Approx(1.9293).margin(0.001));
    const std::vector<double> residuals{-0.667, 0.5, -1.333, 0.833, -1.0, 3.167, -0.667, 1.5, -2.333};
    for (std::size_t i = 0; i < residuals.size(); ++i)
        CHECK(plane->residuals_mm[i] == Approx(residuals[i]).margin(0.001));
}

TEST_CASE("five levels on a deck that falls askew fit the plane that an outside least-squares solver finds") {
    const auto plane = fit_plane(kPlane2);
    REQUIRE(plane.ok());
    CHECK(plane->per_x_mm_m == Approx(6.375).margin(0.001));
    CHECK(plane->per_y_mm_m == Approx(15.5).margin(0.001));
    CHECK(*plane->fall_1_in == Approx(59.67).margin(0.05));
    CHECK(*plane->toward_deg == Approx(247.643).margin(0.01));
    CHECK(plane->rms_mm == Approx(1.7748).margin(0.001));
}

TEST_CASE("every neighbouring step of an even deck falls as its plane does") {
    const auto found = falls(along_y({0, 0.7, 1.4, 2.1}, {0, 16, 32, 48}));
    REQUIRE(found.ok());
    CHECK(found->steps.size() == 6);
    for (const Step& step : found->steps) CHECK(*fall_1_in(step.along_m, step.rise_mm) == Approx(43.75));
    CHECK(*found->plane.fall_1_in == Approx(43.75));
}

TEST_CASE("a step is judged over the shortest run of at least 1.2 m that holds it") {
    // Steps of 0.7 m: 10, 20, 10 mm. Two steps make 1.4 m; the whole chain is never needed.
    const auto found = falls(along_y({0, 0.7, 1.4, 2.1}, {0, 10, 30, 40}));
    REQUIRE(found.ok());
    for (const Step& step : found->steps) {
        CHECK(step.run_m == Approx(1.4));
        CHECK(step.run_rise_mm == Approx(30));
    }
}

TEST_CASE("a deck shorter than the base is judged over its whole run") {
    const auto found = falls(along_y({0, 0.4, 0.8}, {0, 4, 12}));
    REQUIRE(found.ok());
    for (const Step& step : found->steps) {
        CHECK(step.run_m == Approx(0.8));
        CHECK(step.run_rise_mm == Approx(12));
    }
}

TEST_CASE("a good plane can hide a flat step: the flattest place is named") {
    const auto found = falls(along_y({0, 1.3, 2.6, 3.9}, {0, 30, 31, 62}));
    REQUIRE(found.ok());
    REQUIRE(found->flattest.has_value());
    const Step& flattest = found->steps[*found->flattest];
    CHECK(flattest.rise_mm == Approx(1));
    CHECK(*found->plane.fall_1_in < 80);
}

TEST_CASE("a step that slopes the wrong way is negative, and a level one has no 1 in n") {
    CHECK(*fall_1_in(1.0, -10) == Approx(-100));
    CHECK_FALSE(fall_1_in(1.0, 0).has_value());
    const auto found = falls(along_y({0, 1.3, 2.6, 3.9}, {0, 30, 25, 60}));
    CHECK(found->steps[*found->flattest].rise_mm == Approx(-5));
}

TEST_CASE("a level deck has a plane without direction and no steps") {
    const auto found = falls(along_y({0, 1, 2}, {5, 5, 5}));
    REQUIRE(found.ok());
    CHECK_FALSE(found->plane.fall_1_in.has_value());
    CHECK(found->steps.empty());
}

TEST_CASE("a fall 45 degrees off the line still makes a step, one further off does not") {
    FallRules rules;
    rules.off_line_deg = 45;
    std::vector<Level> levels{{0, 0, 0}, {1, 0, 0}, {2, 0, 0}, {0, 1, 20}, {1, 1, 20}, {2, 1, 20}};
    const auto square = falls(levels, rules);
    for (const Step& step : square->steps) CHECK(levels[step.lower].x_m == levels[step.upper].x_m);
    const std::vector<Level> diagonal{{0, 0, 0}, {2, 0, 0}, {1, 1, 20}};
    CHECK(falls(diagonal, rules)->steps.size() == 2);
    rules.off_line_deg = 44;
    CHECK(falls(diagonal, rules)->steps.empty());
}

TEST_CASE("falls do not change when the roof is turned") {
    for (const double turn : {0.3, 1.0, 2.5}) {
        auto turned = kPlane1;
        for (Level& level : turned) {
            level = {level.x_m * std::cos(turn) - level.y_m * std::sin(turn),
                     level.x_m * std::sin(turn) + level.y_m * std::cos(turn), level.z_mm};
        }
        CHECK(*fit_plane(turned)->fall_1_in == Approx(*fit_plane(kPlane1)->fall_1_in));
        CHECK(falls(turned)->steps.size() == falls(kPlane1)->steps.size());
    }
}

TEST_CASE("two levels, levels in one line and levels that are no numbers are refused") {
    CHECK(fit_plane({{0, 0, 0}, {1, 0, 1}}).fault().where == "levels");
    CHECK_FALSE(fit_plane({{0, 0, 0}, {1, 1, 1}, {2, 2, 9}}).ok());
    CHECK_FALSE(fit_plane({{0, 0, 0}, {1, 0, 1}, {0, 1, std::nan("")}}).ok());
}

TEST_CASE("one level that sticks out is measured against the plane of its neighbours") {
    std::vector<Level> levels;
    for (int x = 0; x < 4; ++x) {
        for (int y = 0; y < 4; ++y) levels.push_back({1.0 * x, 1.0 * y, 20.0 * y});
    }
    levels[5].z_mm += 12;
    CHECK(*off_neighbours_mm(levels, 5) == Approx(12));
    CHECK_FALSE(off_neighbours_mm({{0, 0, 0}, {1, 0, 0}, {0, 1, 0}}, 0).has_value());
}
