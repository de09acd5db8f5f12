#include "trade/polygon.h"

#include "base/decimal.h"
#include "trade/field_check.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

namespace undersheet::trade {

namespace {

constexpr double kSame_m = 1e-9; // nearer than this is the same point: a millionth of a millimetre

Point minus(Point a, Point b) { return {a.x_m - b.x_m, a.y_m - b.y_m}; }
Point plus(Point a, Point b, double times) { return {a.x_m + times * b.x_m, a.y_m + times * b.y_m}; }
double dot(Point a, Point b) { return a.x_m * b.x_m + a.y_m * b.y_m; }
double cross(Point a, Point b) { return a.x_m * b.y_m - a.y_m * b.x_m; }

Point direction(const Segment& s) {
    const double length = length_m(s);
    const Point d = minus(s.to, s.from);
    return {d.x_m / length, d.y_m / length};
}

std::string corner_field(std::size_t i) { return "outline[" + std::to_string(i) + "]"; }

bool is_finite(Point p) { return std::isfinite(p.x_m) && std::isfinite(p.y_m); }

// Neighbouring edges share a corner by right; they are wrong only when the second runs back along the first.
bool folds_back(const Segment& first, const Segment& second) {
    const Point u = minus(first.to, first.from);
    const Point v = minus(second.to, second.from);
    return dot(u, v) < 0 && std::abs(cross(u, v)) <= kSame_m * std::max(length_m(first), length_m(second));
}

bool are_at_odds(const Polygon& polygon, std::size_t i, std::size_t j) {
    const std::size_t n = polygon.size();
    if (j == i + 1) return folds_back(edge(polygon, i), edge(polygon, j));
    if (i == 0 && j == n - 1) return folds_back(edge(polygon, j), edge(polygon, i));
    return do_touch(edge(polygon, i), edge(polygon, j));
}

// How fast a corner travels when both its edges move inwards at unit speed: along the bisector, keeping both
// widths.
Point inward_speed(const Polygon& polygon, std::size_t i) {
    const std::size_t n = polygon.size();
    const Point u = direction(edge(polygon, (i + n - 1) % n));
    const Point v = direction(edge(polygon, i));
    const double scale = 1.0 / (1.0 + dot(u, v));
    return {-(u.y_m + v.y_m) * scale, (u.x_m + v.x_m) * scale};
}

std::vector<Point> inward_speeds(const Polygon& polygon) {
    std::vector<Point> speeds;
    for (std::size_t i = 0; i < polygon.size(); ++i) speeds.push_back(inward_speed(polygon, i));
    return speeds;
}

// The width at which the first edge has shrunk to nothing, or `width_m` if none does before.
double width_to_next_event(const Polygon& polygon, const std::vector<Point>& speeds, double width_m) {
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const Segment side = edge(polygon, i);
        const double shrinks = dot(minus(speeds[i], speeds[(i + 1) % polygon.size()]), direction(side));
        if (shrinks > 0) width_m = std::min(width_m, length_m(side) / shrinks);
    }
    return width_m;
}

void drop_repeated_corners(Polygon& polygon) {
    Polygon kept;
    for (std::size_t i = 0; i < polygon.size(); ++i)
        if (length_m(edge(polygon, i)) > kSame_m) kept.push_back(polygon[i]);
    polygon = std::move(kept);
}

} // namespace

// Not hypot, which is several times slower: no roof is so large that squares overflow.
double distance_m(Point a, Point b) {
    const double x_m = a.x_m - b.x_m, y_m = a.y_m - b.y_m;
    return std::sqrt(x_m * x_m + y_m * y_m);
}
double length_m(const Segment& segment) { return distance_m(segment.from, segment.to); }

Point point_along(const Segment& segment, double share) {
    return plus(segment.from, minus(segment.to, segment.from), share);
}

