// Times two ways of doing something against each other, pair by pair.
//
// Promises: A and B take turns in one run, and who goes first alternates; each pair gives one ratio, time of A over time of B.
//   A machine that slows down for a second slows both halves of a pair, so ratios can be believed where times cannot.
// Does not: decide whether a ratio is good.
#pragma once

#include <algorithm>
#include <chrono>
#include <cstddef>
#include <vector>

namespace undersheet::bench {

struct Ratios {
    double min = 0;
    double median = 0;
    double max = 0;
    std::size_t pairs = 0;
};

// The middle one of a sorted list, or the mean of the middle two.
[[nodiscard]] inline double median_of(const std::vector<double>& sorted) {
    const auto half = sorted.size() / 2;
    return sorted.size() % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
}

// `ratios` must not be empty.
[[nodiscard]] inline Ratios summed_up(std::vector<double> ratios) {
    std::sort(ratios.begin(), ratios.end());
    return {ratios.front(), median_of(ratios), ratios.back(), ratios.size()};
}

template <class Work>
[[nodiscard]] double seconds_of(Work& work) {
    const auto start = std::chrono::steady_clock::now();
    work();
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

// One unmeasured turn of each first, so that neither pays for a cold start.
template <class A, class B>
[[nodiscard]] Ratios ratio_of(A a, B b, std::size_t pairs = 9) {
    a();
    b();
    std::vector<double> ratios;
    for (std::size_t pair = 0; pair < pairs; ++pair) {
        const bool a_first = pair % 2 == 0;
        const double first = a_first ? seconds_of(a) : seconds_of(b);
        const double second = a_first ? seconds_of(b) : seconds_of(a);
        ratios.push_back(a_first ? first / second : second / first);
    }
    return summed_up(std::move(ratios));
}

// The compiler must not drop work whose result nobody reads.
template <class T>
void keep(const T& value) {
    asm volatile("" : : "g"(&value) : "memory");
}

} // namespace undersheet::bench
