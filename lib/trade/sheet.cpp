#include "trade/sheet.h"

#include "base/decimal.h"
#include "trade/field_check.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace undersheet::trade {
namespace {

constexpr double kQuarterTurn_deg = 90;
constexpr double kSlack_m = 1e-9; // sums of typed lengths are not exact in binary

struct Line {
    Point from;
    double dx, dy; // unit direction
};

Line moved_out(const Segment& edge, double by_m) {
    const double length = length_m(edge);
    const double dx = (edge.to.x_m - edge.from.x_m) / length;
    const double dy = (edge.to.y_m - edge.from.y_m) / length;
    // Anticlockwise: the outside lies to the right of the way along the edge.
    return {{edge.from.x_m + dy * by_m, edge.from.y_m - dx * by_m}, dx, dy};
}

// Where two moved edges meet; edges in one line meet at the second one's start.
Point meeting(const Line& a, const Line& b) {
    const double cross = a.dx * b.dy - a.dy * b.dx;
    if (std::fabs(cross) < 1e-12) return b.from;
    const double t = ((b.from.x_m - a.from.x_m) * b.dy - (b.from.y_m - a.from.y_m) * b.dx) / cross;
    return {a.from.x_m + t * a.dx, a.from.y_m + t * a.dy};
}

struct Box {
    double along_m = 0, across_m = 0;
};

// How long and wide the points are when the sheet's length runs at this angle.
Box box_at(const Polygon& points, double angle_deg) {
    const double c = std::cos(angle_deg * std::numbers::pi / 180);
    const double s = std::sin(angle_deg * std::numbers::pi / 180);
    double least_u = INFINITY, most_u = -INFINITY, least_v = INFINITY, most_v = -INFINITY;
    for (const Point& p : points) {
        const double u = p.x_m * c + p.y_m * s;
        const double v = -p.x_m * s + p.y_m * c;
        least_u = std::min(least_u, u);
        most_u = std::max(most_u, u);
        least_v = std::min(least_v, v);
        most_v = std::max(most_v, v);
    }
    return {most_u - least_u, most_v - least_v};
}

double edge_angle_deg(const Segment& e) {
    return std::atan2(e.to.y_m - e.from.y_m, e.to.x_m - e.from.x_m) * 180 / std::numbers::pi;
}

double to_deg(double radians) { return radians * 180 / std::numbers::pi; }

// At which angles the width from one of two points to the other is just that of a roll.
void add_angles_of_width(const Segment& between, double roll_m, std::vector<double>& angles) {
    const double apart_m = length_m(between);
    if (apart_m < roll_m) return;
    const double along = edge_angle_deg(between), off = to_deg(std::asin(roll_m / apart_m));
    angles.insert(angles.end(), {along + off, along - off});
}

// The edges' own directions first, so that a straight lay wins over a turned one of the same size. Between two angles at which
// other corners reach farthest, or the width passes that of a roll, the length has its least at one of their ends.
std::vector<double> angles_to_try(const Polygon& points, const std::vector<double>& rolls_m) {
    std::vector<double> angles;
    for (std::size_t i = 0; i < points.size(); ++i) {
        const double along = edge_angle_deg(edge(points, i));
        angles.push_back(along);
        angles.push_back(along + kQuarterTurn_deg);
    }
    for (std::size_t i = 0; i < points.size(); ++i) {
        for (std::size_t j = i + 1; j < points.size(); ++j) {
            const Segment between{points[i], points[j]};
            const double along = edge_angle_deg(between);
            angles.insert(angles.end(), {along, along + kQuarterTurn_deg});
            for (const double roll : rolls_m) add_angles_of_width(between, roll, angles);
        }
    }
    return angles;
}

double rounded_up_m(double length_m, double step_m) {
    return std::ceil(length_m / step_m - kSlack_m / step_m) * step_m;
}

// 0 to 180: a sheet turned by half a turn is the same sheet.
double as_turn_deg(double angle_deg) {
    double turn = std::fmod(angle_deg, 2 * kQuarterTurn_deg);
    if (turn < 0) turn += 2 * kQuarterTurn_deg;
    return turn > 2 * kQuarterTurn_deg - kSlack_m ? 0 : turn;
}

Done check(const SheetInput& in) {
    if (auto done = check_outline(in.outline); !done) return done;
    if (in.extra_mm.size() != in.outline.size())
        return impossible("edges", "there is not one extra for each edge", "give one for each, from AB");
    if (in.rolls_m.empty())
        return impossible("rolls_m", "no roll widths are given", "give the widths on sale");
    if (!(in.cut_to_m > 0))
        return impossible("cut_to_m", "lengths cannot be cut to steps of nothing", "give a step above 0");
    if (in.thickness_mm < 0 || in.density_kg_m3 < 0)
        return impossible("thickness_mm", "a sheet cannot weigh less than nothing",
                          "give thickness and density of 0 or more");
    for (const double width : in.rolls_m) {
        if (!(width > 0) || !std::isfinite(width))
            return impossible("rolls_m", "a roll of no width", "give widths above 0");
    }
    return {};
}

} // namespace

double sheet_weight_kg(double area_m2, double thickness_mm, double density_kg_m3) {
    return area_m2 * thickness_mm / 1000 * density_kg_m3;
}

Result<Polygon> widened(const Polygon& outline, const std::vector<double>& extra_mm) {
    std::vector<Line> lines;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        if (!std::isfinite(extra_mm[i]) || extra_mm[i] < 0)
            return impossible("edges", "an edge cannot need less than nothing",
                              "give 0 or more beyond each edge");
        lines.push_back(moved_out(edge(outline, i), extra_mm[i] / 1000));
    }
    Polygon wide;
    for (std::size_t i = 0; i < lines.size(); ++i)
        wide.push_back(meeting(lines[(i + lines.size() - 1) % lines.size()], lines[i]));
    return wide;
}

Result<Sheet> sheet(const SheetInput& in) {
    if (auto done = check(in); !done) return done.fault();
    const auto wide = widened(in.outline, in.extra_mm);
    if (!wide) return wide.fault();
    std::optional<Sheet> best;
    double narrowest_m = INFINITY;
    const double first_deg = edge_angle_deg(edge(in.outline, 0));
    for (const double angle : angles_to_try(*wide, in.rolls_m)) {
        const Box box = box_at(*wide, angle);
        narrowest_m = std::min(narrowest_m, box.across_m);
        for (const double roll : in.rolls_m) {
            if (box.across_m > roll + kSlack_m) continue;
            const double length = rounded_up_m(box.along_m, in.cut_to_m);
            const double area = roll * length;
            if (best && area >= best->area_m2 - kSlack_m) continue;
            best = Sheet{.roll_width_m = roll,
                         .length_m = length,
                         .turn_deg = as_turn_deg(angle - first_deg),
                         .area_m2 = area};
            best->needs_across_m = box.across_m;
            best->needs_along_m = box.along_m;
        }
    }
    if (!best)
        return impossible("rolls_m", "no roll on sale is wide enough for one piece",
                          "it takes " + shortest(narrowest_m, 3) + " m at the least");
    best->waste_pct = 100 * (best->area_m2 - area_m2(in.outline)) / best->area_m2;
    best->weight_kg = sheet_weight_kg(best->area_m2, in.thickness_mm, in.density_kg_m3);
    return *best;
}

} // namespace undersheet::trade
