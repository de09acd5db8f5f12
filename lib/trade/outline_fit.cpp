#include "trade/outline_fit.h"

#include <Eigen/Dense>

#include <algorithm>
#include <cmath>

namespace undersheet::trade {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr int kMostFitSteps = 100;
constexpr double kSettled = 1e-14; // of the misfit: a step that mends less moves no corner that anybody sees
constexpr int kTrialSteps = 10;    // before a start is given up
constexpr double kSlow = 0.1;      // of the misfit: a step that mends less does not lead out of a wrong shape
constexpr double kRankLimit =
    1e-7; // relative to the largest column: looser than any taped roof, tighter than rounding

// Unknowns are x of B, then x and y of the corners after it; A and the y of B are the datum.
Index x_unknown(std::size_t corner) {
    return corner == 0 ? -1 : corner == 1 ? 0 : 2 * static_cast<Index>(corner) - 3;
}
Index y_unknown(std::size_t corner) { return corner <= 1 ? -1 : 2 * static_cast<Index>(corner) - 2; }
Index unknowns(std::size_t corners) { return 2 * static_cast<Index>(corners) - 3; }

// Adds how a quantity changes when this corner moves, skipping what the datum holds.
template <class Row>
void add_change(Row&& row, std::size_t corner, Point per_m) {
    if (const Index x = x_unknown(corner); x >= 0) row(x) += per_m.x_m;
    if (const Index y = y_unknown(corner); y >= 0) row(y) += per_m.y_m;
}

VectorXd length_change(const Polygon& corners, std::size_t from, std::size_t to) {
    VectorXd row = VectorXd::Zero(unknowns(corners.size()));
    const double length = std::max(distance_m(corners[from], corners[to]), 1e-9);
    const Point along{(corners[to].x_m - corners[from].x_m) / length,
                      (corners[to].y_m - corners[from].y_m) / length};
    add_change(row, to, along);
    add_change(row, from, {-along.x_m, -along.y_m});
    return row;
}

VectorXd area_change(const Polygon& corners) {
    const std::size_t n = corners.size();
    VectorXd row = VectorXd::Zero(unknowns(n));
    for (std::size_t i = 0; i < n; ++i) {
        const Point before = corners[(i + n - 1) % n];
        const Point after = corners[(i + 1) % n];
        add_change(row, i, {(after.y_m - before.y_m) / 2, (before.x_m - after.x_m) / 2});
    }
    return row;
}

// Rows are divided by the tape's doubt in metres, so that squared lengths are vpv.
MatrixXd design(const Polygon& corners, const std::vector<TapedLine>& lines) {
    MatrixXd rows(static_cast<Index>(lines.size()), unknowns(corners.size()));
    for (std::size_t i = 0; i < lines.size(); ++i)
        rows.row(static_cast<Index>(i)) =
            length_change(corners, lines[i].from, lines[i].to).transpose() * (1000 / lines[i].sd_mm);
    return rows;
}

VectorXd shortfall(const Polygon& corners, const std::vector<TapedLine>& lines) {
    VectorXd wanting(static_cast<Index>(lines.size()));
    for (std::size_t i = 0; i < lines.size(); ++i)
        wanting(static_cast<Index>(i)) =
            (lines[i].m - taped_length_m(corners, lines[i])) * 1000 / lines[i].sd_mm;
    return wanting;
}

Polygon stepped(Polygon corners, const VectorXd& step) {
    for (std::size_t i = 1; i < corners.size(); ++i) {
        corners[i].x_m += step(x_unknown(i));
        if (i > 1) corners[i].y_m += step(y_unknown(i));
    }
    return corners;
}

// The damped step (Levenberg, Marquardt): every column's own size, times the damping, is added to the normal equations. They lose
// digits, but a step only has to lead nearer; where it ends is decided by the shortfall, which loses none.
VectorXd damped_step(const MatrixXd& rows, const VectorXd& wanting, double damping) {
    MatrixXd normal = MatrixXd::Zero(rows.cols(), rows.cols());
    normal.selfadjointView<Eigen::Lower>().rankUpdate(rows.transpose());
    normal.diagonal() += damping * rows.colwise().squaredNorm().cwiseMax(1.0).transpose();
    return normal.selfadjointView<Eigen::Lower>().ldlt().solve(rows.transpose() * wanting);
}

Strength strength_of(const Polygon& corners, const MatrixXd& rows, const MatrixXd& covariance) {
    Strength out;
    const MatrixXd shadow =
        rows * covariance * rows.transpose(); // what the fit takes up of each tape's error
    const Index tapes = rows.rows();
    for (Index i = 0; i < tapes; ++i) out.redundancy.push_back(std::clamp(1 - shadow(i, i), 0.0, 1.0));
    out.ties.assign(out.redundancy.size(), std::vector<double>(out.redundancy.size(), 0));
    for (Index i = 0; i < tapes; ++i)
        for (Index j = 0; j < tapes; ++j) {
            const auto a = static_cast<std::size_t>(i);
            const auto b = static_cast<std::size_t>(j);
            const double size = std::sqrt(out.redundancy[a] * out.redundancy[b]);
            if (i != j && size > 0) out.ties[a][b] = std::min(std::abs(shadow(i, j)) / size, 1.0);
        }
    out.sd_m.assign(corners.size(), std::vector<double>(corners.size(), 0));
    for (std::size_t a = 0; a < corners.size(); ++a)
        for (std::size_t b = 0; b < corners.size(); ++b) {
            const VectorXd change = length_change(corners, a, b);
            out.sd_m[a][b] = std::sqrt(std::max(change.dot(covariance * change), 0.0));
        }
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const Index x = x_unknown(i);
        const Index y = y_unknown(i);
        out.corner_sd.push_back(
            {x < 0 ? 0 : std::sqrt(covariance(x, x)), y < 0 ? 0 : std::sqrt(covariance(y, y))});
    }
    const VectorXd change = area_change(corners);
    out.area_sd_m2 = std::sqrt(change.dot(covariance * change));
    return out;
}

} // namespace

