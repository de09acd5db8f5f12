// The one sheet that covers the roof: the smallest rectangle off the rolls on sale that takes the outline with what each
// edge needs besides (over the gutter, over the kerb, up the wall).
//
// Promises: the outline is widened edge by edge, corners kept square to their edges; the rectangle is looked for along every
//   edge and at every quarter of a degree between, so a turned lay is found when it saves sheet. Weight is area x thickness
//   x density.
// Comes from: plane geometry, docs/formulas.md#sheet. What each edge needs is practice and comes from the method.
// Does not: join sheets, or know prices. Lengths in m, extras and thickness in mm.
#pragma once

#include "trade/polygon.h"

#include <optional>
#include <string>
#include <vector>

namespace undersheet::trade {

struct SheetInput {
    Polygon outline;              // anticlockwise
    std::vector<double> extra_mm; // one an edge, in order from AB
    std::vector<double> rolls_m;  // widths on sale
    double cut_to_m = 0.1;        // lengths are cut to whole steps of this
    double thickness_mm = 0;
    double density_kg_m3 = 0;
};

struct Sheet {
    double roll_width_m = 0;
    double length_m = 0;
    double turn_deg = 0; // from the first edge's direction to the sheet's length
    double area_m2 = 0;
    double waste_pct = 0; // 100 (sheet - outline) / sheet
    double weight_kg = 0;
    double needs_across_m = 0; // what the widened outline takes across the roll, and along it
    double needs_along_m = 0;
};

[[nodiscard]] Result<Sheet> sheet(const SheetInput& in);

// The outline with each edge moved out by its extra.
[[nodiscard]] Result<Polygon> widened(const Polygon& outline, const std::vector<double>& extra_mm);

[[nodiscard]] double sheet_weight_kg(double area_m2, double thickness_mm, double density_kg_m3);

} // namespace undersheet::trade
