#include "trade/polygon.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>
#include <random>

using namespace undersheet;
using namespace undersheet::trade;

namespace {

const Polygon kRectangle{{0, 0}, {6, 0}, {6, 4}, {0, 4}};
// An L of 27 m²: 6.0 x 5.1 less a notch of 2.4 x 1.5 (by hand: 30.6 - 3.6).
const Polygon kEll{{0, 0}, {3.6, 0}, {3.6, 1.5}, {6, 1.5}, {6, 5.1}, {0, 5.1}};
const Polygon kBowTie{{0, 0}, {4, 3}, {4, 0}, {0, 3}};
constexpr unsigned kSeed = 20260611;

Polygon moved(const Polygon& polygon, double turn_deg, double scale, Point by) {
    const double turn = turn_deg * std::numbers::pi / 180;
    Polygon out;
    for (const Point p : polygon)
        out.push_back({by.x_m + scale * (p.x_m * std::cos(turn) - p.y_m * std::sin(turn)),
                       by.y_m + scale * (p.x_m * std::sin(turn) + p.y_m * std::cos(turn))});
    return out;
}

Polygon mirrored(const Polygon& polygon) {
    Polygon out;
    for (auto p = polygon.rbegin(); p != polygon.rend(); ++p) out.push_back({-p->x_m, p->y_m});
    return out;
}

} // namespace

TEST_CASE("an L of 6.0 by 5.1 less 2.4 by 1.5 has 27 square metres and 22.2 metres of edge (by hand)") {
    CHECK(area_m2(kEll) == Approx(27.0).margin(1e-12));
    CHECK(perimeter_m(kEll) == Approx(22.2).margin(1e-12));
    CHECK(is_simple(kEll));
    CHECK(is_anticlockwise(kEll));
}

TEST_CASE("inner angles are 90 degrees at an outer corner of an L and 270 at the inner one") {
    const std::vector<double> angles = angles_deg(kEll);
    for (const std::size_t i : {0U, 1U, 3U, 4U, 5U}) CHECK(angles[i] == Approx(90.0));
    CHECK(angles[2] == Approx(270.0));
}

TEST_CASE("the inner angles of any outline of n corners add up to (n - 2) times 180 degrees") {
    for (const Polygon& polygon : {kRectangle, kEll, Polygon{{0, 0}, {5, 1}, {2, 1.2}, {4, 6}}}) {
        double sum = 0;
        for (const double angle : angles_deg(polygon)) sum += angle;
        CHECK(sum == Approx(180.0 * (static_cast<double>(polygon.size()) - 2)));
    }
}

TEST_CASE("the centre of an L is the weighted centre of its two rectangles (by hand)") {
    // 3.6 x 5.1 at (1.8, 2.55) and 2.4 x 3.6 at (4.8, 3.3): x = (18.36*1.8 + 8.64*4.8)/27, y alike.
    CHECK(centre(kEll).x_m == Approx(2.76));
    CHECK(centre(kEll).y_m == Approx(2.79));
}

TEST_CASE("a bow tie crosses itself and the crossing edges are named") {
    CHECK_FALSE(is_simple(kBowTie));
    REQUIRE(crossing_edges(kBowTie).has_value());
    CHECK(*crossing_edges(kBowTie) == std::pair<std::size_t, std::size_t>{0, 2});
    const Done checked = check_outline(kBowTie);
    REQUIRE_FALSE(checked.ok());
    CHECK(checked.fault().where == "outline[2]");
}

TEST_CASE("an outline that touches itself, folds back, or has a doubled corner is not simple") {
    CHECK_FALSE(is_simple({{0, 0}, {4, 0}, {4, 3}, {2, 0}, {0, 3}}));
    CHECK_FALSE(is_simple({{0, 0}, {4, 0}, {2, 0}, {0, 3}}));
    CHECK_FALSE(is_simple({{0, 0}, {4, 0}, {4, 0}, {0, 3}}));
    CHECK_FALSE(is_simple({{0, 0}, {2, 0}, {4, 0}}));
    CHECK(is_simple({{0, 0}, {2, 0}, {4, 0}, {4, 3}})); // a corner on a straight edge is only superfluous
}

TEST_CASE("an outline is refused by field: too few corners, not a number, clockwise") {
    CHECK(check_outline({{0, 0}, {1, 0}}).fault().where == "outline");
    CHECK(check_outline({{0, 0}, {1, 0}, {1, NAN}}).fault().where == "outline[2]");
    CHECK(check_outline({{0, 0}, {0, 4}, {6, 4}, {6, 0}}).fault().code == Code::value_impossible);
    CHECK(check_outline(kEll).ok());
}

