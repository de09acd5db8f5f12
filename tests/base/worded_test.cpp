#include "base/worded.h"

#include <catch2/catch.hpp>

using namespace undersheet;

TEST_CASE("a worded text is its English, and keeps the form and what fills it") {
    const Worded made = worded("tape {pair} next", {{"pair", worded_typed("AC")}});
    CHECK(made.text == "tape AC next");
    CHECK(made.form == "tape {pair} next");
    REQUIRE(made.fillings.size() == 1);
    CHECK(made.fillings.front().name == "pair");
    CHECK(made.fillings.front().sort == Worded::Sort::typed);
}

TEST_CASE("braces in what is filled in stay what they are") {
    CHECK(worded("{a} and {b}", {{"a", worded_typed("{b}")}, {"b", worded_typed("x")}}).text == "{b} and x");
    CHECK(worded("{a} and {nobody}", {{"a", "x"}}).text == "x and {nobody}");
}

TEST_CASE("a list of any length is set one behind the other") {
    CHECK(worded_list({}).empty());
    CHECK(worded_list({worded_typed("A")}).text == "A");
    CHECK(worded_list({worded_typed("A"), worded_typed("B"), worded_typed("C")}).text == "A, B, C");
}
