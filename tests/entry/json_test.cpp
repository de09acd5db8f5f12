#include "entry/json.h"

#include <catch2/catch.hpp>
#include <clocale>

using namespace undersheet;
using namespace undersheet::entry;

namespace {
std::string fault_line(std::string_view text) {
    const auto read = read_json(text);
    return read.ok() ? "taken" : one_line(read.fault());
}
std::string nested(std::size_t depth) { return std::string(depth, '[') + std::string(depth, ']'); }
} // namespace

TEST_CASE("numbers keep the digits that were written") {
    const auto read = read_json(R"([12.1, 0.1, -0.5, 1.50, 999999999999999, -3, 0])");
    REQUIRE(read.ok());
    std::string texts;
    for (const Value& number : *read->list()) texts += number.number()->text() + " ";
    CHECK(texts == "12.1 0.1 -0.5 1.5 999999999999999 -3 0 ");
}

TEST_CASE("every value knows the line it was read from") {
    const auto read = read_json("{\n  \"a\": 1,\n  \"b\": [\n    2\n,\n    {\"c\": \"x\"}\n  ]\n}\n");
    REQUIRE(read.ok());
    CHECK(read->line == 1);
    CHECK(read->find("a")->line == 2);
    CHECK(read->find("b")->line == 3);
    CHECK(read->list_of("b").at(0).line == 4);
    CHECK(read->list_of("b").at(1).line == 6);
    CHECK(read->list_of("b").at(1).find("c")->line == 6);
}

TEST_CASE("what cannot be taken is refused with its line and without the parser's own words") {
    CHECK(fault_line("{\"a\":1,\n\"a\":2}") == "line 2: 'a' stands twice; keep one of them");
    CHECK(fault_line("{\"a\":\nnull}") == "line 2: null stands for nothing here; leave the member out");
    CHECK(fault_line("[1e3]") == "line 1: '1e3' is written with an exponent; write all its digits");
    CHECK(fault_line("[1E-7]") == "line 1: '1E-7' is written with an exponent; write all its digits");
    CHECK(fault_line("[1E400]") == "line 1: '1E400' is too great a number");
    CHECK(fault_line("\xEF\xBB\xBF{}") ==
          "line 1: the text begins with a byte order mark; save it as UTF-8 without one");
    CHECK(fault_line("{\n\"a\":\"\xFF\"}") == "line 2: the bytes are not UTF-8 text; save it as UTF-8");
    CHECK(fault_line("{\n\n\"a\":1") == "line 3: the JSON ends too early; close what was opened");
    CHECK(fault_line("") == "line 1: the JSON ends too early; close what was opened");
    CHECK(fault_line("{}\nx") == "line 2: not JSON at the end of 'x'");
    CHECK(fault_line("{\"a\" 1}") == "line 1: not JSON at the end of '{\"a\" 1}'");
    CHECK(fault_line("[NaN]") == "line 1: not JSON at the end of '[N'");
    CHECK(fault_line("[\"\\ud800\"]").starts_with("line 1: not JSON at"));
    CHECK(fault_line("[1234567890123456]") == "line 1: '1234567890123456' has more than 15 digits; round it");
    CHECK(fault_line("[0.1234567890123456]") ==
          "line 1: '0.1234567890123456' has more than 15 digits; round it");
    CHECK(fault_line("[18446744073709551616]") ==
          "line 1: '18446744073709551616' has more than 15 digits; round it");
    CHECK(fault_line("[\"\\u0000\"]") == "line 1: a text holds a zero character; take it out");
    CHECK(fault_line("{'a':1}").starts_with("line 1: not JSON at"));
    CHECK(fault_line("// note\n{}").starts_with("line 1: not JSON at"));
}

TEST_CASE("a fault is one line even where the text around it has many") {
    for (const char* text : {"{\"a\" \n\n 1}", "[\"a\nb\"]", "{\"a\":1,}", "[1,]", "]", "{\"a\"\n:\n\n}"}) {
        INFO(text);
        const std::string line = fault_line(text);
        CHECK(line.starts_with("line "));
        CHECK(line.find('\n') == std::string::npos);
        CHECK(line.find("json.exception") == std::string::npos);
    }
}

TEST_CASE("size, depth and number of members are taken at their limit and refused above it") {
    CHECK(read_json(nested(32)).ok());
    CHECK(read_json(nested(33)).fault().code == Code::json_too_large);
    CHECK(read_json(nested(100'000)).fault().code == Code::json_too_large);
    const JsonLimits limits{.bytes = 9, .depth = 2, .members = 3};
    CHECK(read_json("[1,2,3]", limits).ok());
    CHECK(read_json("[1,2,3,4]", limits).fault().code == Code::json_too_large);
    CHECK(read_json("[1,2,  3]", limits).ok());
    CHECK(read_json("[1,2,   3]", limits).fault().code == Code::json_too_large);
    const JsonLimits few{.members = 2};
    CHECK(read_json(R"({"a":1,"b":2})", few).ok());
    CHECK(read_json(R"({"a":1,"b":2,"c":3})", few).fault().code == Code::json_too_large);
}

TEST_CASE("an object with very many members in the worst order is still read at once") {
    std::string text = "{";
    for (int i = 99'999; i >= 0; --i) text += "\"k" + std::to_string(100'000 + i) + "\":1,";
    text.back() = '}';
    const auto read = read_json(text);
    REQUIRE(read.ok());
    CHECK(read->map()->size() == 100'000);
    CHECK(read->find("k150000") != nullptr);
}

TEST_CASE("a decimal point is read in a locale that writes a comma") {
    const std::string before = std::setlocale(LC_NUMERIC, nullptr);
    const bool comma = std::setlocale(LC_NUMERIC, "de_DE.UTF-8") != nullptr ||
                       std::setlocale(LC_NUMERIC, "fr_FR.UTF-8") != nullptr;
    const auto read = read_json("[12.5]");
    std::setlocale(LC_NUMERIC, before.c_str());
    if (!comma) WARN("no locale with a decimal comma on this machine: read in the usual one only");
    REQUIRE(read.ok());
    CHECK(read->list()->at(0).number()->text() == "12.5");
}

TEST_CASE("what is written for people is indented by two blanks") {
    const auto read = read_json(R"({"b":[1,{"c":true}],"a":"x","d":[],"e":{}})");
    REQUIRE(read.ok());
    CHECK(write_pretty(*read) ==
          "{\n  \"a\": \"x\",\n  \"b\": [\n    1,\n    {\n      \"c\": true\n    }\n  ],\n"
          "  \"d\": [],\n  \"e\": {}\n}");
}

TEST_CASE("texts are written with the shortest escapes and other characters as they are") {
    const Value value = "\"\\/\b\f\n\r\t\x01\x1F\x7F\xC3\xA9\xE2\x82\xAC\xF0\x9F\x8F\xA0";
    CHECK(write_strict(value) ==
          "\"\\\"\\\\/\\b\\f\\n\\r\\t\\u0001\\u001f\x7F\xC3\xA9\xE2\x82\xAC\xF0\x9F\x8F\xA0\"");
}
