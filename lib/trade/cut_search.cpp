#include "trade/cut_search.h"

#include "trade/cut_fillings.h"

#include <set>
#include <utility>

namespace undersheet::trade {
namespace {

class Search {
public:
    Search(const CutTask& task, CutBounds& bounds, CutsEffort& effort)
        : task_(task), bounds_(bounds), effort_(effort) {}

    CutSearch run(const Counts& need, const Counts& bars) {
        if (is_hopeless(need, bars)) return {Holds::no};
        open(need, bars);
        while (!levels_.empty()) {
            if (is_spent()) return {Holds::unknown};
            const auto bar = levels_.back().next(effort_.fillings);
            if (bar ? complete(*bar) : false) return {Holds::yes, plan_};
            if (!bar && !is_spent()) close();
        }
        return {Holds::no};
    }

private:
    [[nodiscard]] bool is_spent() const { return effort_.steps <= 0 || effort_.fillings <= 0; }

    void open(Counts need, Counts bars) {
        std::int64_t spare = -total_of(need, task_.sizes);
        for (std::size_t i = 0; i < bars.size(); ++i) spare += bars[i] * task_.stocks[i].room;
        levels_.emplace_back(task_, std::move(need), std::move(bars), spare);
    }

    // Nothing came of what the last bar left.
    void close() {
        dead_.insert(name_of(levels_.back().need(), levels_.back().bars()));
        levels_.pop_back();
        if (!plan_.empty()) plan_.pop_back();
    }

    // True when this bar takes the last pieces.
    bool complete(const CutBar& bar) {
        Counts left = without(levels_.back().need(), bar.pieces);
        Counts bars = levels_.back().bars();
        --bars[bar.stock];
        if (!has_none(left) && is_hopeless(left, bars)) return false;
        plan_.push_back(bar);
        if (has_none(left)) return true;
        open(std::move(left), std::move(bars));
        return false;
    }

    bool is_hopeless(const Counts& need, const Counts& bars) {
        const std::size_t widest = first_of(bars);
        if (widest == bars.size() || task_.stocks[widest].room < task_.sizes[first_of(need)]) return true;
        auto name = name_of(need, bars);
        if (dead_.count(name) > 0) return true;
        if (!bounds_.against(need, bars, effort_.steps)) return false;
        dead_.insert(std::move(name));
        return true;
    }

    static Counts name_of(Counts need, const Counts& bars) {
        need.insert(need.end(), bars.begin(), bars.end());
        return need;
    }

    const CutTask& task_;
    CutBounds& bounds_;
    CutsEffort& effort_;
    std::vector<CutFillings> levels_;
    std::vector<CutBar> plan_; // the bar that led from each level to the next
    std::set<Counts> dead_;    // what could not be finished: pieces left and bars left
};

} // namespace

CutSearch search_plan(const CutTask& task, const Counts& bars, CutBounds& bounds, CutsEffort& effort) {
    return Search(task, bounds, effort).run(task.need, bars);
}

} // namespace undersheet::trade
