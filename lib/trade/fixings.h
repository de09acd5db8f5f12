// How long and how thick a nail or screw has to be for a board of a given thickness.
//
// Promises: length is the greater of 50 mm and 2.5 times the board; diameter is 0.16 of the board.
// From: guidance of the wood panel industry (WPIF), found second-hand; docs/formulas.md#fixings.
// Does not: say where fixings go or how many; spacing is a rule of the method.
#pragma once

#include "base/result.h"

namespace undersheet::trade {

// WPIF panel guidance, found in a second text.
struct FixingRule {
    double least_length_mm = 50;
    double length_per_thickness = 2.5;
    double diameter_per_thickness = 0.16;
};

struct FixingsInput {
    double board_mm = 0; // above 0, at most 100
};

struct Fixings {
    double length_mm = 0;
    double diameter_mm = 0;
};

[[nodiscard]] Result<Fixings> fixings(const FixingsInput& in, const FixingRule& rule = {});

} // namespace undersheet::trade
