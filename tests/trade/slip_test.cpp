#include "trade/slip.h"

#include <catch2/catch.hpp>

using namespace undersheet::trade;

namespace {

std::vector<SlipKind> kinds(double written_m, double worked_out_m, double doubt_mm = 4) {
    std::vector<SlipKind> found;
    for (const Slip& slip : likely_slips(written_m, worked_out_m, doubt_mm)) found.push_back(slip.kind);
    return found;
}

} // namespace

TEST_CASE("5.04 written where the others give 5.40 is two digits swapped, and says what it would be") {
    const std::vector<Slip> slips = likely_slips(5.04, 5.4012, 4);
    REQUIRE(slips.size() == 1);
    CHECK(slips[0].kind == SlipKind::digits_swapped);
    CHECK(slips[0].would_be_m == Approx(5.40));
}

TEST_CASE("a tenth or a whole metre too much or too little is suggested either way") {
    CHECK(kinds(6.035, 5.937) == std::vector{SlipKind::hundred_mm});
    CHECK(kinds(5.835, 5.937) == std::vector{SlipKind::hundred_mm});
    CHECK(kinds(4.002, 3.0) == std::vector{SlipKind::thousand_mm});
    CHECK(likely_slips(2.002, 3.0, 4)[0].would_be_m == Approx(3.002));
}

TEST_CASE("ten millimetres is suggested only while the doubt about the length is small enough to tell") {
    CHECK(kinds(4.445, 4.4345, 1) == std::vector{SlipKind::ten_mm});
    CHECK(kinds(4.445, 4.4405, 1).empty());
}

TEST_CASE("a hook on the trim can only read long, by 20 to 30 mm") {
    CHECK(kinds(4.445, 4.421) == std::vector{SlipKind::hook});
    CHECK(kinds(4.445, 4.469).empty());
    CHECK(likely_slips(4.445, 4.421, 4)[0].would_be_m == Approx(4.421));
}

TEST_CASE("the reach of a hook is met at its ends, and past them only as far as the doubt and 4 mm allow") {
    CHECK(kinds(4.4450, 4.4250, 1) == std::vector{SlipKind::hook});
    CHECK(kinds(4.4450, 4.4150, 1) == std::vector{SlipKind::hook});
    CHECK(kinds(4.4450, 4.4270, 1) == std::vector{SlipKind::hook}); // 18 mm: twice the doubt
    CHECK(kinds(4.4450, 4.4275, 1).empty());
    CHECK(kinds(4.4450, 4.4105, 9).empty()); // 34.5 mm
}

TEST_CASE("the nearest of several slips comes first and a misfit that no slip makes has none") {
    // 91 mm over: swapped digits would be 90, a hundred misread 100.
    const std::vector<SlipKind> both = kinds(5.101, 5.010, 6);
    REQUIRE(both.size() == 2);
    CHECK(both[0] == SlipKind::digits_swapped);
    CHECK(both[1] == SlipKind::hundred_mm);
    CHECK(kinds(4.445, 4.395).empty());
}

TEST_CASE("every kind of slip has its words") {
    for (const SlipKind kind : {SlipKind::digits_swapped, SlipKind::ten_mm, SlipKind::hundred_mm,
                                SlipKind::thousand_mm, SlipKind::hook})
        CHECK_FALSE(words(kind).empty());
}
