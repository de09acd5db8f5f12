#include "trade/cut_mixes.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace undersheet::trade {
namespace {

constexpr double kLessRounding = 1 - 1e-12; // far more than the rounding of one product

} // namespace

CutMixes::CutMixes(const CutTask& task, CutBound by_cost)
    : task_(task), cost_of_worth_(task.stocks.size()), most_worth_(task.stocks.size()) {
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t i = task.stocks.size(); i-- > 0;) {
        const double worth = static_cast<double>(std::max<std::int64_t>(1, by_cost.bar[i]));
        least = std::min(least, static_cast<double>(task.stocks[i].cost) / worth);
        cost_of_worth_[i] = least;
        most_worth_[i] =
            std::max(static_cast<std::int64_t>(worth), i + 1 < most_worth_.size() ? most_worth_[i + 1] : 0);
    }
    for (const CutStock& stock : task.stocks) costs_.push_back(stock.cost);
    bounds_.push_back(std::move(by_cost));
    add(Counts(task.stocks.size(), 0), 0);
}

void CutMixes::add(Counts bars, std::size_t from) {
    const std::int64_t missing =
        std::max<std::int64_t>(0, total_of(task_.need, bounds_[0].piece) - total_of(bars, bounds_[0].bar));
    const double cost_missing = static_cast<double>(missing) * cost_of_worth_[from] * kLessRounding;
    const std::int64_t bars_missing = (missing + most_worth_[from] - 1) / most_worth_[from];
    const std::int64_t cost = total_of(bars, costs_) + static_cast<std::int64_t>(std::floor(cost_missing));
    branches_.insert({next_step(cost, total_of(bars) + bars_missing), from, std::move(bars)});
}

// Between two steps lie only plans of at most a bar for each piece.
std::int64_t CutMixes::next_step(std::int64_t cost, std::int64_t bars) const {
    const std::int64_t beyond = cost % task_.cost_step;
    const std::int64_t step = cost - beyond + (beyond <= total_of(task_.need) ? 0 : task_.cost_step);
    return std::max(cost, step + bars);
}

void CutMixes::branch_out(const Branch& branch) {
    if (branch.from + 1 < task_.stocks.size()) add(branch.bars, branch.from + 1);
    Counts one_more = branch.bars;
    ++one_more[branch.from];
    add(std::move(one_more), branch.from);
}

bool CutMixes::could_be_enough(const Counts& bars) const {
    return std::none_of(bounds_.begin(), bounds_.end(),
                        [&](const CutBound& bound) { return is_ruled_out(bound, task_.need, bars); });
}

std::optional<CutMix> CutMixes::next(std::int64_t& looks) {
    for (; looks > 0; --looks) {
        const Branch cheapest = *branches_.begin();
        branches_.erase(branches_.begin());
        branch_out(cheapest);
        if (cheapest.from + 1 < task_.stocks.size() || !could_be_enough(cheapest.bars)) continue;
        return CutMix{cheapest.bars, total_of(cheapest.bars, costs_)};
    }
    return std::nullopt;
}

std::int64_t CutMixes::at_least() const { return branches_.begin()->at_least; }

} // namespace undersheet::trade
