// Every limit that is compared with a typed figure: at it, just under it, just over it. The figures are written down here a
// second time, from the limits table of the trade (practice unless the method file names a source), so that a limit changed
// in the method file by accident is noticed.
#include "tests/support/site.h"

using namespace undersheet;
using test::Site;

namespace {

enum class Side {
    under_is_wrong,
    at_or_under_is_wrong,
    over_is_wrong,
    at_or_over_is_wrong,
    any_other_is_wrong
};

struct Row {
    std::string rule, severity, kind, place, part;
    std::string before; // the other fields of the record, JSON members
    std::string field;
    double limit;
    double step; // one step of the instrument
    Side side;
};

constexpr auto kUnder = Side::under_is_wrong;
constexpr auto kOver = Side::over_is_wrong;
constexpr auto kFrom = Side::at_or_over_is_wrong;
constexpr auto kOther = Side::any_other_is_wrong;

// A roof with every kind of edge, begun everywhere, so that any tick can be written.
void set_up(Site& site) {
    site.opened();
    site.record("edge", "08:00", R"({"kind":"gutter"})", "AB");
    site.record("edge", "08:00", R"({"kind":"kerb"})", "BC");
    site.record("edge", "08:00", R"({"kind":"wall"})", "CD");
    site.record("edge", "08:00", R"({"kind":"kerb"})", "DA");
    site.record("abutment", "08:00", R"({"type":"brick"})", "CD");
    for (const std::string part : {"plate/AB", "lay-out", "field/1", "band/AB", "wall/CD", "chase/CD",
                                   "patches/C", "cover/AB", "kerb/BC", "corners/A", "trim-off", "final"}) {
        site.record("begin", "08:00", "{}", "", part);
    }
}

bool speaks(const Row& row, double value) {
    Site site;
    set_up(site);
    const std::string data = "{" + row.before + (row.before.empty() ? "" : ",") + "\"" + row.field +
                             "\":" + shortest(value, 6) + "}";
    site.record(row.kind, "09:00", data, row.place, row.part);
    for (const auto& finding : site.judge("09:00").findings) {
        if (finding.rule == row.rule && !finding.near &&
            method::severity_word(finding.severity) == row.severity)
            return true;
    }
    return false;
}

bool wrong_at(const Row& row, double value) {
    switch (row.side) {
    case Side::under_is_wrong:
        return value < row.limit;
    case Side::at_or_under_is_wrong:
        return value <= row.limit;
    case Side::over_is_wrong:
        return value > row.limit;
    case Side::at_or_over_is_wrong:
        return value >= row.limit;
    case Side::any_other_is_wrong:
        return value != row.limit;
    }
    return false;
}

const std::vector<Row>& rows() {
    static const std::string tick_fix = R"("step":"fix")";
    static const std::vector<Row> all{
        // 3.1, 3.2
        {"high_edge", "note", "site", "", "", R"("edge_protection":"other")", "height_m", 6, 0.1, kOver},
        {"air_gap_small", "stop", "structure", "", "", R"("roof_kind":"cold","looked":"hole")",
         "air_gap_front_mm", 50, 1, kUnder},
        {"air_gap_small", "stop", "structure", "", "", R"("roof_kind":"cold","looked":"hole")",
         "air_gap_back_mm", 50, 1, kUnder},
        {"joist_spacing", "stop", "structure", "", "", "", "joist_spacing_mm", 600, 1, kOver},
        {"joist_sag", "stop", "structure", "", "", R"("span_m":2.5)", "sag_mm", 10, 0.1, kOver},
        {"insulation_between", "put_right", "structure", "", "",
         R"("roof_kind":"warm","insulation_place":"both","insulation_mm":100)", "between_joists_mm", 33.4,
         0.1, kOver},
        // 3.3
        {"board_thin", "put_right", "board", "B1", "", R"("support_mm":450)", "thickness_mm", 15, 0.1,
         kUnder},
        {"board_thin", "put_right", "board", "B1", "", R"("support_mm":451)", "thickness_mm", 18, 0.1,
         kUnder},
        {"board_thin", "put_right", "board", "B1", "", R"("thickness_mm":15)", "support_mm", 450, 1, kOver},
        {"support_wide", "stop", "board", "B1", "", "", "support_mm", 600, 1, kOver},
        {"gap", "note", "board", "B1", "", "", "gap_mm", 5, 0.1, kOver},
        {"gap", "put_right", "board", "B1", "", "", "gap_mm", 10, 0.1, kOver},
        {"gap_tight", "note", "board", "B1", "", "", "gap_mm", 1, 0.1, kUnder},
        {"board_swollen", "put_right", "board", "B1", "", "", "swollen_mm", 1, 0.1, kOver},
        // 3.4
        {"heads_short", "put_right", "heads", "", "", R"("total":100,"checked":100,"below":100)", "length_mm",
         50, 0.5, kUnder},
        {"heads_spacing", "put_right", "heads", "", "", R"("total":100,"checked":100,"below":100)",
         "spacing_edge_mm", 165, 1, kOver},
        {"heads_spacing_inside", "put_right", "heads", "", "", R"("total":100,"checked":100,"below":100)",
         "spacing_inside_mm", 330, 1, kOver},
        {"heads_edge", "note", "heads", "", "", R"("total":100,"checked":100,"below":100)",
         "edge_distance_mm", 8, 0.5, kUnder},
        {"heads_edge_split", "put_right", "heads", "", "",
         R"("total":100,"checked":100,"below":100,"split":"yes")", "edge_distance_mm", 8, 0.5, kUnder},
        {"heads_loose", "stop", "heads", "", "", R"("total":100,"checked":100,"below":100)", "loose", 0, 1,
         kOver},
        {"heads_quick", "note", "heads", "", "", R"("total":100,"checked":50,"below":50)", "minutes_min", 2,
         0.5, kUnder},
        // 3.5
        {"joint_step", "put_right", "joint", "B1|B2", "", "", "step_mm", 1, 0.1, kOver},
        {"joint_step", "stop", "joint", "B1|B2", "", "", "step_mm", 5, 0.1, kOver},
        // 3.6: at 20 °C the correction is nothing, so raw and corrected are alike
        {"deck_wet", "note", "moisture", "M1", "", R"("board_c":20,"setting":"2")", "reading_pct", 18, 0.1,
         kFrom},
        {"deck_wet", "stop", "moisture", "M1", "", R"("board_c":20,"setting":"2")", "reading_pct", 20, 0.1,
         kFrom},
        {"meter_cannot_tell", "put_right", "moisture", "M1", "", R"("board_c":20,"setting":"2")",
         "reading_pct", 7, 0.1, kUnder},
        {"meter_cannot_tell", "stop", "moisture", "M1", "", R"("board_c":20,"setting":"2")", "reading_pct",
         28, 0.1, kOver},
        // 3.9
        {"chase_low", "put_right", "chase", "CD+0.10", "", "", "height_mm", 150, 1, kUnder},
        {"chase_low", "stop", "chase", "CD+0.10", "", "", "height_mm", 100, 1, kUnder},
        {"airbrick_low", "put_right", "abutment", "CD", "", R"("type":"brick")", "airbrick_mm", 150, 1,
         kUnder},
        // 3.11
        {"opening_low", "put_right", "opening", "1,1", "", R"("label":"R1","type":"rooflight")", "upstand_mm",
         150, 1, kUnder},
        {"pipe_near_wall", "put_right", "opening", "1,1", "", R"("label":"P1","type":"pipe")", "to_wall_mm",
         150, 1, kUnder},
        {"pipe_near_pipe", "put_right", "opening", "1,1", "", R"("label":"P1","type":"pipe")", "to_pipe_mm",
         150, 1, kUnder},
        // 3.12
        {"crease_high", "put_right", "crease", "", "", R"("label":"K1","height_mm":9,"warmed":"yes")",
         "warmed_mm", 2, 0.1, kOver},
        {"crease_high", "stop", "crease", "", "", R"("label":"K1","height_mm":9,"warmed":"yes")", "warmed_mm",
         5, 0.1, kOver},
        // 3.14; winds are 17, 26, 23 and 35 mph in m/s
        {"too_cold", "stop", "air", "", "", R"("rh_pct":40,"surface_c":15)", "air_c", 5, 0.1, kUnder},
        {"too_cold", "stop", "air", "", "", R"("rh_pct":20,"air_c":15)", "surface_c", 5, 0.1, kUnder},
        {"too_hot", "stop", "air", "", "", R"("rh_pct":20,"surface_c":25)", "air_c", 25, 0.1, kOver},
        {"too_hot", "stop", "air", "", "", R"("rh_pct":20,"air_c":20)", "surface_c", 25, 0.1, kOver},
        {"humid", "note", "air", "", "", R"("air_c":10,"surface_c":20)", "rh_pct", 85, 0.5, kFrom},
        {"humid", "stop", "air", "", "", R"("air_c":10,"surface_c":20)", "rh_pct", 90, 0.5, kFrom},
        {"windy", "note", "air", "", "", R"("air_c":15,"rh_pct":50,"surface_c":15)", "wind_ms", 7.59968,
         0.001, kFrom},
        {"windy", "stop", "air", "", "", R"("air_c":15,"rh_pct":50,"surface_c":15)", "wind_ms", 10.28192,
         0.001, kFrom},
        {"gusty", "note", "air", "", "", R"("air_c":15,"rh_pct":50,"surface_c":15)", "gust_ms", 11.62304,
         0.001, kFrom},
        {"gusty", "stop", "air", "", "", R"("air_c":15,"rh_pct":50,"surface_c":15)", "gust_ms", 15.6464,
         0.001, kFrom},
        {"rain_ahead", "note", "air", "", "", R"("air_c":15,"rh_pct":50,"surface_c":15)", "rain_in_h", 2, 0.1,
         Side::at_or_under_is_wrong},
        // 3.17
        {"plate_proud", "put_right", "tick", "", "plate/AB", tick_fix + R"(,"plate_2_mm":1,"plate_3_mm":1)",
         "plate_1_mm", 0.5, 0.1, kUnder},
        {"plate_deep", "put_right", "tick", "", "plate/AB", tick_fix + R"(,"plate_1_mm":1,"plate_2_mm":1)",
         "plate_3_mm", 3, 0.1, kOver},
        {"nails_not_holes", "put_right", "tick", "", "cover/AB", R"("step":"fit","holes":24)", "nails", 24, 1,
         kOther},
        {"cover_short", "put_right", "tick", "", "wall/CD", R"("step":"trim")", "cover_mm", 100, 1, kUnder},
        {"tuck_short", "put_right", "tick", "", "chase/CD", R"("step":"tuck")", "tuck_mm", 25, 1, kUnder},
        {"wedges_far", "put_right", "tick", "", "chase/CD", R"("step":"wedge")", "wedge_spacing_mm", 450, 1,
         kOver},
        {"lap_short", "put_right", "tick", "", "chase/CD", R"("step":"tuck","tuck_mm":25)", "lap_mm", 100, 1,
         kUnder},
        {"primer_short", "put_right", "tick", "", "patches/C", R"("step":"prime")", "primer_past_mm", 5, 0.5,
         kUnder},
        {"primer_quick", "note", "tick", "", "patches/C", R"("step":"prime","primer_past_mm":8)",
         "primer_dry_min", 5, 1, kUnder},
        {"primer_slow", "note", "tick", "", "patches/C", R"("step":"prime","primer_past_mm":8)",
         "primer_dry_min", 15, 1, kOver},
        {"foam", "put_right", "tick", "", "kerb/BC", R"("step":"foam","foam_free_mm":20)", "foam_left_mm", 5,
         0.1, kUnder},
        {"foam", "put_right", "tick", "", "kerb/BC", R"("step":"foam","foam_free_mm":20)", "foam_left_mm", 7,
         0.1, kOver},
        {"legs", "put_right", "tick", "", "corners/A", R"("step":"fit")", "legs_glued", 1, 1, kOther},
    };
    return all;
}

} // namespace

