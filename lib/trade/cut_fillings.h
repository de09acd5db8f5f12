// The ways to fill the next bar, one after the other: the fullest first, in rough steps.
//
// Promises: each holds the longest piece that is left, has no room for one more piece, and leaves no more over than may be.
//   Every such way comes, some of them twice.
// Comes from: docs/formulas.md#cuts.
// Threads: a value; the task outlives it.
#pragma once

#include "trade/cut_task.h"

#include <optional>

namespace undersheet::trade {

class CutFillings {
public:
    // spare: what may be left over in this bar.
    CutFillings(const CutTask& task, Counts need, Counts bars, std::int64_t spare);

    // Nothing when there is no other, or when `looks` has come down to 0.
    [[nodiscard]] std::optional<CutBar> next(std::int64_t& looks);

    [[nodiscard]] const Counts& need() const { return need_; } // what was left before this bar
    [[nodiscard]] const Counts& bars() const { return bars_; }

private:
    // One stock, and a band of what is left over in a bar of it.
    struct Round {
        std::size_t stock = 0;
        std::int64_t above = 0;
        std::int64_t up_to = 0;
        bool is_thorough = false;
    };
    void plan_rounds(std::int64_t spare);
    void add_rounds(const Round& band);
    bool advance();
    void begin();
    bool turn();
    void fill_from(std::size_t size);
    [[nodiscard]] bool is_wanted() const;

    const CutTask& task_;
    Counts need_, bars_;
    Amounts rest_; // length of all pieces of this size and shorter
    std::size_t longest_ = 0;

    std::vector<Round> rounds_;
    std::size_t round_ = 0;
    bool was_cut_short_ = false;
    std::int64_t looks_here_ = 0;
    Counts pieces_;         // empty at the beginning of a round
    std::int64_t room_ = 0; // left in the bar
};

} // namespace undersheet::trade