Point nearest_point(const Segment& segment, Point to) {
    const Point along = minus(segment.to, segment.from);
    const double square = dot(along, along);
    if (square == 0) return segment.from;
    return point_along(segment, std::clamp(dot(minus(to, segment.from), along) / square, 0.0, 1.0));
}

double distance_m(const Segment& segment, Point to) { return distance_m(nearest_point(segment, to), to); }

double distance_m(const Segment& a, const Segment& b) {
    if (do_touch(a, b)) return 0;
    return std::min({distance_m(a, b.from), distance_m(a, b.to), distance_m(b, a.from), distance_m(b, a.to)});
}

double turn_m2(Point a, Point b, Point c) { return cross(minus(b, a), minus(c, a)); }

bool do_touch(const Segment& a, const Segment& b) {
    const double from = turn_m2(a.from, a.to, b.from);
    const double to = turn_m2(a.from, a.to, b.to);
    const double back_from = turn_m2(b.from, b.to, a.from);
    const double back_to = turn_m2(b.from, b.to, a.to);
    if (((from > 0) != (to > 0)) && ((back_from > 0) != (back_to > 0)) && from != to && back_from != back_to)
        return true;
    return distance_m(a, b.from) <= kSame_m || distance_m(a, b.to) <= kSame_m ||
           distance_m(b, a.from) <= kSame_m || distance_m(b, a.to) <= kSame_m;
}

Segment edge(const Polygon& polygon, std::size_t i) {
    return {polygon[i], polygon[(i + 1) % polygon.size()]};
}

double signed_area_m2(const Polygon& polygon) {
    double twice = 0;
    // Measured from the first corner, so that a plan far from its origin loses no digits.
    for (std::size_t i = 1; i + 1 < polygon.size(); ++i)
        twice += turn_m2(polygon[0], polygon[i], polygon[i + 1]);
    return twice / 2;
}

double area_m2(const Polygon& polygon) { return std::abs(signed_area_m2(polygon)); }

double perimeter_m(const Polygon& polygon) {
    double sum = 0;
    for (std::size_t i = 0; i < polygon.size(); ++i) sum += length_m(edge(polygon, i));
    return sum;
}

Point centre(const Polygon& polygon) {
    Point weighted;
    double twice = 0;
    for (std::size_t i = 1; i + 1 < polygon.size(); ++i) {
        const double weight = turn_m2(polygon[0], polygon[i], polygon[i + 1]);
        const Point corners = plus(minus(polygon[i], polygon[0]), minus(polygon[i + 1], polygon[0]), 1);
        weighted = plus(weighted, corners, weight / 3);
        twice += weight;
    }
    return plus(polygon[0], weighted, 1 / twice);
}

bool is_anticlockwise(const Polygon& polygon) { return signed_area_m2(polygon) > 0; }

std::vector<double> angles_deg(const Polygon& polygon) {
    std::vector<double> angles;
    const std::size_t n = polygon.size();
    for (std::size_t i = 0; i < n; ++i) {
        const Point ahead = minus(polygon[(i + 1) % n], polygon[i]);
        const Point behind = minus(polygon[(i + n - 1) % n], polygon[i]);
        const double angle = std::atan2(cross(ahead, behind), dot(ahead, behind)) * 180 / std::numbers::pi;
        angles.push_back(angle < 0 ? angle + 360 : angle);
    }
    return angles;
}

std::optional<std::pair<std::size_t, std::size_t>> crossing_edges(const Polygon& polygon) {
    for (std::size_t i = 0; i < polygon.size(); ++i)
        for (std::size_t j = i + 1; j < polygon.size(); ++j)
            if (are_at_odds(polygon, i, j)) return std::pair{i, j};
    return std::nullopt;
}

bool is_simple(const Polygon& polygon) {
    return polygon.size() >= 3 && area_m2(polygon) > kSame_m && !crossing_edges(polygon);
}

