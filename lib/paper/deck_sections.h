// The sections of the inspection that are about the deck itself: what lies under it, boards, heads, joints, moisture,
// levels, outline.
#pragma once

#include "paper/making.h"

namespace undersheet::paper {

void add_structure(Making& making);
void add_boards(Making& making);
void add_fixings(Making& making);
void add_joints(Making& making);
void add_moisture(Making& making);
void add_levels(Making& making);
void add_outline(Making& making);

[[nodiscard]] std::string fall_words(const Making& making,
                                     std::optional<double> fall_1_in); // "1:43.8", "level"
// What was found on these readings, worst first: "put right, see 2 and 3", or that nothing was.
[[nodiscard]] Text verdict_on(const Making& making, const std::vector<const job::Reading*>& readings,
                              std::string_view fine_key);
[[nodiscard]] Text verdict_on(const Making& making, const job::Reading& reading, std::string_view fine_key);

} // namespace undersheet::paper
