// How much of the roof each adhesive covers: the band round the edges, the field inside it, the rings round openings, the
// strips up the walls and over the trims.
//
// Promises: corners are first set to whole mm and lengths counted in whole mm, so that a sum can be followed with a pencil;
//   areas are then good to 1 mm². Band and field share nothing, and with what the openings take they are the whole deck.
// Comes from: plane geometry, docs/formulas.md#areas. Widths are practice and come from the method.
// Does not: take off what a ring and the band, or two rings, share; an opening that near an edge gets a little more contact
//   adhesive and a little less of the field's.
// Threads: pure functions on values.
#pragma once

#include "trade/polygon.h"

#include <cstdint>
#include <vector>

namespace undersheet::trade {

enum class EdgeUse { gutter, kerb, wall };

// Something through the deck that the sheet is turned up round: a rooflight's curb. Measured outside.
struct Kerbed {
    double size_x_mm = 0;
    double size_y_mm = 0;
    double upstand_mm = 0;
};

struct StripWidths {
    double band_mm = 0;   // on the deck: along every edge and round every kerbed opening
    double gutter_mm = 0; // over the gutter's back plate
    double kerb_mm = 0;   // over the kerb
    double wall_mm = 0;   // up the wall
};

struct AreasInput {
    Polygon outline;                     // anticlockwise
    std::vector<EdgeUse> edges;          // one an edge, in order from AB
    std::vector<Kerbed> kerbed = {};     // openings with a ring round them and an upstand
    std::vector<double> squares_mm = {}; // sides of the squares that outlets and pipes are bonded in
    StripWidths widths = {};
};

struct Areas {
    double deck_m2 = 0;
    double perimeter_m = 0;
    double gutter_m = 0, kerb_m = 0, wall_m = 0; // lengths of edge
    double band_m2 = 0;
    double inside_m2 = 0; // the deck without its band
    double holes_m2 = 0;  // kerbed openings
    double rings_m2 = 0, squares_m2 = 0;
    double field_m2 = 0;
    double gutters_m2 = 0, kerbs_m2 = 0, walls_m2 = 0, upstands_m2 = 0;
    double contact_m2 = 0; // everything contact adhesive goes on, one face
};

[[nodiscard]] Result<Areas> areas(const AreasInput& in);

// The outline with its corners on whole mm, as areas() counts it.
[[nodiscard]] Polygon in_whole_mm(const Polygon& outline);
[[nodiscard]] std::int64_t length_mm(const Segment& segment); // to the nearest whole mm

} // namespace undersheet::trade
