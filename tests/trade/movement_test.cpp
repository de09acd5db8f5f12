#include "trade/movement.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace undersheet;
using namespace undersheet::trade;

TEST_CASE("a trim moves by coefficient times length times difference") {
    struct Row {
        double length_mm, coefficient_per_k, difference_k, movement_mm;
    };
    // Computed on the coefficients named in the header, most of which are from memory, not confirmed.
    constexpr Row rows[] = {{2500, kPvcU_per_k, 40, 7.0},
                            {3000, kPvcU_per_k, 50, 10.5},
                            {3000, kAluminium_per_k, 50, 3.45},
                            {2500, kAluminium_per_k, 40, 2.3},
                            {3000, kSteel_per_k, 50, 1.8}};
    for (const auto& row : rows) {
        CAPTURE(row.length_mm, row.coefficient_per_k);
        const auto moved = movement({row.length_mm, row.coefficient_per_k, -5, -5 + row.difference_k});
        CHECK(moved->movement_mm == Approx(row.movement_mm));
    }
}

TEST_CASE("a trim that cools gets shorter") {
    CHECK(movement({2500, kPvcU_per_k, 20, -10})->movement_mm == Approx(-5.25));
    CHECK(movement({2500, kPvcU_per_k, 20, 20})->movement_mm == 0);
}

TEST_CASE("a trim that cannot be is refused by the name of its field") {
    CHECK(movement({-1, 1e-5, 0, 10}).fault().where == "length_mm");
    CHECK(movement({1, -1e-5, 0, 10}).fault().where == "coefficient_per_k");
    CHECK(movement({1, 0.0011, 0, 10}).fault().where == "coefficient_per_k");
    CHECK(movement({1, 1e-5, -100.1, 10}).fault().where == "from_c");
    CHECK(movement({1, 1e-5, 0, 200.1}).fault().where == "to_c");
    CHECK(movement({1, 1e-5, 0, std::nan("")}).fault().where == "to_c");
}
