// Doubts about clocks: derived from what entries claim and what their writers knew, never stored.
//
// A wall clock is a claim. It is doubted where it contradicts the clock that only goes forward, the entry before it, or
// something its writer had seen. A clock set by hand says so itself and is not doubted further; verify
// says how many entries do.
// Does not: order anything, or refuse an entry.
#pragma once

#include "entry/causality.h"

namespace undersheet::entry {

// How far clocks may be apart before it is a doubt, in seconds.
struct ClockLimits {
    double step_s = 0;  // between the wall clock and the steady clock, within one start of the program
    double cause_s = 0; // before something the writer had seen
    double ahead_s = 0; // after the moment at which it is checked
};

struct ClockDoubt {
    std::size_t entry = 0; // its place in the list
    std::string what = {};
};

// `entries` sorted by comes_before, `causality` made from them, `now` as Unix seconds.
[[nodiscard]] std::vector<ClockDoubt> clock_doubts(const std::vector<Entry>& entries,
                                                   const Causality& causality, const ClockLimits& limits,
                                                   std::int64_t now);

// "3 d 4 h", "12 min", "45 s".
[[nodiscard]] std::string span_words(std::int64_t seconds);

} // namespace undersheet::entry
