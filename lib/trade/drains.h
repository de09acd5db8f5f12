// Which spot levels let the water go: those on a gutter line or at an outlet.
//
// Promises: where levels lie on the drain, those and no others, so that a lip just behind it still holds water back. Where
//   none does, the nearest stand for it, and `away_m` says how far off they are: what lies between is not known.
// Comes from: plane geometry; the two distances are practice.
// Does not: look at heights.
#pragma once

#include "trade/falls.h"

namespace undersheet::trade {

struct DrainRules {
    double on_m = 0.01; // this near is on the drain: places are typed to the centimetre (practice)
    double near_m =
        0.3; // levels no further off than the nearest and this stand for a gutter line with it (practice)
};

struct DrainLevels {
    std::vector<std::size_t> levels; // places in the levels given; empty only when there are none
    double away_m = 0;               // of the nearest; 0 where levels lie on the drain
};

// An outlet is a segment of no length.
[[nodiscard]] DrainLevels drain_levels(const std::vector<Level>& levels, const Segment& drain,
                                       const DrainRules& rules = {});

} // namespace undersheet::trade
