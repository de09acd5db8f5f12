// Standing water: the latest levels flooded from the gutter edges and outlets.
#include "job/levels.h"
#include "job/rules.h"

#include "trade/ponds.h"

namespace undersheet::job {
namespace {

using method::Rule;

bool is_on_gutter(const Roof& roof, trade::Point point) {
    for (const Edge& edge : roof.edges) {
        const auto a = roof.corner_at(edge.a);
        const auto b = roof.corner_at(edge.b);
        if (edge.kind == "gutter" && a && b &&
            trade::distance_m(trade::Segment{*a, *b}, point) <= roof.near_m)
            return true;
    }
    return false;
}

bool is_at_outlet(const Roof& roof, trade::Point point) {
    for (const Opening& opening : roof.openings) {
        if (opening.type == "outlet" && opening.at && trade::distance_m(*opening.at, point) <= roof.near_m)
            return true;
    }
    return false;
}

// Levels along the gutter edge and at an outlet let the water go. With none of them known nothing can be said of ponds.
std::vector<std::size_t> drains_of(const Roof& roof, const LevelRun& run) {
    std::vector<std::size_t> drains;
    for (std::size_t i = 0; i < run.points.size(); ++i) {
        if (is_on_gutter(roof, run.points[i].at) || is_at_outlet(roof, run.points[i].at)) drains.push_back(i);
    }
    return drains;
}

void ponds(const Context& context, const Rule& rule, Findings& out) {
    const auto run = latest_run(context.job);
    if (!run) return;
    trade::PondsInput in{
        .levels = {}, .outline = context.job.roof.polygon(), .drains = drains_of(context.job.roof, *run)};
    for (const LevelPoint& point : run->points) in.levels.push_back({point.at.x_m, point.at.y_m, point.z_mm});
    const auto found = trade::ponds(in);
    if (!found) return;
    for (const trade::Pond& pond : *found) {
        const Reading* deepest = run->points[pond.deepest].reading;
        const std::string size = fixed(pond.depth_mm, 0) + " mm deep, " + fixed(pond.area_m2, 2) + " m², " +
                                 fixed(pond.litres, 1) + " l";
        for (const auto& level : rule.levels) {
            if (pond.depth_mm <= context.limit(level.limit)) continue;
            out.push_back(make_finding(context, rule, level,
                                       {.reading = deepest,
                                        .value = worded("{mm} mm", {{"mm", fixed(pond.depth_mm, 0)}}),
                                        .working = {size}}));
            break;
        }
    }
}

} // namespace

void add_worked_ponds(WorkedTable& table) { table["ponds"] = ponds; }

} // namespace undersheet::job
