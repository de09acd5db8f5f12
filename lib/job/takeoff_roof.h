// The roof as the take-off counts it: edges in whole mm with what is on them, patches by their sort, openings with their sizes.
//
// Promises: what the record lacks is gathered and refused in one line, with the commands that would record it.
// Does not: know an allowance. Parts that are left out or not needed are not counted; the hole of an opening that somebody
//   else cuts is still no field.
#pragma once

#include "job/job.h"

#include <set>

namespace undersheet::job {

struct CountedEdge {
    std::string name, kind; // gutter, kerb, wall
    std::int64_t length_mm = 0;
    bool is_slope = false;           // a pitched roof stands behind it
    std::set<std::string> work = {}; // stages that are ours along it: plate, band, wall, chase, cover, kerb
    [[nodiscard]] bool has(const std::string& stage) const { return work.contains(stage); }
};

struct CountedOpening {
    std::string label, type;
    double size_x_mm = 0, size_y_mm = 0, upstand_mm = 0; // only of those that stand on a curb
    bool is_ours = true;                                 // we supply it
    bool is_done_by_us = true;                           // its part is not left out
};

enum class PatchSort { wall, inner, opening, extra };
struct CountedPatch {
    std::string what; // "D", "R1-2"
    PatchSort sort = PatchSort::extra;
};

struct CountedRoof {
    trade::Polygon outline; // corners on whole mm
    std::vector<CountedEdge> edges;
    std::vector<CountedOpening> openings;
    std::vector<CountedPatch> patches;
    std::vector<std::string> outer_corners, inner_corners; // where two free edges meet
    std::vector<std::string> stop_ends;                    // where a free edge meets a wall
};

// All edges along which that stage is ours, in metres.
[[nodiscard]] double metres_of(const CountedRoof& roof, const std::string& stage);
[[nodiscard]] bool stands_on_curb(std::string_view opening_type);

[[nodiscard]] Result<CountedRoof> counted_roof(const Job& job);

} // namespace undersheet::job
