#include "trade/outline_next.h"

#include <Eigen/Dense>

#include <algorithm>

namespace undersheet::trade {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;

// Corners in no special position: nothing in a line, no two lengths alike.
Point odd_place(std::size_t i) {
    const auto k = static_cast<double>(i + 1);
    const auto fraction = [](double x) { return x - static_cast<double>(static_cast<long>(x)); };
    return {10 * fraction(k * 0.618033988749895 + 0.05 * k * k * 0.7548776662),
            10 * fraction(k * k * 0.324717957244746)};
}

Index rank(std::size_t corners, const std::vector<TapedLine>& lines) {
    MatrixXd rows = MatrixXd::Zero(static_cast<Index>(lines.size()), 2 * static_cast<Index>(corners));
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const Point a = odd_place(lines[i].from);
        const Point b = odd_place(lines[i].to);
        const auto row = static_cast<Index>(i);
        for (const auto& [corner, sign] : {std::pair{lines[i].from, 1.0}, std::pair{lines[i].to, -1.0}}) {
            rows(row, 2 * static_cast<Index>(corner)) = sign * (a.x_m - b.x_m);
            rows(row, 2 * static_cast<Index>(corner) + 1) = sign * (a.y_m - b.y_m);
        }
    }
    Eigen::ColPivHouseholderQR<MatrixXd> qr(rows);
    qr.setThreshold(1e-9);
    return qr.rank();
}

bool is_taped(const std::vector<TapedLine>& lines, CornerPair pair) {
    return std::any_of(lines.begin(), lines.end(), [&](const TapedLine& line) {
        return (line.from == pair.from && line.to == pair.to) ||
               (line.from == pair.to && line.to == pair.from);
    });
}

// Sides first, then diagonals, each in the order of the corners.
std::vector<CornerPair> all_pairs(std::size_t corners) {
    std::vector<CornerPair> pairs;
    for (std::size_t reach = 1; reach <= corners / 2; ++reach)
        for (std::size_t i = 0; i < corners; ++i)
            if (2 * reach != corners || i < reach) pairs.push_back({i, (i + reach) % corners});
    return pairs;
}

} // namespace

std::optional<CornerPair> missing_tape(std::size_t corners, const std::vector<TapedLine>& lines) {
    const Index held = rank(corners, lines);
    if (held == 2 * static_cast<Index>(corners) - 3) return std::nullopt;
    for (const CornerPair pair : all_pairs(corners)) {
        std::vector<TapedLine> more = lines;
        more.push_back({pair.from, pair.to, 1, 1});
        if (rank(corners, more) > held) return pair;
    }
    return std::nullopt;
}

CornerPair most_telling_tape(const Strength& strength, const std::vector<TapedLine>& lines) {
    const std::vector<CornerPair> pairs = all_pairs(strength.corner_sd.size());
    const bool all_taped =
        std::all_of(pairs.begin(), pairs.end(), [&](CornerPair p) { return is_taped(lines, p); });
    CornerPair best = pairs.front();
    double widest = -1;
    for (const CornerPair pair : pairs)
        if ((all_taped || !is_taped(lines, pair)) && strength.sd_m[pair.from][pair.to] > widest + 1e-12) {
            widest = strength.sd_m[pair.from][pair.to];
            best = pair;
        }
    return best;
}

} // namespace undersheet::trade
