#include "trade/cut_cover.h"

#include <algorithm>
#include <cstddef>
#include <numeric>
#include <utility>

namespace undersheet::trade {
namespace {

constexpr double kNought = 1e-9;

double product(const std::vector<double>& a, const std::vector<double>& b) {
    return std::inner_product(a.begin(), a.end(), b.begin(), 0.0);
}

// The column in use that runs out first when the new one comes in; of several that do, the one that leaves most accurately.
std::size_t leaving(const std::vector<double>& amounts, const std::vector<double>& uses) {
    std::size_t out = uses.size();
    double least = 0;
    for (std::size_t i = 0; i < uses.size(); ++i) {
        if (uses[i] <= kNought) continue;
        const double ratio = std::max(0.0, amounts[i]) / uses[i];
        const bool is_tie = out != uses.size() && ratio < least + kNought && ratio > least - kNought;
        if (out != uses.size() && (is_tie ? uses[i] <= uses[out] : ratio > least)) continue;
        least = ratio;
        out = i;
    }
    return out;
}

} // namespace

Cover::Cover(std::vector<double> wanted, std::vector<double> costs)
    : inverse_(wanted.size(), std::vector<double>(wanted.size(), 0.0)), amounts_(std::move(wanted)),
      costs_(std::move(costs)) {
    for (std::size_t i = 0; i < inverse_.size(); ++i) inverse_[i][i] = 1;
    worths_ = costs_;
}

double Cover::cost() const { return product(costs_, amounts_); }

bool Cover::let_spare() {
    const auto least = std::min_element(worths_.begin(), worths_.end());
    if (least == worths_.end() || *least >= -kNought) return false;
    std::vector<double> spare(worths_.size(), 0.0);
    spare[static_cast<std::size_t>(least - worths_.begin())] = -1;
    take(spare, 0);
    return true;
}

void Cover::take(const std::vector<double>& column, double cost) {
    std::vector<double> uses;
    for (const auto& row : inverse_) uses.push_back(product(row, column));
    const std::size_t out = leaving(amounts_, uses);
    if (out == uses.size()) return; // only rounding can do this: a cover costs something
    for (double& held : inverse_[out]) held /= uses[out];
    amounts_[out] /= uses[out];
    for (std::size_t i = 0; i < uses.size(); ++i) {
        if (i == out || uses[i] == 0) continue;
        for (std::size_t j = 0; j < uses.size(); ++j) inverse_[i][j] -= uses[i] * inverse_[out][j];
        amounts_[i] -= uses[i] * amounts_[out];
    }
    costs_[out] = cost;
    settle_worths();
}

void Cover::settle_worths() {
    std::fill(worths_.begin(), worths_.end(), 0.0);
    for (std::size_t i = 0; i < costs_.size(); ++i) {
        for (std::size_t j = 0; j < worths_.size(); ++j) worths_[j] += costs_[i] * inverse_[i][j];
    }
}

} // namespace undersheet::trade
