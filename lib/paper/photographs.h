// The photographs of a paper. Those taken at a place of the roof have a small letter: before what they show, and on the
// paper's plan where they were taken.
#pragma once

#include "paper/plan.h"

namespace undersheet::paper {

// Of the longer side of a photograph on a paper: 300 to the inch at 100 mm, where two stand side by side on A4, and some to look closer.
inline constexpr int kPhotograph_px = 1200;

using Photos = std::vector<const job::Reading*>;

// The letters of these photographs on a plan, with a note of what they are. Several taken at one place stand there together.
[[nodiscard]] PlanAbout with_photographs(const Making& making, const Photos& photos, PlanAbout about);

// Under their heading; the sentence with this key where there are none.
void add_photographs(Making& making, const Photos& photos, std::string_view none_key);

} // namespace undersheet::paper
