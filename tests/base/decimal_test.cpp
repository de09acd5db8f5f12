#include "base/decimal.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>
#include <random>

using namespace undersheet;

namespace {

Decimal d(std::string_view text) { return *Decimal::parse(text); }
std::string again(std::string_view text) { return d(text).text(); }
Code refused(std::string_view text) { return Decimal::parse(text).fault().code; }

} // namespace

TEST_CASE("a number typed in its smallest form is printed as it was typed") {
    for (const auto* text : {"0", "1", "-1", "12.1", "-0.5", "0.001", "123456789012345", "-999999999999999",
                             "0.000000000000000001", "99999.9999999999"}) {
        CHECK(again(text) == text);
    }
}

TEST_CASE("zeros that say nothing are dropped, and there is no minus zero") {
    CHECK(again("1.50") == "1.5");
    CHECK(again("12.000") == "12");
    CHECK(again("007") == "7");
    CHECK(again("-0") == "0");
    CHECK(again("-0.00") == "0");
    CHECK(again("00.10") == "0.1");
    CHECK(d("1.5") == d("1.500"));
}

TEST_CASE("what is not plain digits with one point is not a number") {
    for (const auto* text : {"",    "-",  ".",  ".5",  "-.5", "5.",  "-5.", "1.2.3", "1,5", "+5",
                             "1e5", " 1", "1 ", "--1", "1-",  "0x1", "nan", "inf",   "½",   "1..2"}) {
        CAPTURE(text);
        REQUIRE_FALSE(Decimal::parse(text).ok());
        CHECK(refused(text) == Code::number_malformed);
    }
}

TEST_CASE("fifteen digits are kept and sixteen are refused") {
    CHECK(again("999999999999999") == "999999999999999");
    CHECK(refused("1000000000000000") == Code::number_too_long);
    CHECK(again("0.123456789012345") == "0.123456789012345");
    CHECK(refused("0.1234567890123456") == Code::number_too_long);
    CHECK(again("1.00000000000000") == "1"); // zeros at the end are not kept, so they are not counted
    CHECK(refused("12345678901234567890123") == Code::number_too_long);
    CHECK(again("0.000000000000000001") == "0.000000000000000001"); // 18 places
    CHECK(refused("0.0000000000000000001") == Code::number_too_long);
    CHECK(again("000000000000000000000000000012") == "12");
}

TEST_CASE("the value is the nearest binary number") {
    CHECK(d("12.1").value() == 12.1);
    CHECK(d("0.1").value() == 0.1);
    CHECK(d("-7.35").value() == -7.35);
    CHECK(d("0.000001").value() == 0.000001);
    CHECK(d("99999.9999999999").value() == 99999.9999999999);
}

TEST_CASE("the whole part is cut towards zero") {
    CHECK(d("12.9").whole() == 12);
    CHECK(d("-12.9").whole() == -12);
    CHECK(d("0.9").whole() == 0);
    CHECK(d("12").is_integer());
    CHECK(d("12.0").is_integer());
    CHECK_FALSE(d("12.1").is_integer());
}

TEST_CASE("numbers are ordered by value, whatever their places") {
    const char* rising[] = {"-10", "-9.99", "-0.5", "-0.25", "0",  "0.000000000000000001",
                            "0.1", "0.25",  "0.5",  "9.99",  "10", "999999999999999"};
    for (std::size_t i = 0; i < std::size(rising); ++i) {
        for (std::size_t j = 0; j < std::size(rising); ++j) {
            CAPTURE(rising[i], rising[j]);
            CHECK((d(rising[i]) < d(rising[j])) == (i < j));
            CHECK((d(rising[i]) == d(rising[j])) == (i == j));
        }
    }
}

TEST_CASE("products are exact or refused") {
    CHECK(d("0.1").times(d("0.1"))->text() == "0.01");
    CHECK(d("29").times(d("0.01"))->text() == "0.29");
    CHECK(d("-2.5").times(d("4"))->text() == "-10");
    CHECK(d("0").times(d("999999999999999"))->text() == "0");
    CHECK(d("999999999999999").times(d("1"))->text() == "999999999999999");
    CHECK(d("999999999999999").times(d("2")).fault().code == Code::number_too_long);
    CHECK(d("99999999").times(d("9999999"))->text() == "999999890000001");
    CHECK(d("0.0000000001").times(d("0.00000001"))->text() == "0.000000000000000001");
    CHECK(d("0.0000000001").times(d("0.000000001")).fault().code == Code::number_too_long);
    CHECK(d("999999999999999").times(d("999999999999999")).fault().code == Code::number_too_long);
}

