#include "paper/words.h"

#include <catch2/catch.hpp>

using namespace undersheet;
using namespace undersheet::paper;

namespace {

Words made(const std::string& phrases, const std::string& decimal_sign = ",") {
    const auto read =
        Words::read(R"({"language":"xx","decimal_sign":")" + decimal_sign +
                    R"(","months":["1.","2.","3.","4.","5.","6.","7.","8.","9.","10.","11.","12."],)"
                    R"("phrases":{"date":"{day}. {month} {year}","date.time":"{date} um {time}")" +
                    phrases + "}}");
    REQUIRE(read.ok());
    return *read;
}

} // namespace

TEST_CASE("a phrase is said with its places filled") {
    const Words words = made(R"(,"hello":"{who} from {where}, {who}")");
    CHECK(words.say("hello", {{"who", "Ada"}, {"where", "Hull"}}) == "Ada from Hull, Ada");
}

TEST_CASE("braces in a name that is filled in stay what they are") {
    const Words words = made(R"(,"hello":"{who} from {where}")");
    CHECK(words.say("hello", {{"who", "{where}"}, {"where", "Hull"}}) == "{where} from Hull");
}

TEST_CASE("a place nobody fills stands as it is, and so does a lone brace") {
    const Words words = made(R"(,"hello":"{who} and { more")");
    CHECK(words.say("hello") == "{who} and { more");
}

TEST_CASE("a phrase that is missing comes out as its key") { CHECK(made("").say("no.such") == "no.such"); }

TEST_CASE("one thing and many things have their own phrase") {
    const Words words = made(R"(,"nails.one":"one nail","nails.many":"{n} nails")");
    CHECK(words.count("nails", 1) == "one nail");
    CHECK(words.count("nails", 0) == "0 nails");
    CHECK(words.count("nails", 2) == "2 nails");
}

TEST_CASE("numbers take the decimal sign of the language") {
    const Words words = made("");
    CHECK(words.number(12.25, 1) == "12,3");
    CHECK(words.number(-0.04, 1) == "0,0");
    CHECK(words.number(*Decimal::parse("12.10")) == "12,1");
    CHECK(Words::english().number(12.25, 1) == "12.3");
}

TEST_CASE("dates and times are said in the order of the language") {
    const Words words = made("");
    CHECK(words.date({2026, 6, 11}) == "11. 6. 2026");
    CHECK(words.date_and_time(*entry::parse_time("2026-06-11T08:05:00+01:00")) == "11. 6. 2026 um 08:05");
    CHECK(Words::english().date_and_time(*entry::parse_time("2026-06-11T08:05:00+01:00")) ==
          "11 June 2026, 08:05");
}

TEST_CASE("things are listed with the language's last word between") {
    const Words& words = Words::english();
    CHECK(words.listed({}) == "");
    CHECK(words.listed({"A"}) == "A");
    CHECK(words.listed({"A", "B"}) == "A and B");
    CHECK(words.listed({"A", "B", "C"}) == "A, B and C");
}

TEST_CASE("a right-to-left name is kept apart from the words round it") {
    const Words words = made(R"(,"by":"signed by {who}, 14:10")");
    CHECK(words.say("by", {{"who", "محمد"}}) == "signed by \u2068محمد\u2069, 14:10");
    CHECK(words.say("by", {{"who", "Ada"}}) == "signed by Ada, 14:10");
}

TEST_CASE("a words file that is not whole is refused") {
    CHECK_FALSE(Words::read("").ok());
    CHECK_FALSE(Words::read("{}").ok());
    CHECK_FALSE(Words::read(R"({"language":"xx","decimal_sign":".","months":["1"],"phrases":{}})").ok());
    CHECK(
        Words::read(
            R"({"language":"xx","decimal_sign":".","months":["1","2","3","4","5","6","7","8","9","10","11","12"]})")
            .fault()
            .code == Code::method_malformed);
}
