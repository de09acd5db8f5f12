// A site on which bonding may begin, so that one thing after another can be taken from it; and what holds a move, in words.
#pragma once

#include "tests/support/site.h"

#include <algorithm>

namespace undersheet::test {

// Everything in order for bonding at 10:00, on one gutter edge.
inline void make_ready(Site& site) {
    site.opened("07:00");
    site.record(
        "site", "07:00",
        R"({"edge_protection":"scaffold_rail","fragile":"none","cable_within_3m":"no","asbestos":"none_seen"})");
    site.record(
        "day", "07:00",
        R"({"date":"2026-06-11","people":["ip","wp"],"briefing":"yes","plan":"yes","solvent_care":"yes","data_sheet":"yes"})");
    site.record("edge", "07:00", R"({"kind":"gutter"})", "AB");
    site.record(
        "tin", "07:00",
        R"({"label":"F1","product":"deck_adhesive","batch":"F1","use_by":"2026-06-11","low_c":5,"high_c":25})");
    site.record("tin", "07:00", R"({"label":"C1","product":"contact_adhesive","batch":"C1"})");
    for (const std::string part : {"deck", "lay-out"}) {
        site.record("begin", "07:10", "{}", "", part);
        site.record("finish", "07:10", "{}", "", part);
        site.record("sign", "07:10", "{}", "", part);
    }
}

inline void record_all(Site& site, const std::string& air, const std::string& wipe,
                       const std::string& moisture) {
    site.record("moisture", moisture, R"({"label":"M1","reading_pct":12,"board_c":18,"setting":"2"})");
    site.record("joint", wipe, R"({"wipe":"clean"})");
    site.record("air", air, R"({"air_c":15,"rh_pct":50,"surface_c":16})");
}

inline std::string held(Site& site, const std::string& part, const std::string& now,
                        const std::string& data = "{}") {
    const auto refusal = site.wish("begin", part, now, data);
    REQUIRE(refusal.exists);
    return refusal.held_by.empty() ? std::string() : refusal.held_by.front().why;
}

// All that holds it, one line each: what is wrong, and what clears it.
inline std::vector<std::string> all_held(const job::Refusal& refusal) {
    REQUIRE(refusal.exists);
    std::vector<std::string> lines;
    for (const auto& line : refusal.held_by) lines.push_back(line.why + "; " + line.clears);
    return lines;
}

inline bool says(const std::vector<std::string>& lines, const std::string& wanted) {
    return std::find(lines.begin(), lines.end(), wanted) != lines.end();
}

} // namespace undersheet::test
