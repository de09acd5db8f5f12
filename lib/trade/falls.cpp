#include "trade/falls.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace undersheet::trade {
namespace {

constexpr double kLevel_mm_m =
    1e-6; // flatter than this is level: a thousandth of a millimetre in a kilometre

Fault impossible_fall(const std::string& what) {
    return {Code::value_impossible, what, "levels", "give at least three levels that do not lie in one line"};
}

struct Sums {
    double x = 0, y = 0, z = 0;
    double xx = 0, xy = 0, yy = 0, xz = 0, yz = 0;
};

// Sums about the centre: small numbers, so the normal equations lose nothing.
Sums centred_sums(const std::vector<Level>& levels) {
    Sums sums;
    const auto n = static_cast<double>(levels.size());
    for (const Level& level : levels) {
        sums.x += level.x_m / n;
        sums.y += level.y_m / n;
        sums.z += level.z_mm / n;
    }
    for (const Level& level : levels) {
        const double dx = level.x_m - sums.x;
        const double dy = level.y_m - sums.y;
        const double dz = level.z_mm - sums.z;
        sums.xx += dx * dx;
        sums.xy += dx * dy;
        sums.yy += dy * dy;
        sums.xz += dx * dz;
        sums.yz += dy * dz;
    }
    return sums;
}

double residual_mm(const Plane& plane, const Level& level) {
    return level.z_mm - (plane.at_origin_mm + plane.per_x_mm_m * level.x_m + plane.per_y_mm_m * level.y_m);
}

void add_residuals(Plane& plane, const std::vector<Level>& levels) {
    double squares = 0;
    for (const Level& level : levels) {
        plane.residuals_mm.push_back(residual_mm(plane, level));
        squares += plane.residuals_mm.back() * plane.residuals_mm.back();
    }
    if (levels.size() > 3) plane.rms_mm = std::sqrt(squares / static_cast<double>(levels.size() - 3));
}

void add_direction(Plane& plane) {
    const double steepness_mm_m = std::hypot(plane.per_x_mm_m, plane.per_y_mm_m);
    if (steepness_mm_m < kLevel_mm_m) return;
    plane.fall_1_in = 1000 / steepness_mm_m;
    const double degrees = std::atan2(-plane.per_y_mm_m, -plane.per_x_mm_m) * 180 / std::numbers::pi;
    plane.toward_deg = degrees < 0 ? degrees + 360 : degrees;
}

// The uphill direction as a unit vector.
Point uphill(const Plane& plane) {
    const double steepness = std::hypot(plane.per_x_mm_m, plane.per_y_mm_m);
    return {plane.per_x_mm_m / steepness, plane.per_y_mm_m / steepness};
}

// The nearest level in the cone above level i; nothing at the top.
std::optional<std::size_t> above(const std::vector<Level>& levels, std::size_t i, Point up,
                                 double off_line_deg) {
    const double least_cosine = std::cos(off_line_deg * std::numbers::pi / 180) - 1e-12; // 45° itself counts
    std::optional<std::size_t> best;
    double best_m = 0;
    for (std::size_t k = 0; k < levels.size(); ++k) {
        const double dx = levels[k].x_m - levels[i].x_m;
        const double dy = levels[k].y_m - levels[i].y_m;
        const double apart_m = std::hypot(dx, dy);
        if (k == i || apart_m <= 0 || (dx * up.x_m + dy * up.y_m) / apart_m < least_cosine) continue;
        if (best && apart_m >= best_m) continue;
        best = k;
        best_m = apart_m;
    }
    return best;
}

std::vector<Step> all_steps(const std::vector<Level>& levels, Point up, const FallRules& rules) {
    std::vector<Step> steps;
    for (std::size_t i = 0; i < levels.size(); ++i) {
        const auto k = above(levels, i, up, rules.off_line_deg);
        if (!k) continue;
        const double along_m =
            (levels[*k].x_m - levels[i].x_m) * up.x_m + (levels[*k].y_m - levels[i].y_m) * up.y_m;
        steps.push_back(
            {.lower = i, .upper = *k, .along_m = along_m, .rise_mm = levels[*k].z_mm - levels[i].z_mm});
    }
    return steps;
}

using Chain = std::vector<std::size_t>; // places in the steps, going up

// Every way up from a level that no step leads to.
std::vector<Chain> chains_of(const std::vector<Step>& steps, std::size_t level_count) {
    std::vector<std::optional<std::size_t>> step_from(level_count);
    std::vector<bool> is_reached(level_count, false);
    for (std::size_t s = 0; s < steps.size(); ++s) {
        step_from[steps[s].lower] = s;
        is_reached[steps[s].upper] = true;
    }
    std::vector<Chain> chains;
    for (std::size_t i = 0; i < level_count; ++i) {
        if (is_reached[i] || !step_from[i]) continue;
        Chain chain;
        for (auto s = step_from[i]; s; s = step_from[steps[*s].upper]) chain.push_back(*s);
        chains.push_back(std::move(chain));
    }
    return chains;
}

struct Run {
    std::size_t first = 0, last = 0; // steps of the chain, both included
    double along_m = 0, rise_mm = 0;
};

void lengthen(Run& run, const Step& by) {
    ++run.last;
    run.along_m += by.along_m;
    run.rise_mm += by.rise_mm;
}

Run run_between(const std::vector<Step>& steps, const Chain& chain, std::size_t first, std::size_t last) {
    const Step& start = steps[chain[first]];
    Run run{.first = first, .last = first, .along_m = start.along_m, .rise_mm = start.rise_mm};
    for (std::size_t c = first + 1; c <= last; ++c) lengthen(run, steps[chain[c]]);
    return run;
}

// By more than rounding, so that of equal runs the first stands on every machine.
bool is_flatter(double along_a_m, double rise_a_mm, double along_b_m, double rise_b_mm) {
    constexpr double kRounding_mm_m = 1e-9;
    return rise_a_mm / along_a_m < rise_b_mm / along_b_m - kRounding_mm_m;
}

// The shortest run of the chain that holds step `at` and is long enough; of equally short ones the flattest.
Run run_for(const std::vector<Step>& steps, const Chain& chain, std::size_t at, double base_m) {
    constexpr double kSame_m = 1e-9;
    Run best = run_between(steps, chain, 0, chain.size() - 1);
    for (std::size_t first = 0; first <= at; ++first) {
        Run run = run_between(steps, chain, first, at);
        for (std::size_t last = at; last < chain.size(); ++last) {
            if (last > at) lengthen(run, steps[chain[last]]);
            if (run.along_m < base_m - kSame_m) continue;
            const bool shorter = run.along_m < best.along_m - kSame_m;
            const bool as_short = run.along_m < best.along_m + kSame_m;
            if (shorter || (as_short && is_flatter(run.along_m, run.rise_mm, best.along_m, best.rise_mm)))
                best = run;
            break; // longer runs from here are no shorter
        }
    }
    return best;
}

void judge_over_runs(std::vector<Step>& steps, std::size_t level_count, double base_m) {
    for (const Chain& chain : chains_of(steps, level_count)) {
        for (std::size_t at = 0; at < chain.size(); ++at) {
            const Run run = run_for(steps, chain, at, base_m);
            Step& step = steps[chain[at]];
            // Two chains may share a step: the flatter of the two runs counts.
            if (step.run_m > 0 && !is_flatter(run.along_m, run.rise_mm, step.run_m, step.run_rise_mm))
                continue;
            step.run_m = run.along_m;
            step.run_rise_mm = run.rise_mm;
            step.run_lower = steps[chain[run.first]].lower;
            step.run_upper = steps[chain[run.last]].upper;
        }
    }
}

} // namespace

