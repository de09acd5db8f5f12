#include "trade/sample.h"

#include "trade/heads.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <random>
#include <vector>

using namespace undersheet;
using namespace undersheet::trade;

namespace {

struct Row {
    std::int64_t total, checked, proud;
    int confidence_pct;
    std::int64_t at_most;
    double chance_at, chance_after;
};
constexpr Row kRows[] = {
#include "fixtures/reference/heads.inc"
};

constexpr int kMostCounted = 60; // every binomial up to here, and a hundred times it, fits 64 bits

// Pascal's triangle: nothing of the code under test.
const std::vector<std::vector<std::uint64_t>>& triangle() {
    static const auto built = [] {
        std::vector<std::vector<std::uint64_t>> rows(kMostCounted + 1);
        for (std::size_t n = 0; n < rows.size(); ++n) {
            rows[n].assign(n + 1, 1);
            for (std::size_t k = 1; k < n; ++k) rows[n][k] = rows[n - 1][k - 1] + rows[n - 1][k];
        }
        return rows;
    }();
    return built;
}

std::uint64_t choose(int n, int k) {
    return k < 0 || k > n ? 0 : triangle()[static_cast<std::size_t>(n)][static_cast<std::size_t>(k)];
}

std::uint64_t ways(int total, int bad, int checked, int found) {
    std::uint64_t sum = 0;
    for (int x = 0; x <= found; ++x) sum += choose(bad, x) * choose(total - bad, checked - x);
    return sum;
}

int counted_at_most(int total, int checked, int proud, std::uint64_t doubt_pct) {
    int most = proud;
    for (int bad = proud; bad <= total - checked + proud; ++bad) {
        if (ways(total, bad, checked, proud) * 100 > doubt_pct * choose(total, checked)) most = bad;
    }
    return most;
}

// The sum of products as it stands in a textbook, in long double.
double summed_chance(const Sample& s) {
    long double sum = 0;
    for (std::int64_t x = std::max<std::int64_t>(0, s.checked - s.total + s.bad);
         x <= std::min(s.found, s.bad); ++x) {
        long double term = 1;
        // C(bad, x) C(total - bad, checked - x) / C(total, checked), factor by factor, kept near 1.
        std::int64_t up = 0;
        for (std::int64_t i = 0; i < s.checked; ++i) {
            const bool from_bad = i < x;
            const std::int64_t at = from_bad ? i : i - x;
            const auto top = static_cast<long double>((from_bad ? s.bad : s.total - s.bad) - at);
            term *= top / static_cast<long double>(s.total - i);
            if (up < x)
                term *= static_cast<long double>(s.checked - up) / static_cast<long double>(x - up), ++up;
        }
        sum += term;
    }
    return static_cast<double>(sum);
}

} // namespace

TEST_CASE("the bound agrees with counting every possible sample of every roof of up to 26 heads") {
    std::size_t compared = 0;
    std::size_t different = 0;
    for (int total = 1; total <= 26; ++total) {
        for (int checked = 1; checked <= total; ++checked) {
            for (int proud = 0; proud <= checked; ++proud) {
                for (const int doubt_pct : {1, 5, 10, 50}) {
                    const auto found = heads({total, checked, proud, Decimal::of(100 - doubt_pct)});
                    ++compared;
                    if (found->at_most ==
                        counted_at_most(total, checked, proud, static_cast<std::uint64_t>(doubt_pct)))
                        continue;
                    ++different;
                    UNSCOPED_INFO(total << " " << checked << " " << proud << " " << doubt_pct);
                }
            }
        }
    }
    CHECK(different == 0);
    CHECK(compared > 10'000);
}

TEST_CASE("the bound agrees with counting for thousands of drawn roofs of up to 60 heads") {
    constexpr unsigned seed = 60606;
    std::mt19937 dice(seed);
    CAPTURE(seed);
    const auto roll = [&](int low, int high) {
        return low + static_cast<int>(dice() % static_cast<unsigned>(high - low + 1));
    };
    for (int round = 0; round < 4000; ++round) {
        const int total = roll(1, kMostCounted);
        const int checked = roll(1, total);
        const int proud = roll(0, std::min(checked, 6));
        CAPTURE(round, total, checked, proud);
        REQUIRE(heads({total, checked, proud})->at_most == counted_at_most(total, checked, proud, 5));
    }
}

TEST_CASE("chances agree with R to a billionth of themselves") {
    for (const auto& row : kRows) {
        CAPTURE(row.total, row.checked, row.proud, row.at_most);
        CHECK(chance_at_most({row.total, row.at_most, row.checked, row.proud}) ==
              Approx(row.chance_at).epsilon(1e-9));
        if (row.at_most == row.total) continue;
        const double after = chance_at_most({row.total, row.at_most + 1, row.checked, row.proud});
        CHECK(after == Approx(row.chance_after).epsilon(1e-9).margin(1e-15));
    }
}

TEST_CASE("chances agree with the textbook sum of products for thousands of drawn samples") {
    constexpr unsigned seed = 271828;
    std::mt19937 dice(seed);
    CAPTURE(seed);
    const auto roll = [&](std::int64_t low, std::int64_t high) {
        return low + static_cast<std::int64_t>(dice() % static_cast<std::uint64_t>(high - low + 1));
    };
    for (int round = 0; round < 3000; ++round) {
        Sample s;
        s.total = roll(1, 800);
        s.bad = roll(0, s.total);
        s.checked = roll(1, std::min<std::int64_t>(s.total, 120));
        s.found = std::min(s.checked, s.checked * s.bad / s.total + roll(0, 3));
        CAPTURE(round, s.total, s.bad, s.checked, s.found);
        REQUIRE(chance_at_most(s) == Approx(summed_chance(s)).epsilon(1e-9));
    }
}

TEST_CASE("the published quantiles of a batch of a thousand are met") {
    // Batch 1000, 10 bad, sample 50: the 0.99 quantile is 3, the median 0. Second-hand; scipy agrees.
    CHECK(chance_at_most({1000, 10, 50, 3}) >= 0.99);
    CHECK(chance_at_most({1000, 10, 50, 2}) < 0.99);
    CHECK(chance_at_most({1000, 10, 50, 0}) >= 0.50);
}

TEST_CASE("a tie is not likelier, whichever of drawn and bad is the smaller") {
    // P(0 | 20, 1, 19) = P(0 | 20, 19, 1) = 1/20.
    CHECK_FALSE(is_likelier({20, 1, 19, 0}, {5, 100}));
    CHECK_FALSE(is_likelier({20, 19, 1, 0}, {5, 100}));
    CHECK(is_likelier({20, 1, 19, 0}, {4'999'999, 100'000'000}));
    CHECK_FALSE(is_likelier({20, 1, 19, 0}, {5'000'001, 100'000'000}));
    // P(at most 1 | 4, 2, 2) = 5/6.
    CHECK_FALSE(is_likelier({4, 2, 2, 1}, {5, 6}));
    CHECK(is_likelier({4, 2, 2, 1}, {4, 6}));
    // P(at most 1 | 3, 2, 2) = 2/3, where at least one bad one must be drawn.
    CHECK_FALSE(is_likelier({3, 2, 2, 1}, {2, 3}));
}