bool contains(const Polygon& polygon, Point point, double reach_m) {
    bool inside = false;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const Segment side = edge(polygon, i);
        if (distance_m(side, point) <= reach_m) return true;
        if ((side.from.y_m > point.y_m) == (side.to.y_m > point.y_m)) continue;
        const bool upwards = side.to.y_m > side.from.y_m;
        if ((turn_m2(side.from, side.to, point) > 0) == upwards) inside = !inside;
    }
    return inside;
}

bool contains(const Polygon& polygon, const Segment& segment, double reach_m) {
    if (!contains(polygon, segment.from, reach_m) || !contains(polygon, segment.to, reach_m)) return false;
    // Cut the way at every edge it meets: each piece lies wholly inside or wholly outside, so its middle
    // tells.
    std::vector<double> cuts{0, 1};
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const Segment side = edge(polygon, i);
        const double from = turn_m2(side.from, side.to, segment.from);
        const double to = turn_m2(side.from, side.to, segment.to);
        if (from != to) cuts.push_back(std::clamp(from / (from - to), 0.0, 1.0));
    }
    std::sort(cuts.begin(), cuts.end());
    for (std::size_t i = 0; i + 1 < cuts.size(); ++i)
        if (!contains(polygon, point_along(segment, (cuts[i] + cuts[i + 1]) / 2), reach_m)) return false;
    return true;
}

std::size_t nearest_edge(const Polygon& polygon, Point to) {
    std::size_t best = 0;
    for (std::size_t i = 1; i < polygon.size(); ++i)
        if (distance_m(edge(polygon, i), to) < distance_m(edge(polygon, best), to)) best = i;
    return best;
}

double distance_to_edges_m(const Polygon& polygon, Point from) {
    return distance_m(edge(polygon, nearest_edge(polygon, from)), from);
}

Done check_outline(const Polygon& polygon) {
    if (polygon.size() < 3)
        return impossible("outline", worded("{n} corners", {{"n", std::to_string(polygon.size())}}),
                          "a roof has three corners or more");
    for (std::size_t i = 0; i < polygon.size(); ++i)
        if (!is_finite(polygon[i]))
            return impossible(corner_field(i), "not a number", "give x and y in metres");
    if (const auto pair = crossing_edges(polygon))
        return impossible(corner_field(pair->second),
                          worded("the edge from here crosses or touches the one from {corner}",
                                 {{"corner", corner_field(pair->first)}}),
                          "give the corners in the order in which one walks round the roof");
    if (!is_simple(polygon))
        return impossible("outline", "the corners enclose no area", "give corners that go round the roof");
    if (!is_anticlockwise(polygon))
        return impossible("outline", "the corners run clockwise",
                          "stand low, face up the roof, begin front left and go to the right");
    return {};
}

Result<Polygon> inset(const Polygon& polygon, double width_m) {
    if (const Done fit = check_outline(polygon); !fit) return fit.fault();
    if (!std::isfinite(width_m) || width_m < 0)
        return impossible("width_m", worded("{m} m", {{"m", fixed(width_m, 3)}}),
                          "a strip is 0 m wide or more");
    const Fault narrow = impossible(
        "width_m", worded("no room for a strip {m} m wide all round", {{"m", shortest(width_m, 3)}}),
        "take a narrower strip, or the whole roof as strip");
    Polygon left = polygon;
    while (width_m > 0) {
        const std::vector<Point> speeds = inward_speeds(left);
        const double step = width_to_next_event(left, speeds, width_m);
        for (std::size_t i = 0; i < left.size(); ++i) left[i] = plus(left[i], speeds[i], step);
        drop_repeated_corners(left);
        if (!is_simple(left) || !is_anticlockwise(left)) return narrow;
        width_m -= step;
    }
    return left;
}

Result<double> band_area_m2(const Polygon& polygon, double width_m) {
    const Result<Polygon> inner = inset(polygon, width_m);
    if (!inner) return inner.fault();
    return area_m2(polygon) - area_m2(*inner);
}

} // namespace undersheet::trade
