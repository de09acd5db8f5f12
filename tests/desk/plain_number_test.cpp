#include "desk/plain_number.h"

#include <catch2/catch.hpp>

#include <vector>

using namespace undersheet;

namespace {

std::string plain(std::string_view word) {
    const auto made = desk::plain_number(word);
    return made.ok() ? *made : "refused: " + one_line(made.fault());
}

} // namespace

TEST_CASE("a number keeps its value in plain digits, whichever way it was written") {
    const std::vector<std::pair<std::string, std::string>> rows{{"0", "0"},
                                                                {"-0", "0"},
                                                                {"-0.0", "0"},
                                                                {"0e400", "0"},
                                                                {"12.50", "12.5"},
                                                                {"7e-05", "0.00007"},
                                                                {"2.78E-5", "0.0000278"},
                                                                {"1e3", "1000"},
                                                                {"1.25e+2", "125"},
                                                                {"-4.5e0", "-4.5"},
                                                                {"1e14", "100000000000000"},
                                                                {"1e-18", "0.000000000000000001"},
                                                                {"100e-1", "10"},
                                                                {"0.0010", "0.001"}};
    for (const auto& [word, text] : rows) CHECK(plain(word) == text);
}

TEST_CASE("a number of more than 15 digits is rounded to 15, halves up") {
    CHECK(plain("0.30000000000000004") == "0.3");
    CHECK(plain("7.2140000000000001") == "7.214");
    CHECK(plain("123456789.1234565") == "123456789.123457");
    CHECK(plain("-123456789.1234564") == "-123456789.123456");
    CHECK(plain("9.9999999999999996") == "10");
    CHECK(plain("1.2345678901234567e-7") == "0.000000123456789012"); // 18 places
}

TEST_CASE("what is too great, or would vanish, is refused and not made into something else") {
    CHECK(plain("999999999999999") == "999999999999999");
    for (const char* word : {"1e15", "999999999999999.9", "1e400", "-1e400", "1e99999999999999999999",
                             "1e-19", "1e-400", "100000000000000000000"}) {
        INFO(word);
        CHECK(desk::plain_number(word).fault().code == Code::number_too_long);
    }
}

TEST_CASE("what is no JSON number is refused") {
    for (const char* word : {"NaN", "nan", "Infinity", "-Infinity", "inf", "+1", "01", "1.", ".5", "-", "1e",
                             "1e+", "0x10", "1.2.3", "1_000", "--1", "1e5.5"}) {
        INFO(word);
        CHECK(desk::plain_number(word).fault().code == Code::number_malformed);
    }
}
