#include "trade/outline_start.h"

#include "trade/square_walk.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <numbers>

namespace undersheet::trade {

namespace {

constexpr std::size_t kQuickCorners = 12; // up to here one search takes a moment
constexpr std::size_t kMostSpotsKept = 3; // places tried for a corner that more than two tapes hold
constexpr int kRoughRounds = 24;
constexpr double kSameSpot_m = 0.02;
constexpr double kSlipAllowed_m = 1.5; // a whole metre misread, and a little

// Mean taped length between two corners, 0 where none was taped.
using Lengths = std::vector<std::vector<double>>;

Lengths mean_lengths(std::size_t n, const std::vector<TapedLine>& lines) {
    Lengths sum(n, std::vector<double>(n, 0));
    Lengths count = sum;
    for (const TapedLine& line : lines)
        for (const auto& [a, b] : {std::pair{line.from, line.to}, std::pair{line.to, line.from}}) {
            sum[a][b] += line.m;
            count[a][b] += 1;
        }
    for (std::size_t a = 0; a < n; ++a)
        for (std::size_t b = 0; b < n; ++b)
            if (count[a][b] > 0) sum[a][b] /= count[a][b];
    return sum;
}

std::size_t ties_to(const Lengths& lengths, std::size_t corner, const std::vector<bool>& placed) {
    std::size_t ties = 0;
    for (std::size_t other = 0; other < placed.size(); ++other)
        if (placed[other] && lengths[corner][other] > 0) ++ties;
    return ties;
}

// The order in which corners can be placed from this pair, best held first; shorter than n where it gets stuck.
std::vector<std::size_t> placing_order(const Lengths& lengths, std::size_t first, std::size_t second) {
    std::vector<bool> placed(lengths.size(), false);
    std::vector<std::size_t> order{first, second};
    placed[first] = placed[second] = true;
    while (order.size() < lengths.size()) {
        std::size_t best = lengths.size();
        std::size_t most = 1;
        for (std::size_t corner = 0; corner < lengths.size(); ++corner) {
            const std::size_t ties = placed[corner] ? 0 : ties_to(lengths, corner, placed);
            if (ties > most) {
                most = ties;
                best = corner;
            }
        }
        if (best == lengths.size()) break;
        order.push_back(best);
        placed[best] = true;
    }
    return order;
}

std::vector<std::size_t> placing_order(const Lengths& lengths) {
    for (std::size_t a = 0; a < lengths.size(); ++a)
        for (std::size_t b = 0; b < lengths.size(); ++b)
            if (lengths[a][b] > 0)
                if (auto order = placing_order(lengths, a, b); order.size() == lengths.size()) return order;
    return {};
}

struct PartShape {
    Polygon corners;
    std::vector<bool> placed;
    double misfit_m2 = 0;
    double off_square = 0;
};

// Where two tapes put a corner: both sides of the line between their other ends, or the nearest thing to it.
std::array<Point, 2> two_spots(Point a, double from_a, Point b, double from_b) {
    const double base = std::max(distance_m(a, b), 1e-6);
    const double along = (base * base + from_a * from_a - from_b * from_b) / (2 * base);
    const double aside = std::sqrt(std::max(from_a * from_a - along * along, 1e-6));
    const Point u{(b.x_m - a.x_m) / base, (b.y_m - a.y_m) / base};
    const Point foot{a.x_m + along * u.x_m, a.y_m + along * u.y_m};
    return {Point{foot.x_m - aside * u.y_m, foot.y_m + aside * u.x_m},
            Point{foot.x_m + aside * u.y_m, foot.y_m - aside * u.x_m}};
}

struct Spot {
    Point at;
    double misfit_m2;
};

double misfit_m2(const PartShape& shape, const Lengths& lengths, std::size_t corner, Point at) {
    double sum = 0;
    for (std::size_t other = 0; other < shape.placed.size(); ++other)
        if (shape.placed[other] && lengths[corner][other] > 0)
            sum += std::pow(distance_m(at, shape.corners[other]) - lengths[corner][other], 2);
    return sum;
}

std::vector<Spot> all_spots(const PartShape& shape, const Lengths& lengths, std::size_t corner) {
    std::vector<Spot> spots;
    for (std::size_t a = 0; a < shape.placed.size(); ++a)
        for (std::size_t b = a + 1; b < shape.placed.size(); ++b)
            if (shape.placed[a] && shape.placed[b] && lengths[corner][a] > 0 && lengths[corner][b] > 0)
                for (const Point at :
                     two_spots(shape.corners[a], lengths[corner][a], shape.corners[b], lengths[corner][b]))
                    spots.push_back({at, misfit_m2(shape, lengths, corner, at)});
    std::stable_sort(spots.begin(), spots.end(),
                     [](const Spot& a, const Spot& b) { return a.misfit_m2 < b.misfit_m2; });
    return spots;
}

std::vector<Spot> likely_spots(const PartShape& shape, const Lengths& lengths, std::size_t corner) {
    std::vector<Spot> kept;
    for (const Spot& spot : all_spots(shape, lengths, corner)) {
        if (kept.size() == kMostSpotsKept) break;
        if (!kept.empty() && spot.misfit_m2 > kept[0].misfit_m2 + kSlipAllowed_m * kSlipAllowed_m) break;
        const bool is_new = std::none_of(kept.begin(), kept.end(), [&](const Spot& other) {
            return distance_m(other.at, spot.at) < kSameSpot_m;
        });
        if (is_new) kept.push_back(spot);
    }
    return kept;
}

// The sides of the roof that end at this corner and whose other end stands already.
std::vector<Segment> sides_at(const PartShape& shape, std::size_t corner) {
    const std::size_t n = shape.placed.size();
    std::vector<Segment> sides;
    for (const std::size_t other : {(corner + 1) % n, (corner + n - 1) % n})
        if (shape.placed[other]) sides.push_back({shape.corners[corner], shape.corners[other]});
    return sides;
}

bool is_crossed_at(const PartShape& shape, std::size_t corner) {
    const std::size_t n = shape.placed.size();
    for (const Segment& mine : sides_at(shape, corner))
        for (std::size_t i = 0; i < n; ++i) {
            const Segment side = edge(shape.corners, i);
            const bool stands = shape.placed[i] && shape.placed[(i + 1) % n];
            const bool meets = i == corner || (i + 1) % n == corner || distance_m(side.from, mine.to) == 0 ||
                               distance_m(side.to, mine.to) == 0;
            if (stands && !meets && do_touch(side, mine)) return true;
        }
    return false;
}

double angle_off_square(Point before, Point at, Point after) {
    const double turn =
        std::atan2(turn_m2(at, after, before), (after.x_m - at.x_m) * (before.x_m - at.x_m) +
                                                   (after.y_m - at.y_m) * (before.y_m - at.y_m));
    // A corner that does not turn at all is no better than one 30 degrees off: nobody names a corner on a straight side.
    return std::min(std::abs(std::abs(turn) * 180 / std::numbers::pi - 90), 30.0);
}

double off_square(const PartShape& shape) {
    const std::size_t n = shape.placed.size();
    double sum = 0;
    for (std::size_t i = 0; i < n; ++i) {
        const std::size_t before = (i + n - 1) % n;
        const std::size_t after = (i + 1) % n;
        if (shape.placed[before] && shape.placed[i] && shape.placed[after])
            sum +=
                std::pow(angle_off_square(shape.corners[before], shape.corners[i], shape.corners[after]), 2);
    }
    return sum;
}

// Likeliest first: misfits that a tape's ordinary error explains count as none, then the squarer shape leads.
bool is_likelier(const PartShape& a, const PartShape& b) {
    const auto step = [](double misfit) { return std::floor(std::sqrt(misfit) / 0.05); };
    if (step(a.misfit_m2) != step(b.misfit_m2)) return step(a.misfit_m2) < step(b.misfit_m2);
    return a.off_square < b.off_square;
}

std::vector<PartShape> with_corner(const std::vector<PartShape>& shapes, const Lengths& lengths,
                                   std::size_t corner, std::size_t most) {
    std::vector<PartShape> next;
    for (const PartShape& shape : shapes)
        for (const Spot& spot : likely_spots(shape, lengths, corner)) {
            PartShape longer = shape;
            longer.corners[corner] = spot.at;
            longer.placed[corner] = true;
            if (is_crossed_at(longer, corner)) continue;
            longer.misfit_m2 += spot.misfit_m2;
            longer.off_square = off_square(longer);
            next.push_back(std::move(longer));
        }
    std::stable_sort(next.begin(), next.end(), is_likelier);
    if (next.size() > most) next.erase(next.begin() + static_cast<std::ptrdiff_t>(most), next.end());
    return next;
}

std::vector<Polygon> placed_shapes(const Lengths& lengths, std::size_t most) {
    const std::vector<std::size_t> order = placing_order(lengths);
    if (order.empty()) return {};
    PartShape pair{Polygon(lengths.size()), std::vector<bool>(lengths.size(), false)};
    pair.corners[order[1]] = {lengths[order[0]][order[1]], 0};
    pair.placed[order[0]] = pair.placed[order[1]] = true;
    std::vector<PartShape> shapes{pair};
    for (std::size_t i = 2; i < order.size(); ++i) {
        shapes = with_corner(shapes, lengths, order[i], most);
        // The whole plan mirrored is the same plan: the third corner need only be tried on one side.
        if (i == 2)
            std::erase_if(shapes, [&](const PartShape& shape) { return shape.corners[order[2]].y_m < 0; });
    }
    std::vector<Polygon> out;
    for (PartShape& shape : shapes) out.push_back(std::move(shape.corners));
    return out;
}

// Numbers that look thrown but are the same everywhere (a 64-bit linear congruence).
class Throw {
public:
    double between(double low, double high) {
        state_ = state_ * 6364136223846793005ULL + 1442695040888963407ULL;
        return low + (high - low) * (static_cast<double>(state_ >> 11U) / 9007199254740992.0);
    }

private:
    std::uint64_t state_ = 3;
};

std::vector<double> side_lengths(const Lengths& lengths) {
    std::vector<double> sides;
    for (std::size_t i = 0; i < lengths.size(); ++i) sides.push_back(lengths[i][(i + 1) % lengths.size()]);
    return sides;
}

std::vector<Polygon> rough_rounds(std::size_t n, const std::vector<TapedLine>& lines) {
    double longest = 0;
    for (const TapedLine& line : lines) longest = std::max(longest, line.m);
    Throw thrown;
    std::vector<Polygon> out;
    for (int round = 0; round < kRoughRounds; ++round) {
        Polygon polygon;
        for (std::size_t i = 0; i < n; ++i) {
            const double angle = (static_cast<double>(i) + thrown.between(0, 0.8)) * 2 * std::numbers::pi /
                                 static_cast<double>(n);
            const double radius = longest * thrown.between(0.2, 0.6);
            polygon.push_back({radius * std::cos(angle), radius * std::sin(angle)});
        }
        const Polygon fitted = fit(polygon, lines).corners;
        out.push_back(fitted);
    }
    return out;
}

void keep_sound(std::vector<Polygon>& shapes) {
    for (Polygon& shape : shapes) {
        if (!is_anticlockwise(shape))
            for (Point& p : shape) p.y_m = -p.y_m;
        shape = set_down(shape);
    }
    std::erase_if(shapes, [](const Polygon& shape) { return !is_simple(shape); });
}

} // namespace

double off_square_deg(const Polygon& polygon) {
    const PartShape whole{polygon, std::vector<bool>(polygon.size(), true)};
    return std::sqrt(off_square(whole) / static_cast<double>(polygon.size()));
}

SearchEffort SearchEffort::again(std::size_t corners, double hopeless_vpv) {
    SearchEffort effort;
    effort.hopeless_vpv = hopeless_vpv;
    if (corners <= kQuickCorners) return effort;
    const auto share = [&](std::size_t most) {
        return std::max<std::size_t>(1, most * kQuickCorners * kQuickCorners / (corners * corners));
    };
    effort.most_part_shapes = share(effort.most_part_shapes);
    effort.most_adjusted = share(effort.most_adjusted);
    return effort;
}

std::vector<Polygon> first_shapes(std::size_t corners, const std::vector<TapedLine>& lines,
                                  std::size_t most_part_shapes) {
    const Lengths lengths = mean_lengths(corners, lines);
    std::vector<Polygon> shapes = placed_shapes(lengths, most_part_shapes);
    std::vector<Polygon> square = square_walks(side_lengths(lengths), 2 * kSlipAllowed_m);
    shapes.insert(shapes.end(), square.begin(), square.end());
    keep_sound(shapes);
    if (shapes.empty()) {
        shapes = rough_rounds(corners, lines);
        keep_sound(shapes);
    }
    std::stable_sort(shapes.begin(), shapes.end(), [&](const Polygon& a, const Polygon& b) {
        const double first = std::floor(std::log2(1 + misfit(a, lines)));
        const double second = std::floor(std::log2(1 + misfit(b, lines)));
        return first != second ? first < second : off_square_deg(a) < off_square_deg(b);
    });
    return shapes;
}

} // namespace undersheet::trade