TEST_CASE("a figure at its limit, one step under it and one step over it is judged as the limit says") {
    for (const Row& row : rows()) {
        for (const double value : {row.limit - row.step, row.limit, row.limit + row.step}) {
            if (value < 0 && row.field == "loose") continue; // fewer than none cannot be recorded
            INFO(row.rule << " " << row.severity << ": " << row.field << " = " << value << ", limit "
                          << row.limit);
            // The worse level of a ladder speaks in place of the milder one.
            const bool expected = wrong_at(row, value);
            const bool worse_speaks = [&] {
                for (const Row& other : rows()) {
                    const bool ladder = other.rule == row.rule && other.field == row.field &&
                                        other.before == row.before && other.severity != row.severity;
                    const bool worse = ladder && (other.severity == "stop" || row.severity == "note") &&
                                       row.severity != "stop";
                    if (worse && other.side == row.side && wrong_at(other, value)) return true;
                }
                return false;
            }();
            CHECK(speaks(row, value) == (expected && !worse_speaks));
        }
    }
}

TEST_CASE("a height on the good side of its limit but within the tape's error is near, not wrong") {
    for (const auto& [height, near] : std::vector<std::pair<std::string, bool>>{
             {"149", false}, {"150", true}, {"153", true}, {"154", false}}) {
        Site site;
        set_up(site);
        site.record("chase", "09:00", R"({"height_mm":)" + height + "}", "CD+0.10");
        site.record("chase", "09:00", R"({"height_mm":200})", "CD+1.00");
        bool found = false;
        for (const auto& finding : site.judge("09:00").findings)
            found = found || (finding.rule == "chase_low" && finding.near);
        INFO(height);
        CHECK(found == near);
    }
}

TEST_CASE("a door threshold is judged by 75 mm, near to 78, and below stops until a named decision") {
    struct Case {
        std::string height, verdict;
    };
    for (const auto& [height, verdict] :
         std::vector<Case>{{"74", "stop"}, {"75", "note near"}, {"78", "note near"}, {"79", ""}}) {
        Site site;
        set_up(site);
        site.record("abutment", "08:30", R"({"type":"door_threshold"})", "CD");
        site.record("chase", "09:00", R"({"height_mm":)" + height + "}", "CD+0.10");
        site.record("chase", "09:00", R"({"height_mm":200})", "CD+1.00");
        std::string said;
        for (const auto& finding : site.judge("09:00").findings) {
            if (finding.rule == "chase_low")
                said = std::string(method::severity_word(finding.severity)) + (finding.near ? " near" : "");
        }
        INFO(height);
        CHECK(said == verdict);
    }
}
