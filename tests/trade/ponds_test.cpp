#include "trade/ponds.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

using namespace undersheet::trade;

namespace {

double covered_m2(const std::vector<Level>& levels) {
    double sum = 0;
    for (const Triangle& t : triangulate(levels)) {
        const auto at = [&](std::size_t i) { return Point{levels[t[i]].x_m, levels[t[i]].y_m}; };
        CHECK(turn_m2(at(0), at(1), at(2)) > 0);
        sum += turn_m2(at(0), at(1), at(2)) / 2;
    }
    return sum;
}

std::vector<Level> grid(int columns, int rows, double (*height_mm)(double, double)) {
    std::vector<Level> levels;
    for (int y = 0; y < rows; ++y) {
        for (int x = 0; x < columns; ++x) levels.push_back({0.5 * x, 0.5 * y, height_mm(0.5 * x, 0.5 * y)});
    }
    return levels;
}

struct Reference {
    std::size_t columns, rows;
    std::vector<double> levels_mm;
    double depth_mm;
};
const Reference kReference[] = {
#include "fixtures/reference/ponds.inc"
};

PondsInput input(const Reference& grid) {
    PondsInput in;
    for (std::size_t i = 0; i < grid.levels_mm.size(); ++i) {
        const std::size_t x = i % grid.columns, y = i / grid.columns;
        if (x == 0 || y == 0 || x + 1 == grid.columns || y + 1 == grid.rows) in.drains.push_back(i);
        in.levels.push_back({static_cast<double>(x), static_cast<double>(y), grid.levels_mm[i]});
    }
    return in;
}

} // namespace

TEST_CASE("the triangles of a grid cover it once") {
    CHECK(covered_m2(grid(5, 4, [](double, double) { return 0.0; })) == Approx(2.0 * 1.5));
}

TEST_CASE("a pyramid 1.2 by 0.8 m and 15 mm deep holds 4.8 litres") {
    // Closed form: base x height / 3.
    const PondsInput in{.levels = {{0, 0, 0}, {1.2, 0, 0}, {1.2, 0.8, 0}, {0, 0.8, 0}, {0.6, 0.4, -15}},
                        .outline = {},
                        .drains = {0}};
    const auto found = ponds(in);
    REQUIRE(found.ok());
    REQUIRE(found->size() == 1);
    CHECK(found->front().depth_mm == Approx(15));
    CHECK(found->front().litres == Approx(4.8));
    CHECK(found->front().area_m2 == Approx(0.96));
}

TEST_CASE("a 6 mm lip across a fall of 1:60, 4 m wide, holds back 4.32 litres on 1.44 square metres") {
    // Closed form of a wedge: area = h n w, volume = h² n w / 2, with h in m.
    std::vector<Level> levels;
    for (const double x : {0.0, 4.0}) {
        levels.push_back({x, 0, 6});      // top of the lip, over which it drains
        levels.push_back({x, 0.0001, 0}); // foot of the lip
        levels.push_back({x, 0.36, 6});   // where the fall is as high as the lip
        levels.push_back({x, 1.2, 20});
    }
    const auto found = ponds({.levels = levels, .outline = {}, .drains = {0, 4}});
    REQUIRE(found.ok());
    REQUIRE(found->size() == 1);
    CHECK(found->front().depth_mm == Approx(6));
    CHECK(found->front().area_m2 == Approx(1.44).epsilon(0.001));
    CHECK(found->front().litres == Approx(4.32).epsilon(0.001));
}

TEST_CASE("a cone of 64 sides comes near the litres of the round one, from below") {
    // Round cone r 0.5 m, 12 mm deep: pi r² d / 3 = 3.1416 l; the polygon's area is n/2 r² sin(2 pi/n).
    constexpr int kSides = 64;
    std::vector<Level> levels{{0, 0, -12}};
    for (int i = 0; i < kSides; ++i) {
        const double angle = 2 * std::numbers::pi * i / kSides;
        levels.push_back({0.5 * std::cos(angle), 0.5 * std::sin(angle), 0});
    }
    const auto found = ponds({.levels = levels, .outline = {}, .drains = {1}});
    REQUIRE(found.ok());
    const double polygon_l = 0.5 * kSides * 0.25 * std::sin(2 * std::numbers::pi / kSides) * 12 / 3;
    CHECK(found->front().litres == Approx(polygon_l));
    CHECK(found->front().litres == Approx(3.1416).epsilon(0.002));
}

