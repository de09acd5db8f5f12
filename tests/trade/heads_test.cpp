#include "trade/heads.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <string>

using namespace undersheet;
using namespace undersheet::trade;

namespace {

Decimal d(std::string_view text) { return *Decimal::parse(text); }

std::int64_t at_most(std::int64_t total, std::int64_t checked, std::int64_t proud) {
    return heads({total, checked, proud})->at_most;
}

std::optional<std::int64_t> more(std::int64_t total, std::int64_t checked, std::int64_t proud,
                                 std::string_view allow_pct) {
    return heads({total, checked, proud, Decimal::of(95), d(allow_pct)})->check_more;
}

struct Row {
    std::int64_t total, checked, proud;
    int confidence_pct;
    std::int64_t at_most;
    double chance_at, chance_after;
};
constexpr Row kRows[] = {
#include "fixtures/reference/heads.inc"
};

} // namespace

TEST_CASE("the most heads that can be proud agrees with scipy and R on common samples") {
    struct Known {
        std::int64_t total, checked, proud, at_most;
    };
    // Computed: scipy 1.10.1 hypergeom.cdf and R 4.2.2 phyper agree. The last row has published inputs (ASTM
    // Standardization News 2010; the answer printed there was not read).
    constexpr Known known[] = {
        {200, 20, 0, 26}, {200, 40, 1, 20},   {400, 50, 0, 21},  {400, 59, 0, 18}, {400, 80, 2, 28},
        {600, 60, 0, 27}, {600, 60, 1, 44},   {600, 125, 3, 34}, {800, 80, 0, 27}, {800, 80, 5, 98},
        {300, 300, 2, 2}, {1200, 200, 1, 26}, {496, 50, 0, 27},  {496, 60, 0, 22}, {496, 50, 3, 71},
        {496, 496, 0, 0}, {60, 15, 0, 9},
    };
    for (const auto& row : known) {
        CAPTURE(row.total, row.checked, row.proud);
        CHECK(at_most(row.total, row.checked, row.proud) == row.at_most);
    }
}

TEST_CASE("the most heads that can be proud agrees with scipy and R on drawn samples") {
    for (const auto& row : kRows) {
        CAPTURE(row.total, row.checked, row.proud, row.confidence_pct);
        CHECK(heads({row.total, row.checked, row.proud, Decimal::of(row.confidence_pct)})->at_most ==
              row.at_most);
    }
    CHECK(std::size(kRows) > 200);
}

TEST_CASE("the bound is the last number that is not ruled out, not the first that is") {
    CHECK(at_most(60, 15, 0) == 9); // P(0 | 9) = 0.0599, P(0 | 10) = 0.0423
}

TEST_CASE("a chance of exactly one in twenty rules a number out") {
    // One proud head of N, n checked: it is missed with (N - n) / N, exactly 5 % here. In binary 1 - 0.95 is not 0.05.
    CHECK(at_most(20, 19, 0) == 0);
    CHECK(at_most(20, 18, 0) == 1);
    CHECK(at_most(60, 57, 0) == 0);
    CHECK(at_most(100, 95, 0) == 0);
    CHECK(at_most(100, 94, 0) == 1);
    CHECK(at_most(400, 380, 0) == 0);
    CHECK(at_most(100'000, 95'000, 0) == 0);
    CHECK(at_most(100'000, 94'999, 0) == 1);
    CHECK(heads({1000, 995, 0, d("99.5")})->at_most == 0);
    CHECK(heads({1000, 994, 0, d("99.5")})->at_most == 1);
    CHECK(heads({10, 1, 0, Decimal::of(90)})->at_most == 8); // nine proud of ten: missed with exactly 10 %
}

TEST_CASE("only a full check says that none is proud, or exactly how many are") {
    CHECK(at_most(496, 496, 0) == 0);
    CHECK(at_most(496, 496, 7) == 7);
    CHECK(at_most(1, 1, 1) == 1);
    CHECK(at_most(1, 1, 0) == 0);
}

TEST_CASE("when every head checked was proud all of them may be") {
    CHECK(at_most(500, 1, 1) == 500);
    CHECK(at_most(500, 50, 50) == 500);
}

TEST_CASE("shares are of the heads checked and of the whole roof") {
    const auto found = heads({496, 50, 3});
    CHECK(found->found_pct == Approx(6.0));
    CHECK(found->at_most_pct == Approx(100 * 71 / 496.0));
}

TEST_CASE("so many more good heads bring the bound within the allowance") {
    // Computed: scipy 1.10.1, and R phyper at the last two numbers of each.
    CHECK(*more(400, 50, 0, "5") == 2);
    CHECK(*more(600, 60, 1, "5") == 25);
    CHECK(*more(60, 15, 0, "5") == 16); // R: phyper(0, 4, 56, 31) = 0.0487 but phyper(0, 4, 56, 30) = 0.0562
}

