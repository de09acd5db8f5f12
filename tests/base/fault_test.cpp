#include "base/fault.h"

#include <catch2/catch.hpp>

using namespace undersheet;

TEST_CASE("a fault is told on one line: where, what was wrong, what would be right") {
    CHECK(one_line({Code::number_malformed, "'1.2.3' is not a number", "height_mm", "write it like 12.5"}) ==
          "height_mm: '1.2.3' is not a number; write it like 12.5");
}

TEST_CASE("what a fault does not say leaves no mark on the line") {
    CHECK(one_line({Code::book_full, "no room left", {}, {}}) == "no room left");
    CHECK(one_line({Code::book_full, "no room left", "demo.book", {}}) == "demo.book: no room left");
    CHECK(one_line({Code::book_full, "no room left", {}, "free some"}) == "no room left; free some");
}

TEST_CASE("the numbers of the base faults stay what they are") {
    CHECK(static_cast<int>(Code::number_malformed) == 101);
    CHECK(static_cast<int>(Code::number_too_long) == 102);
    CHECK(static_cast<int>(Code::text_not_utf8) == 103);
    CHECK(static_cast<int>(Code::value_impossible) == 104);
}

TEST_CASE("whatever bytes a fault quotes, it is told in text and on one line") {
    CHECK(
        one_line(
            {Code::place_malformed, "'\xFFq\xC3\xA9\xE2\x82' is not a place", "a\nb", "\x1B[2J\t\x7F"}) ==
        "a b: '\xEF\xBF\xBDq\xC3\xA9\xEF\xBF\xBD\xEF\xBF\xBD' is not a place; \xEF\xBF\xBD[2J \xEF\xBF\xBD");
}
