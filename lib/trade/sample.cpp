#include "trade/sample.h"

#include "trade/big_count.h"

#include <algorithm>
#include <cmath>

namespace undersheet::trade {
namespace {

constexpr double kTooSmallToCount = 1e-30;
constexpr double kTie = 1e-9; // far above the rounding of the sums below, which stays under 1e-11

std::int64_t fewest_bad(const Sample& s) { return std::max<std::int64_t>(0, s.checked - (s.total - s.bad)); }
std::int64_t most_bad(const Sample& s) { return std::min(s.checked, s.bad); }

// P(X = x+1) / P(X = x).
double step_up(const Sample& s, std::int64_t x) {
    const auto up = static_cast<double>(s.bad - x) * static_cast<double>(s.checked - x);
    return up / (static_cast<double>(x + 1) * static_cast<double>(s.total - s.bad - s.checked + x + 1));
}

std::int64_t likeliest(const Sample& s) {
    const std::int64_t mode = (s.checked + 1) * (s.bad + 1) / (s.total + 2);
    return std::clamp(mode, fewest_bad(s), most_bad(s));
}

// Weights relative to the likeliest count: no factorial, no logarithm, nothing that can overflow.
struct Weights {
    double all = 0;
    double wanted = 0;
    void add(double weight, bool is_wanted) {
        all += weight;
        if (is_wanted) wanted += weight;
    }
};

Weights weigh(const Sample& s) {
    const std::int64_t mode = likeliest(s);
    Weights sum;
    sum.add(1, mode <= s.found);
    double weight = 1;
    for (std::int64_t x = mode; x < most_bad(s) && weight > kTooSmallToCount; ++x) {
        weight *= step_up(s, x);
        sum.add(weight, x + 1 <= s.found);
    }
    weight = 1;
    for (std::int64_t x = mode - 1; x >= fewest_bad(s) && weight > kTooSmallToCount; --x) {
        weight /= step_up(s, x);
        sum.add(weight, x <= s.found);
    }
    return sum;
}

std::uint32_t small(std::int64_t count) { return static_cast<std::uint32_t>(count); }

// How many of the equally likely samples hold at most `found` bad ones.
BigCount ways_at_most(const Sample& s) {
    std::int64_t x = fewest_bad(s);
    BigCount ways = x == 0 ? BigCount::choose(small(s.total - s.bad), small(s.checked))
                           : BigCount::choose(small(s.bad), small(x));
    BigCount sum = ways;
    for (; x < s.found; ++x) {
        ways.times(small(s.bad - x)).over(small(x + 1));
        ways.times(small(s.checked - x)).over(small(s.total - s.bad - s.checked + x + 1));
        sum.plus(ways);
    }
    return sum;
}

bool is_likelier_counted(const Sample& s, Share threshold) {
    BigCount allowed = BigCount::choose(small(s.total), small(s.checked));
    return allowed.times(threshold.parts) < ways_at_most(s).times(threshold.of);
}

} // namespace

double chance_at_most(const Sample& sample) {
    if (sample.found >= most_bad(sample)) return 1;
    if (sample.found < fewest_bad(sample)) return 0;
    const Weights sum = weigh(sample);
    return sum.wanted / sum.all;
}

bool is_likelier(const Sample& sample, Share threshold) {
    const double chance = chance_at_most(sample);
    const double wanted = static_cast<double>(threshold.parts) / threshold.of;
    const bool certain =
        chance == 0 || chance == 1; // set by the counts themselves, or too far off to be a tie
    if (certain || std::fabs(chance - wanted) > kTie * wanted) return chance > wanted;
    // Drawn and bad may change places without changing the chance; the smaller of them makes the shorter
    // count.
    Sample shorter = sample;
    if (shorter.bad < shorter.checked) std::swap(shorter.bad, shorter.checked);
    return is_likelier_counted(shorter, threshold);
}

} // namespace undersheet::trade
