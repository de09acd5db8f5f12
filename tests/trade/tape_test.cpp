#include "trade/tape.h"

#include <catch2/catch.hpp>

#include <limits>

using namespace undersheet;
using namespace undersheet::trade;

namespace {

double mpe(double m, int tape_class, bool hook = false) { return tape({m, tape_class, hook})->mpe_mm; }

} // namespace

TEST_CASE("the permitted error of a tape follows the classes of the measuring instruments regulations") {
    struct Row {
        double m, one_mm, two_mm, three_mm;
    };
    // UK SI 2016/1153 schedule 1I: a, b = 0.1, 0.1; 0.3, 0.2; 0.6, 0.4. Values computed from these.
    constexpr Row rows[] = {{1, 0.2, 0.5, 1.0}, {3, 0.4, 0.9, 1.8}, {4.6, 0.6, 1.3, 2.6},
                            {5, 0.6, 1.3, 2.6}, {8, 0.9, 1.9, 3.8}, {7.2, 0.9, 1.9, 3.8},
                            {10, 1.1, 2.3, 4.6}};
    for (const auto& row : rows) {
        CAPTURE(row.m);
        CHECK(mpe(row.m, 1) == Approx(row.one_mm));
        CHECK(mpe(row.m, 2) == Approx(row.two_mm));
        CHECK(mpe(row.m, 3) == Approx(row.three_mm));
    }
}

TEST_CASE("the hook adds its own term") {
    CHECK(mpe(7.2, 2, true) == Approx(2.1)); // 0.3 + 0.2 x 8 + 0.2, computed
    CHECK(mpe(7.2, 1, true) == Approx(1.0));
    CHECK(mpe(7.2, 3, true) == Approx(4.1));
}

TEST_CASE("a whole number of metres stays, and a millimetre more counts as the next metre") {
    CHECK(mpe(5, 2) == Approx(1.3));
    CHECK(mpe(5.001, 2) == Approx(1.5));
    CHECK(mpe(4.999, 2) == Approx(1.3));
    CHECK(mpe(0.001, 2) == Approx(0.5));
    CHECK(mpe(70 * 0.1, 2) == Approx(1.7)); // 7.000000000000001 in binary is 7 m on the tape
}

TEST_CASE("a tape that cannot be is refused by the name of its field") {
    CHECK(tape({0, 2, false}).fault().where == "m");
    CHECK(tape({-1, 2, false}).fault().where == "m");
    CHECK(tape({200.1, 2, false}).fault().where == "m");
    CHECK(tape({std::numeric_limits<double>::infinity(), 2, false}).fault().where == "m");
    CHECK(tape({5, 0, false}).fault().where == "class");
    CHECK(tape({5, 4, false}).fault().where == "class");
}
