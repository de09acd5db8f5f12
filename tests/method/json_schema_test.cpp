#include "method/json_schema.h"

#include "entry/json.h"

#include <catch2/catch.hpp>

using namespace undersheet;
using namespace undersheet::method;

namespace {

std::string fault_of(std::string_view schema, std::string_view value) {
    const auto done = check_shape(*entry::read_json(schema), *entry::read_json(value), "file.json");
    return done ? "" : one_line(done.fault());
}

bool fits(std::string_view schema, std::string_view value) { return fault_of(schema, value).empty(); }

} // namespace

// The verdicts are those of the standard (JSON Schema draft 2020-12, validation), keyword by keyword.
TEST_CASE("a type is what the value is, and a whole number is a number too") {
    const std::vector<std::pair<std::string, std::string>> own{{"object", "{}"},    {"array", "[]"},
                                                               {"string", "\"a\""}, {"boolean", "true"},
                                                               {"integer", "3"},    {"number", "3.5"}};
    for (const auto& [type, unused] : own) {
        for (const auto& [other, value] : own) {
            INFO(value << " as " << type);
            const bool right = type == other || (type == "number" && other == "integer");
            CHECK(fits("{\"type\":\"" + type + "\"}", value) == right);
        }
    }
}

TEST_CASE("an enum takes its values and no other, of any type") {
    CHECK(fits(R"({"enum":["a",3]})", "\"a\""));
    CHECK(fits(R"({"enum":["a",3]})", "3"));
    CHECK(fault_of(R"({"enum":["a",3]})", "\"b\"") ==
          "file.json line 1: the file is 'b', it should be one of 'a', 3");
}

TEST_CASE("a required member that is missing is named with the line of its object") {
    CHECK(fits(R"({"required":["a"]})", R"({"a":1})"));
    CHECK(fits(R"({"required":["a"]})", "[]")); // says nothing about what is no object
    CHECK(fault_of(R"({"properties":{"x":{"required":["a"]}}})", "{\n\n\"x\": {}}") ==
          "file.json line 3: x has no 'a'");
}

TEST_CASE("members are checked by name, others are refused or checked as the schema says") {
    constexpr std::string_view kClosed =
        R"({"properties":{"a":{"type":"string"}},"additionalProperties":false})";
    CHECK(fits(kClosed, R"({"a":"x"})"));
    CHECK(fault_of(kClosed, R"({"a":1})") == "file.json line 1: a is of type integer, it should be string");
    CHECK(fault_of(kClosed, "{\"a\":\"x\",\n\"b\":1}") == "file.json line 2: b is not known here");
    CHECK(fits(R"({"additionalProperties":true})", R"({"b":1})"));
    CHECK(fits(R"({"additionalProperties":{"type":"integer"}})", R"({"b":1})"));
    CHECK(fault_of(R"({"additionalProperties":{"type":"integer"}})", R"({"b":"x"})") ==
          "file.json line 1: b is of type string, it should be integer");
}

TEST_CASE("items are checked each, and their number at its ends") {
    CHECK(fits(R"({"items":{"type":"integer"}})", "[1,2]"));
    CHECK(fault_of(R"({"items":{"type":"integer"}})", "[1,\n\"x\"]")
              .starts_with("file.json line 2: [1] is of type"));
    constexpr std::string_view kTwoOrThree = R"({"minItems":2,"maxItems":3})";
    CHECK_FALSE(fits(kTwoOrThree, "[1]"));
    CHECK(fits(kTwoOrThree, "[1,2]"));
    CHECK(fits(kTwoOrThree, "[1,2,3]"));
    CHECK_FALSE(fits(kTwoOrThree, "[1,2,3,4]"));
}

TEST_CASE("numbers and lengths hold at their limits and not beyond") {
    constexpr std::string_view kSpan = R"({"minimum":1.5,"maximum":3})";
    CHECK_FALSE(fits(kSpan, "1.4"));
    CHECK(fits(kSpan, "1.5"));
    CHECK(fits(kSpan, "3"));
    CHECK_FALSE(fits(kSpan, "3.1"));
    constexpr std::string_view kBetween = R"({"exclusiveMinimum":0,"exclusiveMaximum":100,"default":95})";
    CHECK(fault_of(kBetween, "0") == "file.json line 1: the file is 0, it has to be over 0");
    CHECK(fits(kBetween, "0.1"));
    CHECK(fits(kBetween, "99.9"));
    CHECK(fault_of(kBetween, "100") == "file.json line 1: the file is 100, it has to be under 100");
    CHECK(fits(kBetween, "\"100\""));                  // says nothing about what is no number
    CHECK_FALSE(fits(R"({"minLength":3})", "\"éé\"")); // two characters, four bytes
    CHECK(fits(R"({"minLength":3})", "\"ééé\""));
}

TEST_CASE("a reference leads to a definition, and nowhere else") {
    constexpr std::string_view kList =
        R"({"$defs":{"list":{"type":"array","items":{"$ref":"#/$defs/list"}}},"$ref":"#/$defs/list"})";
    CHECK(fits(kList, "[[],[[]]]"));
    CHECK(fault_of(kList, "[[],[3]]") == "file.json line 1: [1][0] is of type integer, it should be array");
    CHECK_FALSE(fits(R"({"$ref":"#/$defs/none"})", "1"));
    CHECK_FALSE(fits(R"({"$ref":"other.json"})", "1"));
}

TEST_CASE("a rule that is not understood is refused, not half obeyed") {
    CHECK(fault_of(R"({"pattern":"^a"})", "\"b\"") ==
          "file.json line 1: the file has a schema with 'pattern', which is not understood here");
    CHECK_FALSE(fits(R"({"items":3})", "[1]"));
    CHECK(fits(R"({"title":"x","description":"y","$schema":"z","$id":"i"})", "1"));
}
