#include "trade/ponds.h"

#include <algorithm>
#include <cmath>
#include <queue>

namespace undersheet::trade {
namespace {

struct Wet {
    double area_m2 = 0;
    double litres = 0;
};

Point place(const Level& level) { return {level.x_m, level.y_m}; }

double triangle_m2(Point a, Point b, Point c) { return std::fabs(turn_m2(a, b, c)) / 2; }

// Water over a triangle whose corners stand `depth` under the surface (negative: above it). Litres: 1 mm on 1 m² is 1 l.
Wet wet_part(Point a, Point b, Point c, std::array<double, 3> depth_mm) {
    std::array<Point, 3> corner{a, b, c};
    for (int round = 0; round < 3 && !(depth_mm[0] >= depth_mm[1] && depth_mm[0] >= depth_mm[2]); ++round) {
        std::rotate(corner.begin(), corner.begin() + 1, corner.end());
        std::rotate(depth_mm.begin(), depth_mm.begin() + 1, depth_mm.end());
    }
    const double all_m2 = triangle_m2(corner[0], corner[1], corner[2]);
    const double all_l = all_m2 * (depth_mm[0] + depth_mm[1] + depth_mm[2]) / 3;
    if (depth_mm[0] <= 0) return {};
    if (depth_mm[1] >= 0 && depth_mm[2] >= 0) return {all_m2, all_l};
    if (depth_mm[1] < 0 && depth_mm[2] < 0) {
        const double share =
            depth_mm[0] / (depth_mm[0] - depth_mm[1]) * (depth_mm[0] / (depth_mm[0] - depth_mm[2]));
        return {all_m2 * share, all_m2 * share * depth_mm[0] / 3};
    }
    // One corner is dry: the whole less the dry tip, whose depth is negative.
    const std::size_t dry = depth_mm[1] < 0 ? 1 : 2;
    const std::size_t wet = 3 - dry;
    const double share =
        depth_mm[dry] / (depth_mm[dry] - depth_mm[0]) * (depth_mm[dry] / (depth_mm[dry] - depth_mm[wet]));
    return {all_m2 * (1 - share), all_l - all_m2 * share * depth_mm[dry] / 3};
}

// Where the water's surface cuts a triangle with wet and dry corners.
std::optional<Segment> shore_in(const std::array<Point, 3>& corner, const std::array<double, 3>& depth_mm) {
    std::vector<Point> cuts;
    for (std::size_t k = 0; k < 3; ++k) {
        const std::size_t next = (k + 1) % 3;
        if ((depth_mm[k] > 0) == (depth_mm[next] > 0)) continue;
        cuts.push_back(point_along({corner[k], corner[next]}, depth_mm[k] / (depth_mm[k] - depth_mm[next])));
    }
    return cuts.size() == 2 ? std::optional(Segment{cuts[0], cuts[1]}) : std::nullopt;
}

using Neighbours = std::vector<std::vector<std::size_t>>;

Neighbours neighbours_of(const std::vector<Triangle>& triangles, std::size_t count) {
    Neighbours neighbours(count);
    for (const Triangle& t : triangles) {
        for (std::size_t k = 0; k < 3; ++k) {
            neighbours[t[k]].push_back(t[(k + 1) % 3]);
            neighbours[t[k]].push_back(t[(k + 2) % 3]);
        }
    }
    return neighbours;
}

// The lowest height at which water at each level finds a drain.
std::vector<double> spill_heights_mm(const PondsInput& in, const Neighbours& neighbours) {
    std::vector<double> spill(in.levels.size(), INFINITY);
    using Item = std::pair<double, std::size_t>;
    std::priority_queue<Item, std::vector<Item>, std::greater<>> open;
    for (const std::size_t drain : in.drains) {
        spill[drain] = in.levels[drain].z_mm;
        open.push({spill[drain], drain});
    }
    while (!open.empty()) {
        const auto [height, i] = open.top();
        open.pop();
        if (height > spill[i]) continue;
        for (const std::size_t k : neighbours[i]) {
            const double over = std::max(height, in.levels[k].z_mm);
            if (over >= spill[k]) continue;
            spill[k] = over;
            open.push({over, k});
        }
    }
    return spill;
}

bool is_under(const PondsInput& in, const std::vector<double>& spill, std::size_t i) {
    return std::isfinite(spill[i]) && spill[i] > in.levels[i].z_mm;
}

// Levels under water that hang together make one pond.
std::vector<std::size_t> flood_from(const PondsInput& in, const std::vector<double>& spill,
                                    const Neighbours& neighbours, std::size_t start,
                                    std::vector<bool>& seen) {
    std::vector<std::size_t> pond{start};
    seen[start] = true;
    for (std::size_t at = 0; at < pond.size(); ++at) {
        for (const std::size_t k : neighbours[pond[at]]) {
            if (seen[k] || !is_under(in, spill, k)) continue;
            seen[k] = true;
            pond.push_back(k);
        }
    }
    return pond;
}

void add_water(const PondsInput& in, const std::vector<Triangle>& triangles,
               const std::vector<std::size_t>& members, Pond& pond) {
    for (const Triangle& t : triangles) {
        const bool touches = std::any_of(t.begin(), t.end(), [&](std::size_t i) {
            return std::find(members.begin(), members.end(), i) != members.end();
        });
        if (!touches) continue;
        const auto depth = [&](std::size_t i) { return pond.water_mm - in.levels[i].z_mm; };
        const std::array<Point, 3> corner{place(in.levels[t[0]]), place(in.levels[t[1]]),
                                          place(in.levels[t[2]])};
        const std::array<double, 3> depth_mm{depth(t[0]), depth(t[1]), depth(t[2])};
        if (const auto shore = shore_in(corner, depth_mm)) pond.shore.push_back(*shore);
        const Wet wet = wet_part(corner[0], corner[1], corner[2], depth_mm);
        pond.area_m2 += wet.area_m2;
        pond.litres += wet.litres;
    }
}

bool is_inside(const PondsInput& in, const Triangle& t) {
    if (in.outline.empty()) return true;
    const Level &a = in.levels[t[0]], &b = in.levels[t[1]], &c = in.levels[t[2]];
    return contains(in.outline, Point{(a.x_m + b.x_m + c.x_m) / 3, (a.y_m + b.y_m + c.y_m) / 3});
}

Done check(const PondsInput& in) {
    const auto impossible = [](const std::string& what, const std::string& where) {
        return Fault{Code::value_impossible, what, where, {}};
    };
    if (in.drains.empty()) return impossible("water has to leave somewhere", "drains");
    for (const std::size_t drain : in.drains) {
        if (drain >= in.levels.size()) return impossible("a drain is no level that was given", "drains");
    }
    for (const Level& level : in.levels) {
        if (!std::isfinite(level.x_m) || !std::isfinite(level.y_m) || !std::isfinite(level.z_mm))
            return impossible("a level is not a number", "levels");
    }
    return {};
}

} // namespace

Result<std::vector<Pond>> ponds(const PondsInput& in) {
    if (auto done = check(in); !done) return done.fault();
    auto triangles = triangulate(in.levels);
    std::erase_if(triangles, [&](const Triangle& t) { return !is_inside(in, t); });
    raise_diagonals(in.levels, triangles);
    const Neighbours neighbours = neighbours_of(triangles, in.levels.size());
    const auto spill = spill_heights_mm(in, neighbours);
    std::vector<bool> seen(in.levels.size(), false);
    std::vector<Pond> found;
    for (std::size_t i = 0; i < in.levels.size(); ++i) {
        if (seen[i] || !is_under(in, spill, i)) continue;
        const auto members = flood_from(in, spill, neighbours, i, seen);
        const auto lowest =
            *std::min_element(members.begin(), members.end(), [&](std::size_t a, std::size_t b) {
                return in.levels[a].z_mm < in.levels[b].z_mm;
            });
        Pond pond{.deepest = lowest, .depth_mm = spill[lowest] - in.levels[lowest].z_mm};
        pond.water_mm = spill[lowest];
        add_water(in, triangles, members, pond);
        found.push_back(pond);
    }
    std::stable_sort(found.begin(), found.end(),
                     [](const Pond& a, const Pond& b) { return a.depth_mm > b.depth_mm; });
    return found;
}

} // namespace undersheet::trade
