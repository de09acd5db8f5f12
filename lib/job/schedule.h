// In which order of hours a row of work fits into the time that suits it.
//
// Promises: each piece of work begins at the earliest moment, on the grid, after the one before it has ended and
//   waited, at which all of its minutes suit it. With the order fixed that is also the earliest possible end of every
//   piece (a later start of one never lets another end sooner). Exhaustive on the grid, so nothing better is missed.
// Does not: know weather, stages or people: `suits` does.
// Threads: pure functions on values.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace undersheet::job {

struct Work {
    std::string part, stage;
    int minutes = 0;    // of work, rounded up to the grid
    int wait_min = 0;   // after it, before the next may begin
    double hours_h = 0; // as worked out, before rounding
};

struct Slot {
    std::size_t work = 0; // which of the row
    std::int64_t from_s = 0, to_s = 0;
};

inline constexpr int kGrid_min = 15;
inline constexpr std::int64_t kGrid_s = std::int64_t{kGrid_min} * 60;

// Whether that quarter of an hour, beginning at unix_s, suits this piece of work.
using Suits = std::function<bool(const Work&, std::int64_t unix_s)>;

// As many as fit between the two moments, first come first; shorter than `row` when the rest does not fit.
[[nodiscard]] std::vector<Slot> fit_in_order(const std::vector<Work>& row, std::int64_t from_s,
                                             std::int64_t until_s, const Suits& suits);

// The earliest start from which the whole row is done in one go: no pause but the waits. Nothing when there is none.
[[nodiscard]] std::optional<std::vector<Slot>>
fit_in_one_go(const std::vector<Work>& row, std::int64_t from_s, std::int64_t until_s, const Suits& suits);

} // namespace undersheet::job
