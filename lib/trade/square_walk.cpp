#include "trade/square_walk.h"

#include <algorithm>
#include <array>

namespace undersheet::trade {

namespace {

constexpr std::size_t kMostSides = 14; // 2002 ways to turn; with sixteen sides there would be 8008

struct Walk {
    Polygon corners;
    double gap_m;
};

Walk walked(const std::vector<double>& sides_m, const std::vector<bool>& goes_left) {
    constexpr std::array<Point, 4> kWays{Point{1, 0}, Point{0, 1}, Point{-1, 0}, Point{0, -1}};
    Polygon corners{{0, 0}};
    std::size_t way = 0;
    for (std::size_t i = 0; i < sides_m.size(); ++i) {
        if (i > 0) way = (way + (goes_left[i] ? 1U : 3U)) % 4;
        const Point at = corners.back();
        corners.push_back({at.x_m + sides_m[i] * kWays[way].x_m, at.y_m + sides_m[i] * kWays[way].y_m});
    }
    const double gap_m = distance_m(corners.front(), corners.back());
    corners.pop_back();
    return {corners, gap_m};
}

} // namespace

std::vector<Polygon> square_walks(const std::vector<double>& sides_m, double gap_m) {
    const std::size_t n = sides_m.size();
    if (n < 4 || n % 2 != 0 || n > kMostSides) return {};
    if (std::count(sides_m.begin(), sides_m.end(), 0.0) > 0) return {};
    std::vector<bool> goes_left(n, false);
    std::fill(goes_left.end() - static_cast<std::ptrdiff_t>((n + 4) / 2), goes_left.end(), true);
    std::vector<Polygon> shapes;
    do {
        Walk walk = walked(sides_m, goes_left);
        if (walk.gap_m < gap_m && is_simple(walk.corners) && is_anticlockwise(walk.corners))
            shapes.push_back(std::move(walk.corners));
    } while (std::next_permutation(goes_left.begin(), goes_left.end()));
    return shapes;
}

} // namespace undersheet::trade
