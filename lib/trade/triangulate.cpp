// Delaunay triangles by inserting one point after the other (A. Bowyer and D. F. Watson, both 1981).
#include "trade/ponds.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace undersheet::trade {
namespace {

using Edge = std::pair<std::size_t, std::size_t>;

Point at(const std::vector<Level>& levels, std::size_t i) { return {levels[i].x_m, levels[i].y_m}; }

// Positive when p lies inside the circle through the anticlockwise triangle abc.
double in_circle(Point a, Point b, Point c, Point p) {
    const double ax = a.x_m - p.x_m, ay = a.y_m - p.y_m;
    const double bx = b.x_m - p.x_m, by = b.y_m - p.y_m;
    const double cx = c.x_m - p.x_m, cy = c.y_m - p.y_m;
    return (ax * ax + ay * ay) * (bx * cy - cx * by) - (bx * bx + by * by) * (ax * cy - cx * ay) +
           (cx * cx + cy * cy) * (ax * by - bx * ay);
}

// Three far points whose triangle holds every level; they come off at the end.
void add_frame(std::vector<Level>& levels) {
    double reach = 1;
    for (const Level& level : levels) reach = std::max({reach, std::fabs(level.x_m), std::fabs(level.y_m)});
    const double far = 1e3 * reach;
    levels.push_back({-3 * far, -far, 0});
    levels.push_back({3 * far, -far, 0});
    levels.push_back({0, 3 * far, 0});
}

// Edges that belong to one triangle of the hole only: its rim.
std::vector<Edge> rim_of(const std::vector<Triangle>& hole) {
    std::map<Edge, int> count;
    for (const Triangle& t : hole) {
        for (std::size_t k = 0; k < 3; ++k) {
            const Edge e{t[k], t[(k + 1) % 3]};
            const auto other = count.find({e.second, e.first});
            if (other != count.end())
                count.erase(other);
            else
                ++count[e];
        }
    }
    std::vector<Edge> rim;
    for (const auto& [e, n] : count) rim.push_back(e);
    return rim;
}

void insert_level(const std::vector<Level>& levels, std::size_t i, std::vector<Triangle>& triangles) {
    constexpr double kOnCircle = 1e-9; // points of a square grid lie on one circle: they are not inside
    std::vector<Triangle> hole;
    std::vector<Triangle> kept;
    for (const Triangle& t : triangles) {
        const double inside = in_circle(at(levels, t[0]), at(levels, t[1]), at(levels, t[2]), at(levels, i));
        (inside > kOnCircle ? hole : kept).push_back(t);
    }
    for (const Edge& e : rim_of(hole)) {
        if (turn_m2(at(levels, e.first), at(levels, e.second), at(levels, i)) > 0)
            kept.push_back({e.first, e.second, i});
    }
    triangles = std::move(kept);
}

// The corner of a triangle that is not on the edge.
std::size_t apex(const Triangle& t, const Edge& e) {
    return *std::find_if(t.begin(), t.end(), [&](std::size_t i) { return i != e.first && i != e.second; });
}

// Four levels of a square lie on one circle, and both diagonals are Delaunay: is the other one the higher?
bool is_lower_diagonal(const std::vector<Level>& levels, const Edge& e, std::size_t left, std::size_t right) {
    constexpr double kOneCircle = 1e-9;
    const Point a = at(levels, e.first), b = at(levels, e.second);
    const Point c = at(levels, left), d = at(levels, right);
    if (std::fabs(in_circle(a, b, c, d)) > kOneCircle) return false;
    if (turn_m2(c, d, b) <= 0 || turn_m2(d, c, a) <= 0) return false; // the other would lie on a side
    return std::max(levels[left].z_mm, levels[right].z_mm) >
           std::max(levels[e.first].z_mm, levels[e.second].z_mm);
}

using Sides = std::map<Edge, std::size_t>; // the triangle to the left of each edge

Sides sides_of(const std::vector<Triangle>& triangles) {
    Sides sides;
    for (std::size_t t = 0; t < triangles.size(); ++t) {
        for (std::size_t k = 0; k < 3; ++k) sides[{triangles[t][k], triangles[t][(k + 1) % 3]}] = t;
    }
    return sides;
}

// Turns every such diagonal round whose two triangles are still as `sides` says; how many were turned.
std::size_t raise_once(const std::vector<Level>& levels, std::vector<Triangle>& triangles) {
    const Sides sides = sides_of(triangles);
    std::vector<bool> is_turned(triangles.size(), false);
    std::size_t turned = 0;
    for (const auto& [e, t] : sides) {
        const auto other = sides.find({e.second, e.first});
        if (other == sides.end() || is_turned[t] || is_turned[other->second]) continue;
        const std::size_t left = apex(triangles[t], e);
        const std::size_t right = apex(triangles[other->second], e);
        if (!is_lower_diagonal(levels, e, left, right)) continue;
        triangles[t] = {left, e.first, right};
        triangles[other->second] = {right, e.second, left};
        is_turned[t] = is_turned[other->second] = true;
        ++turned;
    }
    return turned;
}

} // namespace

std::vector<Triangle> triangulate(const std::vector<Level>& given) {
    std::vector<Level> levels = given;
    add_frame(levels);
    const std::size_t n = given.size();
    std::vector<Triangle> triangles{{n, n + 1, n + 2}};
    for (std::size_t i = 0; i < n; ++i) insert_level(levels, i, triangles);
    std::erase_if(triangles, [&](const Triangle& t) { return t[0] >= n || t[1] >= n || t[2] >= n; });
    return triangles;
}

// Ends: each turn raises the higher end of a diagonal.
void raise_diagonals(const std::vector<Level>& levels, std::vector<Triangle>& triangles) {
    while (raise_once(levels, triangles) > 0) {
    }
}

} // namespace undersheet::trade
