#include "trade/cut_bound.h"

#include "trade/cut_cover.h"
#include "trade/cut_filling.h"

#include <algorithm>
#include <cmath>

namespace undersheet::trade {
namespace {

constexpr double kWholeWorth = 10'000'000; // what is worth 1, in whole numbers
constexpr double kMostWorth = 10;
constexpr double kGain = 1e-7;
constexpr double kNotToBeHad = 1e6; // bars
constexpr int kMostRounds = 2000;

// Which pieces, from which stocks, at what cost a bar. A stock that has to be used so many times has a row of its own;
// the longest needs none, because it takes the place of any other.
struct Question {
    const CutTask& task;
    const Counts& need;
    std::vector<std::size_t> sizes, stocks, stock_rows;
    std::vector<double> costs; // of a bar of each stock
};

std::vector<std::size_t> present(const Counts& counts) {
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < counts.size(); ++i) {
        if (counts[i] > 0) found.push_back(i);
    }
    return found;
}

bool is_within(const Counts& pieces, const Counts& most) {
    return std::equal(pieces.begin(), pieces.end(), most.begin(), [](int a, int b) { return a <= b; });
}

class FractionalPlan {
public:
    FractionalPlan(const Question& asked, std::vector<CutBar>& known, std::vector<double> wanted,
                   std::vector<double> starts)
        : asked_(asked), known_(known),
          cover_(std::move(wanted), std::move(starts)), bound_{Amounts(asked.need.size(), 0),
                                                               Amounts(asked.task.stocks.size(), 0)} {}

    [[nodiscard]] double cost() const { return cover_.cost(); }
    [[nodiscard]] const CutBound& bound() const { return bound_; } // as of the last call of look_for_bar

    // True when the plan has changed, by what is known.
    bool improve() {
        if (cover_.let_spare()) return true;
        const CutBar* best = nullptr;
        double most = kGain;
        for (const CutBar& bar : known_) {
            const double gained = gain(bar);
            if (gained <= most || !is_within(bar.pieces, asked_.need)) continue;
            most = gained;
            best = &bar;
        }
        if (best != nullptr) take(*best);
        return best != nullptr;
    }

    // True when there is a bar that makes the plan cheaper; then it is known.
    bool look_for_bar() {
        settle_worths();
        double most = kGain;
        std::optional<CutBar> best;
        for (const std::size_t stock : asked_.stocks) {
            auto filled =
                best_filling(asked_.task.sizes, asked_.need, bound_.piece, asked_.task.stocks[stock].room);
            bound_.bar[stock] = filled.at_most;
            CutBar bar{stock, std::move(filled.pieces)};
            const double gained = gain(bar);
            if (gained <= most) continue;
            most = gained;
            best = std::move(bar);
        }
        if (best) known_.push_back(std::move(*best));
        return best.has_value();
    }

private:
    void settle_worths() {
        for (std::size_t row = 0; row < asked_.sizes.size(); ++row) {
            const double worth = std::clamp(cover_.worths()[row], 0.0, kMostWorth);
            bound_.piece[asked_.sizes[row]] = static_cast<std::int64_t>(std::floor(worth * kWholeWorth));
        }
    }

    [[nodiscard]] std::vector<double> column_of(const CutBar& bar) const {
        std::vector<double> column;
        for (const std::size_t size : asked_.sizes) column.push_back(bar.pieces[size]);
        for (const std::size_t stock : asked_.stock_rows) column.push_back(stock == bar.stock ? 1 : 0);
        return column;
    }

    [[nodiscard]] double gain(const CutBar& bar) const {
        const auto& worths = cover_.worths();
        double gained = -asked_.costs[bar.stock];
        std::size_t row = 0;
        for (const std::size_t size : asked_.sizes) gained += worths[row++] * bar.pieces[size];
        for (const std::size_t stock : asked_.stock_rows)
            gained += stock == bar.stock ? worths[row] : 0, ++row;
        return gained;
    }

    void take(const CutBar& bar) { cover_.take(column_of(bar), asked_.costs[bar.stock]); }

    const Question& asked_;
    std::vector<CutBar>& known_;
    Cover cover_;
    CutBound bound_;
};

std::vector<double> wanted_of(const Question& asked, const Counts& bars) {
    std::vector<double> wanted;
    for (const std::size_t size : asked.sizes) wanted.push_back(asked.need[size]);
    for (const std::size_t stock : asked.stock_rows) wanted.push_back(bars[stock]);
    return wanted;
}

CutBound by_length(const CutTask& task) {
    CutBound bound{task.sizes, {}};
    for (const CutStock& stock : task.stocks) bound.bar.push_back(stock.room);
    return bound;
}

} // namespace

bool is_ruled_out(const CutBound& bound, const Counts& need, const Counts& bars) {
    return total_of(need, bound.piece) > total_of(bars, bound.bar);
}

CutBound CutBounds::for_all_stocks(const Amounts& piece) const {
    CutBound bound{piece, {}};
    for (const CutStock& stock : task_.stocks)
        bound.bar.push_back(best_filling(task_.sizes, task_.need, piece, stock.room).at_most);
    return bound;
}

CutBound CutBounds::by_cost() {
    Question asked{task_, task_.need, present(task_.need), {}, {}, {}};
    for (const CutStock& stock : task_.stocks) {
        asked.stocks.push_back(asked.stocks.size());
        asked.costs.push_back(static_cast<double>(stock.cost) / static_cast<double>(task_.stocks[0].cost));
    }
    FractionalPlan plan(asked, known_, wanted_of(asked, {}), std::vector<double>(asked.sizes.size(), 1.0));
    for (int round = 0; round < kMostRounds; ++round) {
        if (!plan.improve() && !plan.look_for_bar()) break;
    }
    return plan.bound();
}

std::optional<CutBound> CutBounds::against(const Counts& need, const Counts& bars, std::int64_t& steps) {
    --steps;
    if (CutBound lengths = by_length(task_); is_ruled_out(lengths, need, bars)) return lengths;
    Question asked{task_, need, present(need), present(bars), {}, {}};
    if (asked.stocks.empty()) return std::nullopt;
    for (const int count : bars) asked.costs.push_back(count > 0 ? 1.0 : kNotToBeHad);
    asked.stock_rows.assign(asked.stocks.begin() + 1, asked.stocks.end());
    const std::size_t rows = asked.sizes.size() + asked.stock_rows.size();
    FractionalPlan plan(asked, known_, wanted_of(asked, bars), std::vector<double>(rows, 1.0));
    const double bars_in_all = total_of(bars);
    for (; steps > 0 && plan.cost() > bars_in_all + kGain; --steps) {
        if (plan.improve()) continue;
        const bool found = plan.look_for_bar();
        if (is_ruled_out(plan.bound(), need, bars)) return plan.bound();
        if (!found) break;
    }
    return std::nullopt;
}

} // namespace undersheet::trade
