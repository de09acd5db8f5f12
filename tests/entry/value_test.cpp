#include "entry/value.h"

#include <catch2/catch.hpp>

using namespace undersheet;
using entry::List;
using entry::Value;

TEST_CASE("members stand in ascending order whatever order they were set in") {
    Value value;
    value.set("wind_ms", 4).set("air_c", 13).set("rh_pct", 66);
    REQUIRE(value.map()->size() == 3);
    CHECK(value.map()->at(0).key == "air_c");
    CHECK(value.map()->at(1).key == "rh_pct");
    CHECK(value.map()->at(2).key == "wind_ms");
}

TEST_CASE("setting a member twice keeps the later value once") {
    Value value;
    value.set("air_c", 13).set("air_c", 14);
    CHECK(value.map()->size() == 1);
    CHECK(value.number_of("air_c", 0) == 14);
}

TEST_CASE("an erased member is gone and erasing what is not there does nothing") {
    Value value;
    value.set("a", 1).set("b", 2);
    value.erase("a");
    value.erase("c");
    CHECK(value.find("a") == nullptr);
    CHECK(value.number_of("b", 0) == 2);
}

TEST_CASE("asking for another type gives nothing instead of a conversion") {
    Value value;
    value.set("text", "12").set("number", 12).set("yes", true).set("list", List{1, 2});
    CHECK(value.find("text")->number() == nullptr);
    CHECK(value.find("number")->text() == nullptr);
    CHECK(value.find("yes")->number() == nullptr);
    CHECK(value.number_of("text", -1) == -1);
    CHECK(value.text_of("number", "none") == "none");
    CHECK(value.list_of("text").empty());
    CHECK(value.list_of("list").size() == 2);
    CHECK(Value("text").find("text") == nullptr);
}

TEST_CASE("yes is true or the word yes, and nothing else") {
    Value value;
    value.set("a", true).set("b", "yes").set("c", "no").set("d", 1).set("e", false);
    CHECK(value.is_yes("a"));
    CHECK(value.is_yes("b"));
    CHECK_FALSE(value.is_yes("c"));
    CHECK_FALSE(value.is_yes("d"));
    CHECK_FALSE(value.is_yes("e"));
    CHECK_FALSE(value.is_yes("missing"));
}

TEST_CASE("two values are equal whatever lines they were read from") {
    Value a = List{1, "two", true};
    Value b = a;
    b.line = 7;
    CHECK(a == b);
    b.push(3);
    CHECK_FALSE(a == b);
}

TEST_CASE("a rounded value is the nearest decimal, and a question mark when there is none") {
    CHECK(Value::rounded(8.0500001, 2).number()->text() == "8.05");
    CHECK(*Value::rounded(1.0 / 0.0, 2).text() == "?");
}

TEST_CASE("setting or pushing into another type makes it what is needed") {
    Value text("was text");
    text.set("a", 1);
    CHECK(text.map()->size() == 1);
    text.push(2);
    CHECK(text.list()->size() == 1);
}
