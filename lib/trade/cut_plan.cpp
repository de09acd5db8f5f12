#include "trade/cut_plan.h"

#include "trade/cut_filling.h"
#include "trade/cut_mixes.h"

#include <algorithm>
#include <utility>

namespace undersheet::trade {
namespace {

// The longest piece that is left, and with it what fills the bar best.
CutBar filled_round_longest(const CutTask& task, Counts need, std::size_t stock) {
    const std::size_t longest = first_of(need);
    --need[longest];
    auto filled = best_filling(task.sizes, need, task.sizes, task.stocks[stock].room - task.sizes[longest]);
    ++filled.pieces[longest];
    return {stock, std::move(filled.pieces)};
}

double cost_of_length(const CutTask& task, const CutBar& bar) {
    return static_cast<double>(task.stocks[bar.stock].cost) /
           static_cast<double>(total_of(bar.pieces, task.sizes));
}

CutBar cheapest_bar(const CutTask& task, const Counts& need) {
    CutBar best = filled_round_longest(task, need, 0);
    for (std::size_t stock = 1; stock < task.stocks.size(); ++stock) {
        if (task.stocks[stock].room < task.sizes[first_of(need)]) break;
        CutBar bar = filled_round_longest(task, need, stock);
        if (cost_of_length(task, bar) < cost_of_length(task, best)) best = std::move(bar);
    }
    return best;
}

std::int64_t cost_of(const CutTask& task, const std::vector<CutBar>& bars) {
    std::int64_t cost = 0;
    for (const CutBar& bar : bars) cost += task.stocks[bar.stock].cost;
    return cost;
}

// As somebody with a saw would do it: bar by bar, never looking back.
CutPlan plan_bar_by_bar(const CutTask& task) {
    CutPlan plan;
    for (Counts need = task.need; !has_none(need); need = without(need, plan.bars.back().pieces))
        plan.bars.push_back(cheapest_bar(task, need));
    plan.cost = cost_of(task, plan.bars);
    return plan;
}

CutSearch search_with_half(const CutTask& task, const CutMix& mix, CutBounds& bounds, CutsEffort& effort) {
    const CutsEffort half{(effort.steps + 1) / 2, (effort.fillings + 1) / 2};
    CutsEffort left = half;
    CutSearch found = search_plan(task, mix.bars, bounds, left);
    effort.steps -= half.steps - left.steps;
    effort.fillings -= half.fillings - left.fillings;
    return found;
}

} // namespace

CutPlan best_plan(const CutTask& task, CutsEffort effort) {
    CutPlan plan = plan_bar_by_bar(task);
    CutBounds bounds(task);
    CutMixes mixes(task, bounds.by_cost());
    std::int64_t undecided = plan.cost; // the cheapest mix that was given up, if it is cheaper
    while (mixes.at_least() < plan.cost) {
        const auto mix = effort.steps > 0 ? mixes.next(effort.fillings) : std::nullopt;
        if (!mix) {
            undecided = std::min(undecided, mixes.at_least());
            break;
        }
        if (mix->cost >= plan.cost) break;
        if (const auto bound = bounds.against(task.need, mix->bars, effort.steps)) {
            mixes.learn(bounds.for_all_stocks(bound->piece));
            continue;
        }
        CutSearch found = search_with_half(task, *mix, bounds, effort);
        if (found.holds == Holds::unknown) undecided = std::min(undecided, mix->cost);
        if (found.holds != Holds::yes) continue;
        plan.bars = std::move(found.plan);
        plan.cost = cost_of(task, plan.bars);
    }
    plan.at_least = std::min(plan.cost, undecided);
    plan.best = plan.at_least == plan.cost;
    return plan;
}

} // namespace undersheet::trade
