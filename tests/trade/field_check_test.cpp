#include "trade/field_check.h"

#include <catch2/catch.hpp>

#include <limits>

using namespace undersheet;
using namespace undersheet::trade;

TEST_CASE("both ends of a range belong to it") {
    CHECK_FALSE(FieldCheck().between("a_mm", 1, 1, 2).between("b_mm", 2, 1, 2).fault());
    CHECK(FieldCheck().between("a_mm", 0.999, 1, 2).fault());
    CHECK(FieldCheck().between("a_mm", 2.001, 1, 2).fault());
}

TEST_CASE("a number that must be above a limit may not be the limit") {
    CHECK(FieldCheck().above("a_mm", 0, 0, 10).fault());
    CHECK_FALSE(FieldCheck().above("a_mm", 0.001, 0, 10).fault());
    CHECK_FALSE(FieldCheck().above("a_mm", 10, 0, 10).fault());
    CHECK(FieldCheck().above("a_mm", 10.001, 0, 10).fault());
}

TEST_CASE("the first field that cannot be is the one that is named") {
    const auto wrong =
        FieldCheck().between("a_mm", 1, 0, 2).between("b_mm", 9, 0, 2).between("c_mm", 9, 0, 2).fault();
    CHECK(wrong->where == "b_mm");
    CHECK(wrong->code == Code::value_impossible);
    CHECK(one_line(*wrong) == "b_mm: 9 cannot be; it must be from 0 to 2");
}

TEST_CASE("what is not there is not wrong") {
    CHECK_FALSE(FieldCheck().between("a_mm", std::nullopt, 0, 2).fault());
}

TEST_CASE("what is no number is refused and said so") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double infinity = std::numeric_limits<double>::infinity();
    CHECK(FieldCheck().between("a_mm", nan, 0, 2).fault()->detail == "what is no number cannot be");
    CHECK(FieldCheck().between("a_mm", infinity, 0, 2).fault());
    CHECK(FieldCheck().between("a_mm", -infinity, 0, 2).fault());
    CHECK(FieldCheck().above("a_mm", nan, 0, 2).fault());
}
