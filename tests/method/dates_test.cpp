#include "method/dates.h"

#include "base/text.h"

#include <catch2/catch.hpp>

using namespace undersheet;
using namespace undersheet::method;

namespace {

std::string day(std::string_view typed) {
    const auto date = typed_date(typed);
    return date ? entry::date_text(*date) : one_line(date.fault());
}

std::string moment(std::string_view typed, std::string_view when = "2026-06-11T12:00:00+01:00") {
    const auto time = typed_time(typed, *entry::parse_time(when));
    return time ? time->text : one_line(time.fault());
}

} // namespace

TEST_CASE("a day is read when it can only be one day") {
    for (const std::string_view typed :
         {"2027-01-31", "31 Jan 2027", "31 January 2027", "Jan 31 2027", "January 31, 2027", "31-Jan-2027",
          "31.Jan.2027", "31/JAN/2027", "2027 Jan 31", " 31 jan 2027 "}) {
        INFO(typed);
        CHECK(day(typed) == "2027-01-31");
    }
    CHECK(day("9 Sept 2026") == "2026-09-09");
    CHECK(day("29 Feb 2028") == "2028-02-29");
}

TEST_CASE("a month alone is its last day") {
    for (const std::string_view typed :
         {"2026-11", "Nov 2026", "November 2026", "2026 Nov", "11/2026", "2026/11"}) {
        INFO(typed);
        CHECK(day(typed) == "2026-11-30");
    }
    CHECK(day("Feb 2028") == "2028-02-29");
    CHECK(day("2027-02") == "2027-02-28");
}

TEST_CASE("day and month in numbers are refused with what to type") {
    CHECK(day("31/1/2027") == "'31/1/2027' can be read two ways; type 2027-01-31");
    CHECK(day("1/31/2027") == "'1/31/2027' can be read two ways; type 2027-01-31");
    CHECK(day("3/4/2027") == "'3/4/2027' can be read two ways; type 2027-04-03 or 2027-03-04");
    CHECK(day("03.04.2027") == "'03.04.2027' can be read two ways; type 2027-04-03 or 2027-03-04");
    CHECK(day("5/5/2027") == "'5/5/2027' can be read two ways; type 2027-05-05");
    CHECK(typed_date("31/1/2027").fault().code == Code::time_malformed);
}

TEST_CASE("a year of two digits, no such day, and no day at all are refused") {
    CHECK(day("31 Jan 27") == "'31 Jan 27' has no year of four digits; type it like 2027-01-31");
    CHECK(day("31/1/27") == "'31/1/27' has no year of four digits; type it like 2027-01-31");
    for (const std::string_view typed :
         {"30 Feb 2027", "2027-02-30", "0 Jan 2027", "32 Jan 2027", "13/2026", "Ma 2026", "soon", "", "2027",
          "Jan", "31 Jan 2027 noon", "Jan Feb 2027", "13/13/2027", "1 2 3 2027", "31 Jan 2027 2028",
          "99999999999999999999"}) {
        INFO(typed);
        const auto date = typed_date(typed);
        REQUIRE_FALSE(date.ok());
        CHECK(date.fault().code == Code::time_malformed);
    }
}

TEST_CASE("a clock time is that time on the day and with the offset of the entry") {
    CHECK(moment("11:20") == "2026-06-11T11:20:00+01:00");
    CHECK(moment("7:05") == "2026-06-11T07:05:00+01:00");
    CHECK(moment("11:20:30") == "2026-06-11T11:20:30+01:00");
    CHECK(moment("00:00") == "2026-06-11T00:00:00+01:00");
    CHECK(moment("23:59") == "2026-06-11T23:59:00+01:00");
    // The day is that of the writer's clock: half past midnight in summer is still the day before in UTC.
    CHECK(moment("00:10", "2026-06-11T00:30:00+01:00") == "2026-06-11T00:10:00+01:00");
    CHECK(moment("22:00", "2026-06-10T23:30:00-05:00") == "2026-06-10T22:00:00-05:00");
}

TEST_CASE("a time written out keeps its own day and offset") {
    CHECK(moment("2026-06-10T23:50:00+01:00") == "2026-06-10T23:50:00+01:00");
    CHECK(moment("2026-06-10T23:50Z") == "2026-06-10T23:50:00Z");
}

TEST_CASE("what is no time is refused") {
    for (const std::string_view typed :
         {"24:00", "11:60", "11:20:60", "11", "11.20", "1120", "11:2", "111:20", "11:20 am", "noon", "",
          "11:20:", "2026-06-10T23:50:00", "2026-06-31T10:00:00Z"}) {
        INFO(typed);
        const auto time = typed_time(typed, *entry::parse_time("2026-06-11T12:00:00+01:00"));
        REQUIRE_FALSE(time.ok());
        CHECK(time.fault().code == Code::time_malformed);
    }
    CHECK_FALSE(typed_time("11:20", {}).ok()); // no day to put it on
}
