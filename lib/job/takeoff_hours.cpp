// Hours of work: what there is to do, times what one of it takes.
#include "job/takeoff_making.h"

#include <cmath>

namespace undersheet::job {
namespace {

struct Quantity {
    double amount = 0;
    std::string unit = {};
};

struct StageHours {
    std::string name, title;
    Quantity of;
    std::string key;           // hours for one of it
    std::string base_key = {}; // and hours whatever the size
};

Quantity along(const Making& making, const std::string& stage) {
    return {metres_of(making.roof, stage), "m"};
}

Quantity pieces(std::size_t count) { return {static_cast<double>(count), ""}; }

std::vector<StageHours> hours_rows(const Making& making) {
    const trade::Areas& a = making.made.areas;
    std::vector<StageHours> rows{
        {"set_up", "setting up", {1, ""}, "hours_set_up_h"},
        {"deck", "deck", {a.deck_m2, "m2"}, "hours_deck_h_m2"},
        {"plate", "back plate", along(making, "plate"), "hours_plate_h_m"},
        {"lay_out", "lay out", {a.deck_m2, "m2"}, "hours_lay_out_h_m2", "hours_lay_out_h"},
        {"field", "field", {a.field_m2, "m2"}, "hours_field_h_m2"},
        {"band", "band, free edges", along(making, "band"), "hours_band_h_m"},
        {"wall", "walls", along(making, "wall"), "hours_wall_h_m"},
        {"chase", "chases", along(making, "chase"), "hours_chase_h_m"}};
    for (const CountedOpening& opening : making.roof.openings) {
        if (opening.is_done_by_us)
            rows.push_back({"opening_" + opening.label,
                            opening.type + " " + opening.label,
                            {1, ""},
                            "hours_" + opening.type + "_h"});
    }
    const std::size_t corners = making.roof.outer_corners.size() + making.roof.inner_corners.size();
    rows.push_back({"patches", "patches", pieces(making.roof.patches.size()), "hours_patch_h"});
    rows.push_back({"cover", "gutter covers", along(making, "cover"), "hours_cover_h_m"});
    rows.push_back({"kerb", "kerbs", along(making, "kerb"), "hours_kerb_h_m"});
    rows.push_back({"corners", "corners", pieces(corners), "hours_corner_h"});
    rows.push_back({"trim_off", "trim off", {1, ""}, "hours_trim_off_h"});
    rows.push_back({"final", "final look", {1, ""}, "hours_final_h"});
    rows.push_back({"hand_over", "hand over", {1, ""}, "hours_hand_over_h"});
    return rows;
}

TakeOffLine line_of(const Making& making, const StageHours& row) {
    const double each_h = making.rate(row.key);
    const double base_h = row.base_key.empty() ? 0 : making.rate(row.base_key);
    TakeOffLine line{.section = "labour",
                     .name = "hours_" + row.name,
                     .title = row.title,
                     .amount = in_millionths(base_h + row.of.amount * each_h),
                     .unit = "h",
                     .working = {(row.base_key.empty() ? "" : shortest(base_h, 3) + " h + ") +
                                 in_words(row.of.amount, row.of.unit) + " x " + shortest(each_h, 3) + " h"},
                     .allowances = making.rows({row.key})};
    if (!row.base_key.empty()) line.allowances.push_back(making.method.find_limit(row.base_key));
    return line;
}

// Quarters of a day: nobody plans finer.
void add_days(Making& making, double all_h) {
    const double people = making.rate("crew_people");
    const double day_h = making.rate("crew_day_h");
    const double days = all_h / people / day_h;
    making.made.lines.push_back({.section = "labour",
                                 .name = "days",
                                 .title = "days",
                                 .amount = in_millionths(std::round(days * 4) / 4),
                                 .unit = "day",
                                 .working = {in_words(all_h, "h") + " / " + shortest(people, 2) +
                                             " people / " + shortest(day_h, 2) + " h = " + shortest(days, 3)},
                                 .allowances = making.rows({"crew_people", "crew_day_h"})});
}

} // namespace

void add_hours(Making& making) {
    double all_h = 0;
    for (const StageHours& row : hours_rows(making)) {
        if (row.of.amount <= 0) continue;
        TakeOffLine line = line_of(making, row);
        all_h += line.amount.value();
        making.made.lines.push_back(std::move(line));
    }
    making.made.lines.push_back({.section = "labour",
                                 .name = "hours",
                                 .title = "all hours, of one person",
                                 .amount = in_millionths(all_h),
                                 .unit = "h",
                                 .working = {"the hours above"}});
    add_days(making, all_h);
}

} // namespace undersheet::job
