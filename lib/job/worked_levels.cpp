// Whether the spot levels can be believed, and what a changed deck puts in doubt.
#include "job/levels.h"
#include "job/rules.h"

#include <algorithm>
#include <cmath>

namespace undersheet::job {
namespace {

using method::Rule;

void closing(const Context& context, const Rule& rule, Findings& out) {
    const auto run = latest_run(context.job);
    if (!run || !run->closing_error_mm ||
        std::fabs(*run->closing_error_mm) <= context.limit("level_closing_mm"))
        return;
    out.push_back(make_finding(context, rule, rule.levels.front(),
                               {.reading = run->closing, .value = shortest(*run->closing_error_mm, 1)}));
}

void closing_missing(const Context& context, const Rule& rule, Findings& out) {
    const auto run = latest_run(context.job);
    if (!run || run->closing != nullptr || run->points.size() < 3) return;
    out.push_back(
        make_finding(context, rule, rule.levels.front(), {.entries = {run->points.back().reading->entry}}));
}

// Readings that all end in 0 or 5 were rounded in somebody's head.
void fives(const Context& context, const Rule& rule, Findings& out) {
    constexpr double kRounded_mm = 5;
    const auto run = latest_run(context.job);
    if (!run || run->points.size() < 3) return;
    const bool all = std::all_of(run->points.begin(), run->points.end(), [](const LevelPoint& point) {
        return std::fmod(point.z_mm, kRounded_mm) == 0;
    });
    const bool flat = std::all_of(run->points.begin(), run->points.end(),
                                  [](const LevelPoint& point) { return point.z_mm == 0; });
    if (all && !flat)
        out.push_back(make_finding(context, rule, rule.levels.front(),
                                   {.entries = {run->points.front().reading->entry}}));
}

double nearest_m(const LevelRun& run, std::size_t i) {
    double nearest = INFINITY;
    for (std::size_t k = 0; k < run.points.size(); ++k) {
        if (k != i) nearest = std::min(nearest, trade::distance_m(run.points[i].at, run.points[k].at));
    }
    return nearest;
}

void level_grid(const Context& context, const Rule& rule, Findings& out) {
    const auto run = latest_run(context.job);
    if (!run || run->points.size() < 2) return;
    double widest_m = 0;
    for (std::size_t i = 0; i < run->points.size(); ++i) widest_m = std::max(widest_m, nearest_m(*run, i));
    if (widest_m <= context.limit("level_grid_m") + 1e-9)
        return; // places are typed to the centimetre, sums are binary
    out.push_back(
        make_finding(context, rule, rule.levels.front(),
                     {.value = fixed(widest_m, 2), .entries = {run->points.front().reading->entry}}));
}

void in_doubt(const Context& context, const Rule& rule, Findings& out) {
    for (const Reading& reading : context.job.readings) {
        if (!reading.doubted) continue;
        out.push_back(make_finding(context, rule, rule.levels.front(),
                                   {.reading = &reading, .value = choice_worded("read", reading.kind)}));
    }
}

} // namespace

void add_worked_levels(WorkedTable& table) {
    table["closing"] = closing;
    table["closing_missing"] = closing_missing;
    table["fives"] = fives;
    table["level_grid"] = level_grid;
    table["in_doubt"] = in_doubt;
}

} // namespace undersheet::job
