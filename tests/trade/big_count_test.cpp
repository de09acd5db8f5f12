#include "trade/big_count.h"

#include <catch2/catch.hpp>

using namespace undersheet::trade;

namespace {

BigCount product(std::initializer_list<std::uint32_t> factors) {
    BigCount made(1);
    for (const auto factor : factors) made.times(factor);
    return made;
}

} // namespace

TEST_CASE("small binomials are the ones of the triangle") {
    CHECK(BigCount::choose(0, 0) == BigCount(1));
    CHECK(BigCount::choose(5, 0) == BigCount(1));
    CHECK(BigCount::choose(5, 2) == BigCount(10));
    CHECK(BigCount::choose(5, 5) == BigCount(1));
    CHECK(BigCount::choose(5, 6) == BigCount(0));
    CHECK(BigCount::choose(30, 15) == BigCount(155117520));
}

TEST_CASE("a large binomial is exact to its last digit") {
    // C(60, 30) = 118264581564861424 = 2^4 x 7 x 11 x 17 x 19 x 31 x 37 x 41 x 43 x 47 x 53 x 59 (Python math.comb).
    CHECK(BigCount::choose(60, 30) == product({16, 7, 11, 17, 19, 31, 37, 41, 43, 47, 53, 59}));
}

TEST_CASE("each row of the triangle is the sum of two neighbours above it, however large") {
    for (const std::uint32_t k : {1U, 17U, 250U, 499U}) {
        BigCount sum = BigCount::choose(999, k - 1);
        sum.plus(BigCount::choose(999, k));
        CHECK(sum == BigCount::choose(1000, k));
    }
}

TEST_CASE("multiplying and dividing by the same number changes nothing") {
    BigCount count = BigCount::choose(200, 100);
    const BigCount before = count;
    count.times(4'000'000'007U).times(3).over(3).over(4'000'000'007U);
    CHECK(count == before);
}

TEST_CASE("counts are ordered by size") {
    CHECK(BigCount(0) < BigCount(1));
    CHECK_FALSE(BigCount(1) < BigCount(1));
    CHECK(BigCount(0xFFFF'FFFFU) < product({0xFFFF'FFFFU, 2}));
    CHECK(BigCount::choose(100, 49) < BigCount::choose(100, 50));
    CHECK_FALSE(BigCount::choose(100, 50) < BigCount::choose(100, 49));
    CHECK(product({0, 5}) == BigCount(0));
}
