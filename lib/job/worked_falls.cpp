// Falls against the least finished fall and the design fall, back-falls, and levels that do not fit their neighbours.
#include "job/levels.h"
#include "job/rules.h"

#include "trade/falls.h"

#include <algorithm>
#include <cmath>

namespace undersheet::job {
namespace {

using method::Rule;

std::vector<trade::Level> levels_of(const LevelRun& run) {
    std::vector<trade::Level> levels;
    for (const LevelPoint& point : run.points) levels.push_back({point.at.x_m, point.at.y_m, point.z_mm});
    return levels;
}

// The latest run worked out, when it has levels enough to fall at all.
struct WorkedOut {
    LevelRun run;
    trade::Falls falls;
};

std::optional<WorkedOut> work_out(const Context& context) {
    auto run = latest_run(context.job);
    if (!run) return std::nullopt;
    auto falls =
        trade::falls(levels_of(*run), {context.limit("fall_base_m"), context.limit("fall_line_deg")});
    if (!falls) return std::nullopt;
    return WorkedOut{*std::move(run), *std::move(falls)};
}

Worded one_in(const std::optional<double>& n) {
    return n ? worded("1:{n}", {{"n", fixed(*n, 1)}}) : Worded("level");
}

Worded one_in(double along_m, double rise_mm) {
    const auto n = trade::fall_1_in(along_m, rise_mm);
    return one_in(n ? std::optional(std::fabs(*n)) : n);
}

std::string place_of(const LevelRun& run, std::size_t i) {
    return entry::place_text(run.points[i].reading->place);
}

std::string run_place(const LevelRun& run, const trade::Step& step) {
    return place_of(run, step.run_lower) + ">" + place_of(run, step.run_upper);
}

std::vector<const entry::Entry*> ends_of(const LevelRun& run, std::size_t lower, std::size_t upper) {
    return {run.points[lower].reading->entry, run.points[upper].reading->entry};
}

std::string sum_of(const trade::Step& step) {
    return shortest(step.run_rise_mm, 1) + " mm in " + fixed(step.run_m, 2) +
           " m along the fall = " + one_in(step.run_m, step.run_rise_mm).text;
}

// Each run once, flattest first: steps of one run share its verdict.
std::vector<trade::Step> different_runs(const trade::Falls& falls) {
    std::vector<trade::Step> runs;
    for (const trade::Step& step : falls.steps) {
        const bool known = std::any_of(runs.begin(), runs.end(), [&](const trade::Step& other) {
            return other.run_lower == step.run_lower && other.run_upper == step.run_upper;
        });
        if (!known) runs.push_back(step);
    }
    return runs;
}

void falls(const Context& context, const Rule& rule, Findings& out) {
    const auto worked = work_out(context);
    if (!worked) return;
    const double least = context.limit("fall_1_in");
    const double doubt_mm = context.limit("fall_near_mm");
    for (const trade::Step& step : different_runs(worked->falls)) {
        const double over_mm = step.run_rise_mm - step.run_m * 1000 / least;
        if (over_mm > doubt_mm) continue;
        About about{.value = one_in(step.run_m, step.run_rise_mm),
                    .place = run_place(worked->run, step),
                    .working = {sum_of(step)}};
        about.entries = ends_of(worked->run, step.run_lower, step.run_upper);
        if (over_mm >= 0) {
            out.push_back(make_near(context, rule, rule.levels.front(), about));
            continue;
        }
        if (over_mm >= -doubt_mm)
            about.working.push_back("the levels' own doubt of " + shortest(doubt_mm, 1) +
                                    " mm could explain it");
        out.push_back(make_finding(context, rule, rule.levels.front(), about));
    }
}

void back_fall(const Context& context, const Rule& rule, Findings& out) {
    const auto worked = work_out(context);
    if (!worked) return;
    for (const trade::Step& step : worked->falls.steps) {
        if (step.rise_mm >= 0) continue;
        const std::string place = place_of(worked->run, step.lower) + ">" + place_of(worked->run, step.upper);
        const std::string sum =
            shortest(-step.rise_mm, 1) + " mm down in " + fixed(step.along_m, 2) + " m towards the high side";
        out.push_back(make_finding(context, rule, rule.levels.front(),
                                   {.value = one_in(step.along_m, step.rise_mm),
                                    .place = place,
                                    .working = {sum},
                                    .entries = ends_of(worked->run, step.lower, step.upper)}));
    }
}

void design_fall(const Context& context, const Rule& rule, Findings& out) {
    const auto worked = work_out(context);
    if (!worked) return;
    const auto& fall = worked->falls.plane.fall_1_in;
    if (fall && *fall <= context.limit("design_fall_1_in")) return;
    out.push_back(make_finding(context, rule, rule.levels.front(),
                               {.value = one_in(fall),
                                .working = {"plane through " + std::to_string(worked->run.points.size()) +
                                            " levels, rms " + fixed(worked->falls.plane.rms_mm, 1) + " mm"},
                                .entries = {worked->run.points.front().reading->entry}}));
}

void off_plane(const Context& context, const Rule& rule, Findings& out) {
    const auto run = latest_run(context.job);
    if (!run) return;
    const auto levels = levels_of(*run);
    for (std::size_t i = 0; i < levels.size(); ++i) {
        const auto off_mm = trade::off_neighbours_mm(levels, i);
        if (!off_mm || std::fabs(*off_mm) <= context.limit("level_off_plane_mm")) continue;
        out.push_back(make_finding(context, rule, rule.levels.front(),
                                   {.reading = run->points[i].reading, .value = fixed(*off_mm, 1)}));
    }
}

} // namespace

void add_worked_falls(WorkedTable& table) {
    table["falls"] = falls;
    table["back_fall"] = back_fall;
    table["design_fall"] = design_fall;
    table["off_plane"] = off_plane;
}

} // namespace undersheet::job
