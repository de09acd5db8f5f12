#include "trade/fixings.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace undersheet;
using namespace undersheet::trade;

TEST_CASE("a fixing is 50 mm or two and a half boards long, whichever is more") {
    // WPIF panel guidance, found in a second text; computed from it.
    CHECK(fixings({15})->length_mm == 50);
    CHECK(fixings({18})->length_mm == 50);
    CHECK(fixings({20})->length_mm == 50);
    CHECK(fixings({20.1})->length_mm == Approx(50.25));
    CHECK(fixings({22})->length_mm == Approx(55));
    CHECK(fixings({25})->length_mm == Approx(62.5));
}

TEST_CASE("a fixing is 0.16 of the board thick") {
    CHECK(fixings({18})->diameter_mm == Approx(2.88)); // same guidance
}

TEST_CASE("another rule can be given") {
    const auto other = fixings({20}, {60, 3.5, 0.2});
    CHECK(other->length_mm == Approx(70));
    CHECK(other->diameter_mm == Approx(4));
}

TEST_CASE("a board that cannot be is refused by name") {
    CHECK(fixings({0}).fault().where == "board_mm");
    CHECK(fixings({-18}).fault().where == "board_mm");
    CHECK(fixings({100}).ok());
    CHECK(fixings({100.1}).fault().where == "board_mm");
    CHECK(fixings({std::nan("")}).fault().where == "board_mm");
}
