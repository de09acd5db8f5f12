#include "entry/time.h"

#include <catch2/catch.hpp>

using namespace undersheet;
using namespace undersheet::entry;

TEST_CASE("a time keeps its text and its instant") {
    const auto time = parse_time("2026-06-11T08:05:00+01:00");
    REQUIRE(time.ok());
    CHECK(time->text == "2026-06-11T08:05:00+01:00");
    CHECK(time->unix_s == 1781161500); // date -u -d 2026-06-11T07:05:00Z +%s
    CHECK(time->offset_min == 60);
}

// The examples of RFC 3339 section 5.8 that have whole seconds and no leap second.
TEST_CASE("the times of RFC 3339 are read as that text explains them") {
    CHECK(parse_time("1996-12-19T16:39:57-08:00")->unix_s == parse_time("1996-12-20T00:39:57Z")->unix_s);
    CHECK(parse_time("1996-12-20T00:39:57Z")->unix_s == 851042397);
}

TEST_CASE("seconds may be left out and are then written as zero") {
    CHECK(parse_time("2026-06-11T08:05+01:00")->text == "2026-06-11T08:05:00+01:00");
    CHECK(parse_time("2026-06-11T08:05Z")->text == "2026-06-11T08:05:00Z");
}

TEST_CASE("what is no time is refused with the reason") {
    const char* text = GENERATE(
        "2026-06-11T08:05", "2026-06-11T08:05:00", "2026-02-30T08:05Z", "2026-13-01T08:05Z",
        "2026-06-11 08:05Z", "2026-06-11T24:00Z", "2026-06-11T08:60Z", "2026-06-11T08:05:60Z",
        "2026-06-11T08:05:00.5Z", "2026-06-11T08:05-00:00", "2026-06-11T08:05+14:01", "2026-06-11T08:05+1:00",
        "2026-06-11T08:05z", "2026-06-11", "", "yesterday", "2026-06-11T08:05Zulu", "0026-06-11T08:05Z",
        "2026-06-11T08:05+01:60", "2o26-06-11T08:05Z", "2026-o6-11T08:05Z", "2026-06-1lT08:05Z",
        "2026.06-11T08:05Z", "2026-06.11T08:05Z", "2026-06-11To8:05Z", "2026-06-11T08:o5Z",
        "2026-06-11T08.05Z", "2026-06-11T08:05:o0Z", "2026-06-11T08:05+o1:00", "2026-06-11T08:05+01:o0",
        "2026-06-11T08:05+01.00", "2026-06-11T08:05 01:00");
    INFO(text);
    const auto time = parse_time(text);
    REQUIRE_FALSE(time.ok());
    CHECK(time.fault().code == Code::time_malformed);
    CHECK(one_line(time.fault()).find('\n') == std::string::npos);
}

TEST_CASE("a leap day exists in leap years only") {
    CHECK(parse_time("2028-02-29T08:05Z").ok());
    CHECK_FALSE(parse_time("2027-02-29T08:05Z").ok());
    CHECK_FALSE(parse_time("2100-02-29T08:05Z").ok());
    CHECK(parse_time("2000-02-29T08:05Z").ok());
}

TEST_CASE("the greatest offset in civil use is taken, one minute more is not") {
    CHECK(parse_time("2026-06-11T08:05+14:00").ok());
    CHECK(parse_time("2026-06-11T08:05-14:00").ok());
    CHECK_FALSE(parse_time("2026-06-11T08:05-14:01").ok());
}

TEST_CASE("a written instant reads back, before 1970 too") {
    const std::int64_t unix_s = GENERATE(0, -1, -86400, -86401, 1781161500, 4102444799);
    const int offset_min = GENERATE(0, 60, -300, 345, -570, 840);
    const Time time = time_at(unix_s, offset_min);
    const auto read = parse_time(time.text);
    INFO(time.text);
    REQUIRE(read.ok());
    CHECK(read->unix_s == unix_s);
    CHECK(read->offset_min == offset_min);
    CHECK(read->text == time.text);
}

TEST_CASE("a month alone means its last day") {
    CHECK(date_text(*parse_date("2026-11")) == "2026-11-30");
    CHECK(date_text(*parse_date("2028-02")) == "2028-02-29");
    CHECK(date_text(*parse_date("2027-02")) == "2027-02-28");
    CHECK(date_text(*parse_date("2027-12")) == "2027-12-31");
    CHECK_FALSE(parse_date("2027-13").ok());
}

TEST_CASE("a date reads back and has its words") {
    const auto date = parse_date("2027-01-31");
    REQUIRE(date.ok());
    CHECK(date_text(*date) == "2027-01-31");
    CHECK(date_words(*date) == "31 January 2027");
    CHECK_FALSE(parse_date("2027-01-32").ok());
    CHECK_FALSE(parse_date("31.1.2027").ok());
    CHECK_FALSE(parse_date("2027-01-31T08:05Z").ok());
}

TEST_CASE("the day and the clock are those of who wrote the time") {
    const auto time = parse_time("2026-06-11T23:30:00-05:00");
    CHECK(date_text(date_of(*time)) == "2026-06-11");
    CHECK(clock_text(*time) == "23:30");
}

TEST_CASE("days are counted from the first of January 1970") {
    CHECK(day_number({1970, 1, 1}) == 0);
    CHECK(day_number({1969, 12, 31}) == -1);
    CHECK(day_number({2000, 3, 1}) == 11017); // date -u -d 2000-03-01 +%s divided by 86400
    for (std::int64_t day = -20000; day < 60000; day += 97)
        CHECK(day_number(date_from_day_number(day)) == day);
    CHECK(Date{2026, 6, 30} < Date{2026, 7, 1});
}

TEST_CASE("minutes between two times do not care about their offsets") {
    CHECK(minutes_between(*parse_time("2026-06-11T08:05+01:00"), *parse_time("2026-06-11T08:35Z")) == 90.0);
    CHECK(minutes_between(*parse_time("2026-06-11T08:05Z"), *parse_time("2026-06-11T08:04:30Z")) == -0.5);
}

TEST_CASE("a day that no calendar has is written in figures, and a year has four of them") {
    CHECK(date_words({2026, 6, 11}) == "11 June 2026");
    CHECK(date_words({2026, 0, 11}) == "2026-00-11");
    CHECK(date_words({2026, 13, 11}) == "2026-13-11");
    CHECK(date_text({426, 6, 11}) == "0426-06-11");
}
