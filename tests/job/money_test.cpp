#include "job/money.h"

#include <catch2/catch.hpp>

using namespace undersheet;

namespace {

Decimal d(std::string_view text) { return *Decimal::parse(text); }

std::int64_t cost(std::string_view amount, std::int64_t price) { return *job::cost_of(d(amount), price); }

} // namespace

TEST_CASE("a line is rounded half up to the penny: just under, at and just over a half") {
    CHECK(cost("0.4999", 1) == 0);
    CHECK(cost("0.5", 1) == 1);
    CHECK(cost("1.4999", 1) == 1);
    CHECK(cost("1.5", 1) == 2);
    CHECK(cost("2.5", 1) == 3);
    CHECK(cost("0", 3800) == 0);
    CHECK(cost("3", 1120) == 3360);
}

TEST_CASE("amounts that no double holds exactly still come out to the penny (by hand)") {
    CHECK(cost("39.65", 980) == 38857);
    CHECK(cost("26.037", 3800) == 98941); // 98940.6
    CHECK(cost("1.005", 100) == 101);     // 100.5; as a double 100.49999…
}

TEST_CASE("a share of a sum is rounded half up too") {
    CHECK(*job::share_of(247518, d("12")) == 29702); // 29702.16
    CHECK(*job::share_of(277220, d("8")) == 22178);  // 22177.6
    CHECK(*job::share_of(100, d("17.5")) == 18);
    CHECK(*job::share_of(299398, d("0")) == 0);
}

TEST_CASE("a product with more digits than can be kept exactly is refused") {
    CHECK_FALSE(job::cost_of(d("123456.789012"), 987654321).ok());
}
