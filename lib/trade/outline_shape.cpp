#include "trade/outline_shape.h"

#include "trade/chi_square.h"

#include <algorithm>
#include <cmath>

namespace undersheet::trade {

namespace {

constexpr double kHopeless = 1000;   // times the limit at the start: adjusting will not bring it back
constexpr double kSameShape_m = 0.1; // two shapes whose lengths differ less are one
constexpr double kSquare_deg = 5; // a shape this near to right angles is meant to be right-angled (practice)
constexpr double kNotSquare_deg = 8; // and one this far off is not

int spare(std::size_t corners, const std::vector<TapedLine>& lines) {
    return static_cast<int>(lines.size()) - 2 * static_cast<int>(corners) + 3;
}

double by_chance(int spare_tapes) { return spare_tapes > 0 ? chi_square_at(0.999, spare_tapes) : 1e-3; }

// Up to here another shape counts as fitting about as well as the best.
double rival_limit(double best_vpv, int spare_tapes) {
    return std::max(by_chance(spare_tapes), 4 * best_vpv);
}

Rival widest_difference(const Polygon& here, const Polygon& there) {
    Rival widest;
    for (std::size_t a = 0; a < here.size(); ++a)
        for (std::size_t b = a + 1; b < here.size(); ++b) {
            const double mine = distance_m(here[a], here[b]);
            const double other = distance_m(there[a], there[b]);
            if (std::abs(mine - other) > std::abs(widest.here_m - widest.there_m))
                widest = {{a, b}, mine, other};
        }
    return widest;
}

bool is_same_shape(const Polygon& a, const Polygon& b) {
    const Rival difference = widest_difference(a, b);
    return std::abs(difference.here_m - difference.there_m) < kSameShape_m;
}

// Adjusted, simple, each shape once, best fit first.
std::vector<Fit> adjusted_shapes(std::size_t corners, const std::vector<TapedLine>& lines,
                                 const SearchEffort& effort) {
    std::vector<Fit> fits;
    std::size_t tried = 0;
    double best = -1;
    for (const Polygon& start : first_shapes(corners, lines, effort.most_part_shapes)) {
        const double limit = rival_limit(std::max(best, 0.0), spare(corners, lines));
        if (best >= 0 && (tried >= effort.most_adjusted || misfit(start, lines) > kHopeless * limit)) break;
        ++tried;
        Fit adjusted = fit(start, lines, effort.hopeless_vpv);
        if (!is_simple(adjusted.corners) || !is_anticlockwise(adjusted.corners)) continue;
        const bool is_new = std::none_of(fits.begin(), fits.end(), [&](const Fit& other) {
            return is_same_shape(other.corners, adjusted.corners);
        });
        if (is_new) fits.push_back(std::move(adjusted));
        if (is_new && (best < 0 || fits.back().vpv < best)) best = fits.back().vpv;
    }
    std::stable_sort(fits.begin(), fits.end(), [](const Fit& a, const Fit& b) { return a.vpv < b.vpv; });
    return fits;
}

std::ptrdiff_t inward_corners(const Polygon& polygon) {
    const std::vector<double> angles = angles_deg(polygon);
    return std::count_if(angles.begin(), angles.end(), [](double angle) { return angle > 180; });
}

// Puts the shape to be taken first; false when nothing decides.
bool put_likelier_first(std::vector<Fit>& equals) {
    std::stable_sort(equals.begin(), equals.end(), [](const Fit& a, const Fit& b) {
        return off_square_deg(a.corners) < off_square_deg(b.corners);
    });
    if (off_square_deg(equals[0].corners) <= kSquare_deg &&
        off_square_deg(equals[1].corners) >= kNotSquare_deg)
        return true;
    std::stable_sort(equals.begin(), equals.end(), [](const Fit& a, const Fit& b) {
        return inward_corners(a.corners) < inward_corners(b.corners);
    });
    return inward_corners(equals[0].corners) < inward_corners(equals[1].corners);
}

} // namespace

std::optional<FoundShape> found_shape(std::size_t corners, const std::vector<TapedLine>& lines,
                                      const SearchEffort& effort) {
    std::vector<Fit> fits = adjusted_shapes(corners, lines, effort);
    if (fits.empty()) return std::nullopt;
    const Fit best = fits[0];
    const int spare_tapes = spare(corners, lines);
    std::erase_if(fits, [&](const Fit& other) { return other.vpv > rival_limit(best.vpv, spare_tapes); });
    if (fits.size() == 1) return FoundShape{best, std::nullopt};
    // Where no shape fits, a tape is wrong, and that has to be said first: the nearest shape is shown as it is.
    const bool is_decided = put_likelier_first(fits) || best.vpv > by_chance(spare_tapes);
    Rival rival = widest_difference(fits[0].corners, fits[1].corners);
    rival.is_undecided = !is_decided;
    return FoundShape{fits[0], rival};
}

} // namespace undersheet::trade
