#include "trade/drains.h"

#include "trade/metres.h"

#include <algorithm>

namespace undersheet::trade {
DrainLevels drain_levels(const std::vector<Level>& levels, const Segment& drain, const DrainRules& rules) {
    DrainLevels found;
    if (levels.empty()) return found;
    std::vector<double> away_m;
    for (const Level& level : levels) away_m.push_back(distance_m(drain, Point{level.x_m, level.y_m}));
    const double nearest_m = *std::min_element(away_m.begin(), away_m.end());
    const bool is_on = nearest_m <= rules.on_m + kHair_m;
    const bool is_line = length_m(drain) > 0;
    const double reach_m = is_on ? rules.on_m : nearest_m + (is_line ? rules.near_m : rules.on_m);
    for (std::size_t i = 0; i < levels.size(); ++i) {
        if (away_m[i] <= reach_m + kHair_m) found.levels.push_back(i);
    }
    if (!is_on) found.away_m = nearest_m;
    return found;
}

} // namespace undersheet::trade
