// A roof's outline as corners on a plan, and what plane geometry says of it: area, girth, inside or out, how
// near.
//
// Promises: plain double arithmetic; areas and lengths are good to about 1e-12 of their size. Corners run
//   anticlockwise seen from above (A front left, then round to the right), the last joins the first and is
//   not repeated.
// Comes from: school geometry (shoelace sum, ray crossing, mitred offset), written out in
// docs/formulas.md#polygon.
// Does not: know curves or holes; an arc is taped as several straight pieces, an opening is a polygon of its
//   own.
// Threads: pure functions on values.
#pragma once

#include "base/result.h"

#include <cstddef>
#include <optional>
#include <utility>
#include <vector>

namespace undersheet::trade {

struct Point {
    double x_m = 0; // along the first edge AB
    double y_m = 0; // to the left of it, up the roof
};

struct Segment {
    Point from;
    Point to;
};

using Polygon = std::vector<Point>;

[[nodiscard]] double distance_m(Point a, Point b);
[[nodiscard]] double length_m(const Segment& segment);
[[nodiscard]] Point point_along(const Segment& segment, double share); // 0 at `from`, 1 at `to`
[[nodiscard]] Point nearest_point(const Segment& segment, Point to);
[[nodiscard]] double distance_m(const Segment& segment, Point to);
[[nodiscard]] double distance_m(const Segment& a, const Segment& b); // 0 where they touch or cross
// Twice the area of the triangle abc; positive when c lies to the left of the way from a to b.
[[nodiscard]] double turn_m2(Point a, Point b, Point c);
[[nodiscard]] bool do_touch(const Segment& a, const Segment& b); // a shared end counts

// Edge i runs from corner i to the next.
[[nodiscard]] Segment edge(const Polygon& polygon, std::size_t i);
[[nodiscard]] double signed_area_m2(const Polygon& polygon); // positive when the corners run anticlockwise
[[nodiscard]] double area_m2(const Polygon& polygon);
[[nodiscard]] double perimeter_m(const Polygon& polygon);
[[nodiscard]] Point centre(const Polygon& polygon); // centre of area; needs an area
[[nodiscard]] bool is_anticlockwise(const Polygon& polygon);
// Inner angles in order of the corners, 0 to 360; over 180 at a corner that points inwards. Needs
// anticlockwise corners.
[[nodiscard]] std::vector<double> angles_deg(const Polygon& polygon);

// The first two edges that cross, touch or fold back on each other where they should not.
[[nodiscard]] std::optional<std::pair<std::size_t, std::size_t>> crossing_edges(const Polygon& polygon);
[[nodiscard]] bool is_simple(const Polygon& polygon); // three corners or more, an area, no crossing edges

// `reach_m` counts points that lie outside by no more than that as inside; an edge belongs to the inside.
[[nodiscard]] bool contains(const Polygon& polygon, Point point, double reach_m = 1e-9);
[[nodiscard]] bool contains(const Polygon& polygon, const Segment& segment, double reach_m = 1e-9);
[[nodiscard]] std::size_t nearest_edge(const Polygon& polygon, Point to);
[[nodiscard]] double distance_to_edges_m(const Polygon& polygon, Point from);

// A polygon fit to work with: three corners or more, finite, simple, anticlockwise. The fault names the
// corner in `where`, as "outline[2]".
[[nodiscard]] Done check_outline(const Polygon& polygon);

// What is left inside when a strip `width_m` wide is taken off all round, corners kept sharp. Short edges may
// vanish on the way; an outline too narrow for the strip, or one the strip would cut in two, is refused.
[[nodiscard]] Result<Polygon> inset(const Polygon& polygon, double width_m);
// The strip itself: perimeter times width, less width² at each outer square corner, plus it at each inner
// one.
[[nodiscard]] Result<double> band_area_m2(const Polygon& polygon, double width_m);

} // namespace undersheet::trade