TEST_CASE("a point in the notch of an L is outside though its box holds it") {
    CHECK_FALSE(contains(kEll, Point{5, 0.5}));
    CHECK(contains(kEll, Point{3, 0.5}));
    CHECK(contains(kEll, Point{5, 1.5})); // on the edge
    CHECK(contains(kEll, Point{3.6, 0})); // on a corner
    CHECK_FALSE(contains(kEll, Point{5, 1.46}));
    CHECK(contains(kEll, Point{5, 1.46}, 0.05));
}

TEST_CASE("a way across the notch of an L leaves the roof, a way along its edges does not") {
    CHECK_FALSE(contains(kEll, Segment{{3, 0.2}, {6, 1.7}}));
    CHECK(contains(kEll, Segment{{3, 0.2}, {3, 5}}));
    CHECK(contains(kEll, Segment{{3.6, 0}, {3.6, 5.1}}));
    CHECK(contains(kEll, Segment{{3.6, 1.5}, {6, 1.5}}));
    CHECK_FALSE(contains(kEll, Segment{{3.6, 0}, {6, 1.5}}));
}

TEST_CASE("distances to a segment are square to it between its ends and to the end beyond them") {
    const Segment s{{0, 0}, {4, 0}};
    CHECK(distance_m(s, Point{2, 3}) == Approx(3));
    CHECK(distance_m(s, Point{7, 4}) == Approx(5));
    CHECK(distance_m(s, Segment{{2, 1}, {2, 5}}) == Approx(1));
    CHECK(distance_m(s, Segment{{2, -1}, {2, 5}}) == 0);
    CHECK(distance_m(s, Segment{{4, 0}, {9, 9}}) == 0);
    CHECK(distance_m(Segment{{1, 1}, {1, 1}}, Point{4, 5}) == Approx(5)); // a segment of no length
}

TEST_CASE(
    "the band of an L is 3.24 square metres: 22.2 x 0.15 less (5 outer - 1 inner) x 0.15 squared (by hand)") {
    CHECK(*band_area_m2(kEll, 0.15) == Approx(3.24).margin(1e-12));
    CHECK(*band_area_m2({{0, 0}, {3.2, 0}, {3.2, 2.1}, {0, 2.1}}, 0.15) == Approx(1.50).margin(1e-12));
}

TEST_CASE("insetting a rectangle takes the width off each side and nothing at width zero") {
    const Result<Polygon> inner = inset(kRectangle, 0.5);
    REQUIRE(inner.ok());
    CHECK(area_m2(*inner) == Approx(5.0 * 3.0));
    CHECK(inner->front().x_m == Approx(0.5));
    CHECK(area_m2(*inset(kRectangle, 0)) == Approx(24));
}

TEST_CASE("a chamfer shorter than the strip needs vanishes and its neighbours meet in a sharp corner") {
    // Chamfer legs 0.1 m, lost at a width of 0.1 / (2 - sqrt 2) = 0.171 m; from there the inset is the square
    // corner's.
    const Polygon chamfered{{0, 0}, {4, 0}, {4, 2.9}, {3.9, 3}, {0, 3}};
    CHECK(inset(chamfered, 0.17)->size() == 5);
    const Result<Polygon> inner = inset(chamfered, 0.5);
    REQUIRE(inner.ok());
    CHECK(inner->size() == 4);
    CHECK(area_m2(*inner) == Approx(3.0 * 2.0));
}

TEST_CASE("a strip is refused where the roof is just too narrow for it and taken just below") {
    CHECK(inset(kRectangle, 1.999).ok());
    const Result<Polygon> none = inset(kRectangle, 2.0);
    REQUIRE_FALSE(none.ok());
    CHECK(none.fault().where == "width_m");
    CHECK_FALSE(inset(kRectangle, 2.001).ok());
    CHECK_FALSE(inset(kRectangle, -0.1).ok());
    CHECK_FALSE(inset({{0, 0},
                       {2, 0},
                       {2, 1},
                       {4, 1},
                       {4, 0},
                       {6, 0},
                       {6, 3},
                       {4, 3},
                       {4, 1.2},
                       {2, 1.2},
                       {2, 3},
                       {0, 3}},
                      0.15)
                    .ok()); // the neck between the two halves is 0.2 m wide
}

TEST_CASE("area, girth and band keep their size when the plan is turned, shifted or mirrored, and scale as "
          "they should") {
    INFO("seed " << kSeed);
    std::mt19937 random(kSeed);
    std::uniform_real_distribution<double> turn(0, 360), scale(0.5, 3), shift(-50, 50);
    for (int i = 0; i < 200; ++i) {
        const double s = scale(random);
        const Polygon other = moved(kEll, turn(random), s, {shift(random), shift(random)});
        CHECK(area_m2(other) == Approx(27.0 * s * s));
        CHECK(perimeter_m(other) == Approx(22.2 * s));
        CHECK(*band_area_m2(other, 0.15 * s) == Approx(3.24 * s * s));
        CHECK(*band_area_m2(mirrored(other), 0.15 * s) == Approx(3.24 * s * s));
        CHECK(is_anticlockwise(mirrored(other)));
    }
}
