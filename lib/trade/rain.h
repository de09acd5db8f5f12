// How much water a roof sheds in a storm, and whether the gutter at its foot carries it.
//
// Promises: flow = rate x (roof + half the wall above it); capacity = 0.9 x coefficient x area^1.25 x long-gutter factor.
// From: docs/formulas.md#rain.
// Does not: ship a coefficient. The published ones disagree (2.67e-5 with a credit for fall in an older code, 2.78e-5 as the
//   newer one is remembered), so it has to be given, and a gutter without one is refused. No corners, outlets or downpipes.
#pragma once

#include "base/result.h"

#include <array>
#include <optional>

namespace undersheet::trade {

struct LongGutter {
    double length_per_depth;
    double factor;
};

struct RainRule {
    // Driving rain at 2 down to 1 across; clause not known, from memory, not confirmed.
    double wall_share = 0.5;
    double design_share = 0.9; // of the nominal capacity; from memory, not confirmed
    // BS EN 12056-3, second-hand table; straight lines between its rows. Longer than the last row is refused.
    std::array<LongGutter, 4> long_gutter{{{50, 1.0}, {100, 0.93}, {150, 0.86}, {200, 0.80}}};
};

enum class GutterShape { half_round, rectangular };

struct Gutter {
    GutterShape shape = GutterShape::half_round; // the coefficient has to be one for this shape
    double area_mm2 = 0;                         // of its cross-section, full
    std::optional<double> coefficient = {};      // l/s for area in mm2 to the power 1.25
    std::optional<double> length_m = {};         // with depth_mm: a long shallow gutter carries less
    std::optional<double> depth_mm = {};
};

struct RainInput {
    double roof_m2 = 0;
    std::optional<double> wall_m2 = {}; // the wall above that drains onto it
    double rate_l_s_m2 = 0;             // 0.021 is 75 mm an hour
    std::optional<Gutter> gutter = {};
};

struct Rain {
    double flow_l_s = 0;
    std::optional<double> capacity_l_s = {};
    std::optional<bool> enough = {}; // capacity is at least the flow
};

[[nodiscard]] Result<Rain> rain(const RainInput& in, const RainRule& rule = {});

} // namespace undersheet::trade
