// The guarantee as it was written down at the hand-over, and the days that follow from it.
//
// Promises: ten years from 11 June 2026 end with 10 June 2036. The first yearly look is due on the day a year after it begins.
// Threads: pure functions.
#pragma once

#include "paper/making.h"

namespace undersheet::paper {

[[nodiscard]] entry::Date years_on(const entry::Date& from, int years); // a 29 February becomes the 28th

struct Guarantee {
    entry::Date from = {};
    int years = 0;
    std::string terms = {};
    const entry::Entry* written = nullptr; // the entry that says so
    [[nodiscard]] entry::Date last_day() const;
    [[nodiscard]] entry::Date look_due(int year) const; // the 1st, the 2nd …
};

[[nodiscard]] std::optional<Guarantee> guarantee_of(const job::Job& job);
[[nodiscard]] std::vector<Fact> guarantee_facts(const Making& making);
[[nodiscard]] std::string whom_to_ring(const Making& making);

} // namespace undersheet::paper