std::optional<double> fall_1_in(double along_m, double rise_mm) {
    if (rise_mm == 0) return std::nullopt;
    return along_m * 1000 / rise_mm;
}

Result<Plane> fit_plane(const std::vector<Level>& levels) {
    if (levels.size() < 3) return impossible_fall(std::to_string(levels.size()) + " levels make no plane");
    for (const Level& level : levels) {
        if (!std::isfinite(level.x_m) || !std::isfinite(level.y_m) || !std::isfinite(level.z_mm))
            return impossible_fall("a level is not a number");
    }
    const Sums sums = centred_sums(levels);
    const double determinant = sums.xx * sums.yy - sums.xy * sums.xy;
    const double spread = sums.xx + sums.yy;
    if (determinant <= 1e-12 * spread * spread) return impossible_fall("the levels lie in one line");
    Plane plane;
    plane.per_x_mm_m = (sums.xz * sums.yy - sums.yz * sums.xy) / determinant;
    plane.per_y_mm_m = (sums.yz * sums.xx - sums.xz * sums.xy) / determinant;
    plane.at_origin_mm = sums.z - plane.per_x_mm_m * sums.x - plane.per_y_mm_m * sums.y;
    add_residuals(plane, levels);
    add_direction(plane);
    return plane;
}

Result<Falls> falls(const std::vector<Level>& levels, const FallRules& rules) {
    auto plane = fit_plane(levels);
    if (!plane) return plane.fault();
    Falls result{.plane = *std::move(plane), .steps = {}};
    if (!result.plane.fall_1_in) return result;
    result.steps = all_steps(levels, uphill(result.plane), rules);
    judge_over_runs(result.steps, levels.size(), rules.base_m);
    for (std::size_t s = 0; s < result.steps.size(); ++s) {
        const Step& step = result.steps[s];
        const Step* flattest = result.flattest ? &result.steps[*result.flattest] : nullptr;
        if (flattest == nullptr ||
            is_flatter(step.run_m, step.run_rise_mm, flattest->run_m, flattest->run_rise_mm))
            result.flattest = s;
    }
    return result;
}

std::optional<double> off_neighbours_mm(const std::vector<Level>& levels, std::size_t i) {
    constexpr std::size_t kMostNeighbours = 8;
    std::vector<Level> others;
    for (std::size_t k = 0; k < levels.size(); ++k) {
        if (k != i) others.push_back(levels[k]);
    }
    if (others.size() < 4) return std::nullopt;
    const auto apart = [&](const Level& level) {
        return std::hypot(level.x_m - levels[i].x_m, level.y_m - levels[i].y_m);
    };
    std::stable_sort(others.begin(), others.end(),
                     [&](const Level& a, const Level& b) { return apart(a) < apart(b); });
    others.resize(std::min(others.size(), kMostNeighbours));
    const auto plane = fit_plane(others);
    return plane ? std::optional(residual_mm(*plane, levels[i])) : std::nullopt;
}

} // namespace undersheet::trade
