// Times as people claim them: RFC 3339 with an offset, kept as written, and calendar days.
//
// Promises: "2026-06-11T08:05:00+01:00" keeps its text; unix_s is exact. A time without offset, a 30 February, a leap
//   second are refused. A month alone ("2026-11") as a use-by date means its last day.
// Does not: read a clock, or know time zones beyond the offset that was written.
#pragma once

#include "base/result.h"

#include <cstdint>
#include <string>
#include <string_view>

namespace undersheet::entry {

struct Date {
    int year = 0;
    int month = 0;
    int day = 0;
    friend bool operator==(const Date&, const Date&) = default;
};
[[nodiscard]] bool operator<(const Date& a, const Date& b);

struct Time {
    std::string text = {};   // as written; seconds may be left out by who types it, they are then :00
    std::int64_t unix_s = 0; // seconds since 1970-01-01T00:00:00Z
    int offset_min = 0;

    friend bool operator==(const Time& a, const Time& b) { return a.text == b.text; }
};

[[nodiscard]] Result<Time> parse_time(std::string_view text);
[[nodiscard]] Time time_at(std::int64_t unix_s, int offset_min); // written to the second
[[nodiscard]] Result<Date> parse_date(std::string_view text);    // 2027-01-31, or 2026-11 for its last day
[[nodiscard]] std::string date_text(const Date& date);           // 2027-01-31
[[nodiscard]] std::string date_words(const Date& date);          // 31 January 2027
[[nodiscard]] Date date_of(const Time& time);                    // the day on the clock of who wrote it
[[nodiscard]] std::string clock_text(const Time& time);          // 08:05
[[nodiscard]] std::int64_t day_number(const Date& date);         // days since 1970-01-01
[[nodiscard]] Date date_from_day_number(std::int64_t days);
[[nodiscard]] double minutes_between(const Time& earlier,
                                     const Time& later); // negative when they are the other way round

} // namespace undersheet::entry
