// Where water would stand on a deck: the spot levels made into triangles, flooded from the drains.
//
// Promises: on the surface that straight lines between neighbouring levels make, depth, area and litres are exact: such a
//   surface has its hollows and its lowest ways out at the levels themselves, so the spill height of a level is the lowest
//   of all ways to a drain, each as high as its highest level. Triangles that lie outside the outline do not count.
// Comes from: minimax paths over a Delaunay triangulation, docs/formulas.md#ponds.
// Does not: know what lies between two levels. A hollow smaller than the grid is not seen.
#pragma once

#include "trade/falls.h"

#include <array>
#include <cstddef>

namespace undersheet::trade {

struct PondsInput {
    std::vector<Level> levels;
    Polygon outline;                 // may be empty: then every triangle counts
    std::vector<std::size_t> drains; // levels from which water leaves; at least one
};

struct Pond {
    std::size_t deepest = 0; // the level where it is deepest
    double depth_mm = 0;
    double area_m2 = 0;
    double litres = 0;
    double water_mm = 0; // height of its surface, in the levels' own heights
    // Where it ends on the deck, in no order; open where it reaches the last levels.
    std::vector<Segment> shore = {};
};

[[nodiscard]] Result<std::vector<Pond>> ponds(const PondsInput& in); // deepest first

using Triangle = std::array<std::size_t, 3>; // places in the levels, anticlockwise
// Delaunay; levels in one line give none. Of four on a circle either diagonal may be taken.
[[nodiscard]] std::vector<Triangle> triangulate(const std::vector<Level>& levels);
// Of four levels on a circle takes the diagonal that holds the highest: water does not slip from corner to corner of a
// square between two higher ones, as in a fill with 4 neighbours.
void raise_diagonals(const std::vector<Level>& levels, std::vector<Triangle>& triangles);

} // namespace undersheet::trade