TEST_CASE("a decimal can be made from whole digits and places, and taken apart again") {
    CHECK(Decimal::scaled(25, 1)->text() == "2.5");
    CHECK(Decimal::scaled(-250, 2)->text() == "-2.5");
    CHECK(Decimal::scaled(-250, 2)->digits() == -25);
    CHECK(Decimal::scaled(-250, 2)->places() == 1);
    CHECK(Decimal::scaled(1, 18)->text() == "0.000000000000000001");
    CHECK(Decimal::scaled(999'999'999'999'999, 0)->text() == "999999999999999");
    CHECK(Decimal::scaled(1'000'000'000'000'000, 0).fault().code == Code::number_too_long);
    CHECK(Decimal::scaled(1'000'000'000'000'000, 1)->text() == "100000000000000");
    CHECK(Decimal::scaled(std::numeric_limits<std::int64_t>::min(), 0).fault().code == Code::number_too_long);
    CHECK(Decimal::scaled(1, 19).fault().code == Code::number_too_long);
    CHECK(Decimal::scaled(1, -1).fault().code == Code::number_too_long);
    CHECK(Decimal::of(-42).text() == "-42");
}

TEST_CASE("a computed value is rounded with halves away from zero") {
    CHECK(Decimal::rounded(2.5, 0)->text() == "3");
    CHECK(Decimal::rounded(-2.5, 0)->text() == "-3");
    CHECK(Decimal::rounded(2.4999, 0)->text() == "2");
    CHECK(Decimal::rounded(1.25, 1)->text() == "1.3");
    CHECK(Decimal::rounded(-0.04, 1)->text() == "0");
    CHECK(Decimal::rounded(1.0 / 3, 9)->text() == "0.333333333");
    CHECK(Decimal::rounded(std::nan(""), 2).fault().code == Code::value_impossible);
    CHECK(Decimal::rounded(std::numeric_limits<double>::infinity(), 2).fault().code ==
          Code::value_impossible);
    CHECK(Decimal::rounded(1e15, 0).fault().code == Code::number_too_long);
    CHECK(Decimal::rounded(999'999'999'999'999.0, 0)->text() == "999999999999999");
}

TEST_CASE("printing and reading back gives the same number, for drawn numbers of every length") {
    constexpr unsigned seed = 1234;
    std::mt19937_64 dice(seed);
    CAPTURE(seed);
    for (int round = 0; round < 5000; ++round) {
        std::int64_t digits = static_cast<std::int64_t>(dice() % 1'000'000'000'000'000);
        for (auto cut = dice() % 15; cut > 0; --cut) digits /= 10;
        const int places = static_cast<int>(dice() % 19);
        const auto made = *Decimal::scaled(dice() % 2 == 0 ? digits : -digits, places);
        CAPTURE(made.text());
        REQUIRE(d(made.text()) == made);
        REQUIRE(d(made.text()).text() == made.text());
    }
}

TEST_CASE("fixed prints so many places, halves away from zero, never minus zero") {
    CHECK(fixed(1.5, 0) == "2");
    CHECK(fixed(-1.5, 0) == "-2");
    CHECK(fixed(0.05, 1) == "0.1");
    CHECK(fixed(-0.04, 1) == "0.0");
    CHECK(fixed(-0.0, 2) == "0.00");
    CHECK(fixed(12, 3) == "12.000");
    CHECK(fixed(1234567.891, 2) == "1234567.89");
    CHECK(fixed(0.007, 2) == "0.01");
    CHECK(fixed(9.999, 2) == "10.00");
}

TEST_CASE("what cannot be printed with those places is a question mark") {
    CHECK(fixed(std::nan(""), 2) == "?");
    CHECK(fixed(-std::numeric_limits<double>::infinity(), 2) == "?");
    CHECK(fixed(1e18, 0) == "?");
    CHECK(fixed(1e15, 0) == "1000000000000000");
}

TEST_CASE("shortest drops the zeros that fixed leaves, but not those of a whole number") {
    CHECK(shortest(1.5, 3) == "1.5");
    CHECK(shortest(100, 0) == "100");
    CHECK(shortest(100, 3) == "100");
    CHECK(shortest(0.0004, 3) == "0");
    CHECK(shortest(-0.0004, 3) == "0");
    CHECK(shortest(std::nan(""), 3) == "?");
}
