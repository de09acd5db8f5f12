// The latest levels flooded from the gutter edges and outlets.
#include "job/ponds.h"

namespace undersheet::job {
namespace {

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

} // namespace

std::vector<StandingWater> standing_water(const Job& job) {
    const auto run = latest_run(job);
    if (!run) return {};
    trade::PondsInput in{.levels = {}, .outline = job.roof.polygon(), .drains = drains_of(job.roof, *run)};
    for (const LevelPoint& point : run->points) in.levels.push_back({point.at.x_m, point.at.y_m, point.z_mm});
    const auto found = trade::ponds(in);
    if (!found) return {};
    std::vector<StandingWater> water;
    for (const trade::Pond& pond : *found) water.push_back({run->points[pond.deepest].reading, pond});
    return water;
}

} // namespace undersheet::job
