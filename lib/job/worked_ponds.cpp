// Standing water, judged.
#include "job/ponds.h"
#include "job/rules.h"

namespace undersheet::job {
namespace {

using method::Rule;

void ponds(const Context& context, const Rule& rule, Findings& out) {
    for (const StandingWater& water : standing_water(context.job)) {
        const trade::Pond& pond = water.pond;
        const std::string size = fixed(pond.depth_mm, 0) + " mm deep, " + fixed(pond.area_m2, 2) + " m², " +
                                 fixed(pond.litres, 1) + " l";
        for (const auto& level : rule.levels) {
            if (pond.depth_mm <= context.limit(level.limit)) continue;
            out.push_back(make_finding(context, rule, level,
                                       {.reading = water.deepest,
                                        .value = worded("{mm} mm", {{"mm", fixed(pond.depth_mm, 0)}}),
                                        .working = {size}}));
            break;
        }
    }
}

} // namespace

void add_worked_ponds(WorkedTable& table) { table["ponds"] = ponds; }

} // namespace undersheet::job