TEST_CASE(
    "an even fall to the drain holds no water, and a hollow on it only what the lowest way out keeps back") {
    auto levels = grid(5, 5, [](double, double y) { return 20 * y; });
    std::vector<std::size_t> drains{0, 1, 2, 3, 4};
    CHECK(ponds({.levels = levels, .outline = {}, .drains = drains})->empty());
    levels[12].z_mm -= 25; // the middle: 20 becomes -5, the way out goes over the level below it at 10
    const auto found = ponds({.levels = levels, .outline = {}, .drains = drains});
    REQUIRE(found->size() == 1);
    CHECK(found->front().deepest == 12);
    CHECK(found->front().depth_mm == Approx(15));
}

TEST_CASE("on a square grid water fills a hollow as with 4 neighbours, not 8") {
    // Priority flood in Python, 4 neighbours, the border drains at its own level: level 8, 11 and 9, depth 6, 6 and 7. With
    // 8 neighbours the third would spill at 4, 2 deep, over the corner.
    const std::vector<std::pair<std::vector<std::vector<double>>, double>> grids{
        {{{10, 10, 10, 10, 10}, {10, 6, 5, 7, 10}, {9, 4, 2, 6, 8}, {10, 7, 6, 8, 10}, {10, 10, 10, 10, 10}},
         6},
        {{{12, 12, 12, 12}, {12, 5, 9, 12}, {12, 9, 6, 12}, {12, 11, 12, 12}}, 6},
        {{{9, 9, 9}, {9, 2, 9}, {9, 9, 4}}, 7}};
    for (const auto& [rows, depth_mm] : grids) {
        for (const bool is_mirrored : {false, true}) {
            PondsInput in;
            for (std::size_t y = 0; y < rows.size(); ++y) {
                for (std::size_t x = 0; x < rows[y].size(); ++x) {
                    if (x == 0 || y == 0 || x + 1 == rows[y].size() || y + 1 == rows.size())
                        in.drains.push_back(in.levels.size());
                    const auto along = static_cast<double>(x), up = static_cast<double>(y);
                    in.levels.push_back({is_mirrored ? -along : along, up, rows[y][x]});
                }
            }
            const auto found = ponds(in);
            REQUIRE(found.ok());
            REQUIRE_FALSE(found->empty());
            CHECK(found->front().depth_mm == Approx(depth_mm));
        }
    }
}

TEST_CASE("the deepest hollow of drawn grids agrees with an independent depression filling (scikit-image, "
          "computed)") {
    for (const Reference& grid : kReference) {
        const auto found = ponds(input(grid));
        REQUIRE(found.ok());
        REQUIRE_FALSE(found->empty());
        CHECK(found->front().depth_mm == Approx(grid.depth_mm));
    }
}

TEST_CASE("ponds do not change when the roof is turned, moved or mirrored") {
    auto levels = grid(5, 5, [](double x, double y) { return 20 * y + 3 * x; });
    levels[12].z_mm -= 25;
    const std::vector<std::size_t> drains{0, 1, 2, 3, 4};
    const auto straight = ponds({.levels = levels, .outline = {}, .drains = drains});
    for (Level& level : levels) level = {7 - level.y_m, 2 + level.x_m, level.z_mm + 100};
    const auto turned = ponds({.levels = levels, .outline = {}, .drains = drains});
    REQUIRE(turned->size() == straight->size());
    CHECK(turned->front().depth_mm == Approx(straight->front().depth_mm));
}

TEST_CASE("triangles across the notch of an L lie outside the roof and carry no water") {
    const Polygon outline{{0, 0}, {2, 0}, {2, 1}, {1, 1}, {1, 2}, {0, 2}};
    const std::vector<Level> levels{{0, 0, 0}, {2, 0, 0}, {2, 1, 0}, {1, 1, 20}, {1, 2, 0}, {0, 2, 0}};
    // The straight line from (2,1) to (1,2) would bridge the notch; inside the L every level drains to the first.
    const auto found = ponds({.levels = levels, .outline = outline, .drains = {0}});
    REQUIRE(found.ok());
    CHECK(found->empty());
}

TEST_CASE("water without a drain, or with one that is no level, is refused by name") {
    CHECK(ponds({.levels = {{0, 0, 0}}, .outline = {}, .drains = {}}).fault().where == "drains");
    CHECK(ponds({.levels = {{0, 0, 0}}, .outline = {}, .drains = {1}}).fault().where == "drains");
    CHECK(ponds({.levels = {{0, 0, std::nan("")}}, .outline = {}, .drains = {0}}).fault().where == "levels");
}
