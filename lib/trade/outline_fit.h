// Fits corners to taped lengths by least squares: the shape that leaves the smallest weighted sum of squared misfits.
//
// Promises: corner A stands at (0,0) and B on +x; the sum is stationary to about 1e-9 m in every corner, where tapes contradict one
//   another by metres to 1e-6 m. Residuals are adjusted minus observed, w = residual / (sd √redundancy).
// Comes from: Gauss-Newton steps damped after Levenberg and Marquardt; redundancy from the projection onto the columns of the
//   design matrix (Baarda), by Householder QR; docs/formulas.md#outline.
// Does not: find where to start (outline_start.h) or judge the tapes (outline.h). Corners are known by number here.
// Threads: pure functions on values.
#pragma once

#include "trade/polygon.h"

#include <limits>
#include <optional>

namespace undersheet::trade {

struct TapedLine {
    std::size_t from = 0;
    std::size_t to = 0;
    double m = 0;
    double sd_mm = 3;
};

// Redundancy below which a tape stands on its own word: an error would show in it at under a hundredth of its size.
inline constexpr double kUnchecked = 1e-4;

struct Fit {
    Polygon corners;
    double vpv = 0; // Σ (residual / sd)²
};

// How well the lengths hold the shape, worked out at a fit.
struct Strength {
    std::vector<double> redundancy; // per tape, 0 (nothing checks it) to 1; they add up to the spare tapes
    std::vector<std::vector<double>>
        ties; // how far the w of two tapes go together, 0 to 1; 1: cannot be told apart
    std::vector<std::vector<double>> sd_m; // of the distance between two corners, taped or not
    std::vector<Point> corner_sd;          // of x and of y, m
    double area_sd_m2 = 0;
};

[[nodiscard]] double taped_length_m(const Polygon& corners, const TapedLine& line);
[[nodiscard]] double misfit(const Polygon& corners, const std::vector<TapedLine>& lines); // vpv, unadjusted
// Turned and shifted so that A is at (0,0) and B on +x.
[[nodiscard]] Polygon set_down(const Polygon& corners);

// Gives up where the sum stays above hopeless_vpv and goes down slowly: such a start leads to no shape that is meant.
[[nodiscard]] Fit fit(const Polygon& start, const std::vector<TapedLine>& lines,
                      double hopeless_vpv = std::numeric_limits<double>::infinity());
// Nothing when the lengths leave a corner loose (to first order) at this shape.
[[nodiscard]] std::optional<Strength> strength(const Polygon& fitted, const std::vector<TapedLine>& lines);

} // namespace undersheet::trade
