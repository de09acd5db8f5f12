// The mixes of bars that could be enough, cheapest first.
//
// Promises: every mix that the bounds do not rule out comes, none twice, and none costs less than one before it.
// Comes from: best first over a tree of mixes, docs/formulas.md#cuts.
// Does not: know whether a mix is enough; that is searched for.
#pragma once

#include "trade/cut_bound.h"

#include <optional>
#include <set>

namespace undersheet::trade {

struct CutMix {
    Counts bars; // of each stock
    std::int64_t cost = 0;
};

class CutMixes {
public:
    CutMixes(const CutTask& task, CutBound by_cost);

    void learn(CutBound bound) { bounds_.push_back(std::move(bound)); }
    [[nodiscard]] std::optional<CutMix> next(std::int64_t& looks); // nothing when `looks` has come down to 0
    [[nodiscard]] std::int64_t at_least() const;                   // what any mix costs that is still to come

private:
    // Every mix that begins with these bars and goes on with this stock or shorter ones.
    struct Branch {
        std::int64_t at_least = 0;
        std::size_t from = 0;
        Counts bars;
        friend bool operator<(const Branch& a, const Branch& b) {
            if (a.at_least != b.at_least) return a.at_least < b.at_least;
            return a.from != b.from ? a.from > b.from : a.bars > b.bars;
        }
    };
    [[nodiscard]] std::int64_t next_step(std::int64_t cost, std::int64_t bars) const;
    void add(Counts bars, std::size_t from);
    void branch_out(const Branch& branch);
    [[nodiscard]] bool could_be_enough(const Counts& bars) const;

    const CutTask& task_;
    std::vector<CutBound> bounds_;
    Amounts costs_;
    std::vector<double> cost_of_worth_; // the least, by this stock or a shorter one
    Amounts most_worth_;                // of a bar, of this stock or a shorter one
    std::set<Branch> branches_;
};

} // namespace undersheet::trade
