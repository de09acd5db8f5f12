// The roof seen from above, to scale: outline with corner letters, lengths and what each edge is, the low side, falls,
// sections and openings; and what one paper is about, as letters and figures beside their places.
//
// Promises: edges are told apart by how they are drawn and by a word, never by colour; everything on it is said in words,
//   too, here or in a table just before. A roof whose tapes do not fix its outline has no plan, and the paper says what is missing.
// Comes from: the roof as it was taped (job/roof.h), nothing rounded but what is printed.
#pragma once

#include "paper/making.h"

namespace undersheet::paper {

// A few characters beside a place; `says` is the same in words. What has no place on the roof is left out.
struct PlanMark {
    trade::Point at;
    std::string text;
    std::string says;
};

// A dashed line where something lies; `says` is the same in words, or "".
struct PlanShape {
    trade::Polygon points;
    bool is_closed = true;
    std::string says = {};
};

struct PlanAbout {
    void add_note(const std::string& more); // behind what is noted already

    std::string_view title_key; // "plan.findings"
    std::vector<PlanMark> marks = {};
    std::vector<PlanShape> shapes = {};
    std::string note = {}; // under the plan: what the figures mean
    bool says_all = true;  // in words, too: false where a table says it just before
    bool has_falls = true; // with the arrow downhill
    bool is_small = false; // so that it does not push the rest of the paper to another page
};

[[nodiscard]] std::optional<Drawing> roof_plan(const Making& making, const PlanAbout& about);

// The plan on the paper, or the sentence why there is none.
void add_plan(Making& making, const PlanAbout& about);

// A mark at a place as it is written, where that is a place on the plan.
void mark(const Making& making, const std::string& place, const std::string& text, PlanAbout& about);

// The patches that are to be there, squares as wide as the tape they are cut from; and water that would stand deeper than the
// method lets pass (plan_shapes.cpp).
void add_patches_to(const Making& making, PlanAbout& about);
void add_ponds_to(const Making& making, PlanAbout& about);

// a to z, aa, ab: names that are no corners' names.
[[nodiscard]] std::string small_letter(std::size_t i);

// What the plans of the several papers are about.
[[nodiscard]] PlanAbout plan_of_roof(const Making& making); // with its patches
[[nodiscard]] PlanAbout plan_of_boards(const Making& making);
[[nodiscard]] PlanAbout plan_of_findings(const Making& making); // by the numbers they have on the inspection
[[nodiscard]] PlanAbout plan_of_moisture(const Making& making);
[[nodiscard]] PlanAbout plan_of_levels(const Making& making);

} // namespace undersheet::paper