TEST_CASE("enough were checked already when nothing more is needed") {
    CHECK(*more(400, 52, 0, "5") == 0);
    CHECK(*more(400, 400, 0, "0") == 0);
    CHECK(*more(400, 1, 0, "100") == 0);
}

TEST_CASE("no number of good heads mends a roof with more proud heads found than are allowed") {
    CHECK(*more(100, 20, 5, "5") == 80); // at the allowance: all the rest have to be good
    CHECK_FALSE(more(100, 20, 6, "5"));
    CHECK_FALSE(more(400, 50, 1, "0"));
    CHECK_FALSE(heads({400, 50, 1})->check_more); // no allowance, no answer
}

TEST_CASE("the allowance is rounded down on its exact value") {
    // 29/100 x 100 is 28.999999999999996 in binary; 29 heads are allowed, so 29 found is still within it.
    CHECK(more(100, 50, 29, "29"));
    CHECK_FALSE(more(100, 50, 30, "29"));
    CHECK_FALSE(more(100, 50, 29, "28.999999999"));
    CHECK(more(1000, 500, 7, "0.7"));
    CHECK_FALSE(more(1000, 500, 7, "0.69"));
}

TEST_CASE("the answer to how many more is the smallest that works") {
    for (const std::int64_t total : {37, 60, 200, 496}) {
        for (const std::int64_t checked : {5, 20, 36}) {
            for (const std::int64_t proud : {0, 1, 2}) {
                CAPTURE(total, checked, proud);
                const auto allowed = total * 8 / 100;
                const auto needed = more(total, checked, proud, "8");
                REQUIRE(needed.has_value() == (proud <= allowed));
                if (!needed) continue;
                CHECK(at_most(total, checked + *needed, proud) <= allowed);
                if (*needed > 0) CHECK(at_most(total, checked + *needed - 1, proud) > allowed);
            }
        }
    }
}

TEST_CASE("the size of a clean sample that shows at most a share agrees with scipy") {
    struct Known {
        std::int64_t total, one_pct, two_pct, five_pct, ten_pct;
    };
    // Computed: scipy 1.10.1, loop over hypergeom.pmf(0, N, D, n).
    constexpr Known known[] = {{100, 78, 63, 39, 23},
                               {200, 126, 90, 47, 26},
                               {400, 180, 113, 52, 27},
                               {600, 208, 123, 54, 28},
                               {800, 226, 128, 55, 28}};
    for (const auto& row : known) {
        CAPTURE(row.total);
        CHECK(*heads_to_check(row.total, d("1")) == row.one_pct);
        CHECK(*heads_to_check(row.total, d("2")) == row.two_pct);
        CHECK(*heads_to_check(row.total, d("5")) == row.five_pct);
        CHECK(*heads_to_check(row.total, d("10")) == row.ten_pct);
    }
}

TEST_CASE("for a large roof the bound nears the rule of three") {
    // 3/n for a clean sample of a large lot; second-hand, source not authoritative.
    CHECK(heads({100'000, 300, 0})->at_most_pct == Approx(1.0).margin(0.01));
}

TEST_CASE("a check of heads that cannot be is refused by the name of its field") {
    const auto field = [](const HeadsInput& in) {
        return heads(in).ok() ? std::string() : heads(in).fault().where;
    };
    CHECK(field({0, 1, 0}) == "total");
    CHECK(field({100'001, 1, 0}) == "total");
    CHECK(field({100'000, 1, 0}).empty());
    CHECK(field({10, 0, 0}) == "checked");
    CHECK(field({10, 11, 0}) == "checked");
    CHECK(field({10, 5, -1}) == "proud");
    CHECK(field({10, 5, 6}) == "proud");
    CHECK(field({10, 5, 5}).empty());
    CHECK(field({10, 5, 0, Decimal::of(0)}) == "confidence_pct");
    CHECK(field({10, 5, 0, Decimal::of(100)}) == "confidence_pct");
    CHECK(field({10, 5, 0, d("99.999999")}).empty());
    CHECK(field({10, 5, 0, d("99.9999999")}) == "confidence_pct");
    CHECK(field({10, 5, 0, Decimal::of(95), d("-0.1")}) == "allow_pct");
    CHECK(field({10, 5, 0, Decimal::of(95), d("100.1")}) == "allow_pct");
    CHECK(heads_to_check(0, d("5")).fault().where == "total");
    CHECK(heads_to_check(10, d("101")).fault().where == "allow_pct");
}