double taped_length_m(const Polygon& corners, const TapedLine& line) {
    return distance_m(corners[line.from], corners[line.to]);
}

double misfit(const Polygon& corners, const std::vector<TapedLine>& lines) {
    return shortfall(corners, lines).squaredNorm();
}

Polygon set_down(const Polygon& corners) {
    const Point a = corners[0];
    const double length = std::max(distance_m(a, corners[1]), 1e-9);
    const double c = (corners[1].x_m - a.x_m) / length;
    const double s = (corners[1].y_m - a.y_m) / length;
    Polygon out;
    for (const Point p : corners)
        out.push_back({c * (p.x_m - a.x_m) + s * (p.y_m - a.y_m), c * (p.y_m - a.y_m) - s * (p.x_m - a.x_m)});
    out[0] = {0, 0};
    out[1].y_m = 0;
    return out;
}

Fit fit(const Polygon& start, const std::vector<TapedLine>& lines, double hopeless_vpv) {
    Fit best{set_down(start), 0};
    best.vpv = misfit(best.corners, lines);
    double damping = 1e-6;
    for (int i = 0; i < kMostFitSteps && damping < 1e12; ++i) {
        const VectorXd step =
            damped_step(design(best.corners, lines), shortfall(best.corners, lines), damping);
        const Polygon next = stepped(best.corners, step);
        const double vpv = misfit(next, lines);
        const bool is_better = vpv <= best.vpv;
        const bool is_settled = is_better && damping <= 1 && best.vpv - vpv < kSettled * best.vpv;
        const bool is_hopeless =
            is_better && i >= kTrialSteps && vpv > hopeless_vpv && best.vpv - vpv < kSlow * best.vpv;
        if (is_better) best = {next, vpv};
        if (is_settled || is_hopeless || step.lpNorm<Eigen::Infinity>() < 1e-11) break;
        damping = is_better ? damping / 10 : damping * 10;
    }
    return best;
}

std::optional<Strength> strength(const Polygon& fitted, const std::vector<TapedLine>& lines) {
    const MatrixXd rows = design(fitted, lines);
    if (rows.rows() < rows.cols()) return std::nullopt;
    Eigen::ColPivHouseholderQR<MatrixXd> qr(rows);
    qr.setThreshold(kRankLimit);
    if (qr.rank() < rows.cols()) return std::nullopt;
    const Index n = rows.cols();
    const MatrixXd upper = qr.matrixR().topRows(n).triangularView<Eigen::Upper>();
    const MatrixXd inverse = upper.triangularView<Eigen::Upper>().solve(MatrixXd::Identity(n, n));
    const MatrixXd ordered = qr.colsPermutation() * inverse;
    return strength_of(fitted, rows, ordered * ordered.transpose());
}

} // namespace undersheet::trade
