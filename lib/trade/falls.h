// How a deck falls: the plane that fits its spot levels best, and every step along the fall, since a fitted plane alone
// is no check: a deck can fit 1:68 and hold a pond.
//
// Promises: the plane is the least-squares one (exact normal equations on centred coordinates, tested to 0.001 mm).
//   A step joins a level to the nearest one above it, no more than `off_line_deg` off the fall line; its length is
//   measured along the fall line. Each step is judged over the shortest run of at least `base_m` that contains it (the
//   whole run when it is shorter), because one step of 1 m cannot tell 1:70 from 1:100 with levels good to 2 mm.
// Comes from: plane geometry, docs/formulas.md#falls; base and angle are practice.
// Does not: find standing water (ponds.h), or know what fall is wanted. Heights in mm, places in m.
#pragma once

#include "trade/polygon.h"

#include <optional>
#include <vector>

namespace undersheet::trade {

struct Level {
    double x_m = 0;
    double y_m = 0;
    double z_mm = 0; // more is higher
};

struct FallRules {
    double base_m = 1.2;      // practice
    double off_line_deg = 45; // practice
};

struct Plane { // z = at_origin_mm + per_x x + per_y y
    double at_origin_mm = 0;
    double per_x_mm_m = 0;
    double per_y_mm_m = 0;
    double rms_mm = 0;                     // of the residuals, with n - 3; 0 for three levels
    std::vector<double> residuals_mm = {}; // measured less fitted, in the order given
    std::optional<double> fall_1_in = {};  // left out when level
    std::optional<double> toward_deg = {}; // downhill, anticlockwise from +x, 0 to 360
};

// From the lower to the higher of two neighbours; a negative rise is a back-fall.
struct Step {
    std::size_t lower = 0; // places in the levels given
    std::size_t upper = 0;
    double along_m = 0; // along the fall line
    double rise_mm = 0;
    double run_m = 0; // what it is judged over
    double run_rise_mm = 0;
    std::size_t run_lower = 0;
    std::size_t run_upper = 0;
};

struct Falls {
    Plane plane;
    std::vector<Step> steps;                  // empty when the deck is level
    std::optional<std::size_t> flattest = {}; // the step judged flattest
};

// 1:n for a length and a rise; negative for a back-fall, nothing when level.
[[nodiscard]] std::optional<double> fall_1_in(double along_m, double rise_mm);

// At least three levels that do not lie in one line.
[[nodiscard]] Result<Plane> fit_plane(const std::vector<Level>& levels);
[[nodiscard]] Result<Falls> falls(const std::vector<Level>& levels, const FallRules& rules = {});

// How far a level lies off the plane of its nearest others (at most eight); nothing when there are fewer than four.
[[nodiscard]] std::optional<double> off_neighbours_mm(const std::vector<Level>& levels, std::size_t i);

} // namespace undersheet::trade
