#include "trade/areas.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

using namespace undersheet;
using namespace undersheet::trade;

namespace {

constexpr auto kGutter = EdgeUse::gutter;
constexpr auto kKerb = EdgeUse::kerb;
constexpr auto kWall = EdgeUse::wall;
constexpr StripWidths kWidths{.band_mm = 150, .gutter_mm = 70, .kerb_mm = 90, .wall_mm = 150};

// An L of 27 m²: 6.0 x 5.1 less a notch of 2.4 x 1.5, with a rooflight of 1.00 x 1.00 and one outlet.
AreasInput ell() {
    return {.outline = {{0, 0}, {3.6, 0}, {3.6, 1.5}, {6, 1.5}, {6, 5.1}, {0, 5.1}},
            .edges = {kGutter, kKerb, kGutter, kWall, kWall, kKerb},
            .kerbed = {{.size_x_mm = 1000, .size_y_mm = 1000, .upstand_mm = 150}},
            .squares_mm = {400},
            .widths = kWidths};
}

AreasInput rectangle(double x_m, double y_m) {
    return {.outline = {{0, 0}, {x_m, 0}, {x_m, y_m}, {0, y_m}},
            .edges = {kGutter, kKerb, kWall, kKerb},
            .widths = kWidths};
}

Areas worked(const AreasInput& in) {
    auto found = areas(in);
    if (!found) throw std::runtime_error(one_line(found.fault()));
    return *found;
}

std::string refused_field(const AreasInput& in) {
    const auto found = areas(in);
    REQUIRE_FALSE(found.ok());
    return found.fault().where;
}

} // namespace

TEST_CASE("an L shares itself out into band, ring, outlet square and field to the mm² (by hand)") {
    const Areas found = worked(ell());
    CHECK(found.deck_m2 == 27.0);
    CHECK(found.perimeter_m == 22.2);
    CHECK(found.gutter_m == 6.0);
    CHECK(found.kerb_m == 6.6);
    CHECK(found.wall_m == 9.6);
    CHECK(found.band_m2 == 3.24); // 22.2 x 0.15 - (5 outer - 1 inner) x 0.15²
    CHECK(found.inside_m2 == 23.76);
    CHECK(found.rings_m2 == 0.69); // 1.3² - 1²
    CHECK(found.squares_m2 == 0.16);
    CHECK(found.field_m2 == 21.91);
}

TEST_CASE("contact adhesive goes on band, rings, squares, walls, upstands, gutters and kerbs (by hand)") {
    const Areas found = worked(ell());
    CHECK(found.walls_m2 == 1.44);
    CHECK(found.upstands_m2 == 0.6);
    CHECK(found.gutters_m2 == 0.42);
    CHECK(found.kerbs_m2 == 0.594);
    CHECK(found.contact_m2 == 7.144);
}

TEST_CASE("a dormer of 3.20 by 2.10 without an opening has 5.22 of field and 2.582 of contact (by hand)") {
    const Areas found = worked(rectangle(3.2, 2.1));
    CHECK(found.field_m2 == 5.22); // 6.72 - (10.6 x 0.15 - 4 x 0.15²)
    CHECK(found.contact_m2 == 2.582);
}

TEST_CASE("band, field and what the openings take are the whole deck, whatever its shape") {
    auto in = ell();
    for (const double turn_deg : {0.0, 17.0, 61.5}) {
        const double c = std::cos(turn_deg * std::numbers::pi / 180);
        const double s = std::sin(turn_deg * std::numbers::pi / 180);
        for (Point& p : in.outline) p = {p.x_m * c - p.y_m * s, p.x_m * s + p.y_m * c};
        const Areas found = worked(in);
        CHECK(found.band_m2 + found.field_m2 + found.holes_m2 + found.rings_m2 + found.squares_m2 ==
              Approx(found.deck_m2).margin(1e-5));
        CHECK(found.deck_m2 == Approx(27.0).margin(0.02)); // corners are set to whole mm
    }
}

TEST_CASE("a roof twice as long and wide has four times the deck and twice the edge") {
    const Areas small = worked(rectangle(3.2, 2.1));
    const Areas large = worked(rectangle(6.4, 4.2));
    CHECK(large.deck_m2 == Approx(4 * small.deck_m2));
    CHECK(large.perimeter_m == Approx(2 * small.perimeter_m));
    CHECK(large.walls_m2 == Approx(2 * small.walls_m2));
}

TEST_CASE("a corner a few tenths of a millimetre off counts as the whole millimetre it is nearest") {
    auto in = rectangle(3.2, 2.1);
    in.outline[1].x_m = 3.2003;
    in.outline[2] = {3.1996, 2.1002};
    CHECK(worked(in).deck_m2 == 6.72);
    CHECK(length_mm(edge(in.outline, 0)) == 3200);
}

TEST_CASE("areas without one use an edge, or with an opening of no size, are refused by name") {
    auto in = ell();
    in.edges.pop_back();
    CHECK(refused_field(in) == "edges");
    in = ell();
    in.kerbed[0].size_y_mm = 0;
    CHECK(refused_field(in) == "kerbed[0].size_y_mm");
    in = ell();
    in.squares_mm = {400, -1};
    CHECK(refused_field(in) == "squares_mm[1]");
    in = ell();
    in.widths.wall_mm = NAN;
    CHECK(refused_field(in) == "wall_mm");
}

TEST_CASE("an opening that with its ring just fills the deck inside the band is taken, one larger is not") {
    auto in = rectangle(2.0, 2.0); // 1.7 x 1.7 inside the band
    in.kerbed = {{.size_x_mm = 1400, .size_y_mm = 1400}};
    CHECK(worked(in).field_m2 == 0);
    in.kerbed[0].size_x_mm = 1401;
    CHECK(refused_field(in) == "kerbed");
}

TEST_CASE("a roof too narrow for its band is refused") {
    CHECK_FALSE(areas(rectangle(3.2, 0.29)).ok());
    CHECK(areas(rectangle(3.2, 0.31)).ok());
}
