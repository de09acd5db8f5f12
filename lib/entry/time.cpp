#include "entry/time.h"

#include "base/text.h"

#include <array>
#include <chrono>
#include <optional>

namespace undersheet::entry {
namespace {

constexpr int kFirstYear = 1900;
constexpr int kMostOffsetMin = 14 * 60; // the greatest in civil use, Line Islands
constexpr std::int64_t kSecondsADay = 86'400;

Fault time_malformed(std::string_view text, std::string why) {
    return {Code::time_malformed,
            "'" + std::string(text) + "' is not a time: " + std::move(why),
            {},
            "write it like 2026-06-11T08:05+01:00"};
}

Fault no_date(std::string_view text, std::string why) {
    return {Code::time_malformed,
            "'" + std::string(text) + "' is not a date: " + std::move(why),
            {},
            "write it like 2027-01-31"};
}

// Exactly `count` digits at `at`, nothing when there are fewer.
std::optional<int> digits(std::string_view text, std::size_t at, std::size_t count) {
    if (at > text.size() || text.size() - at < count) return std::nullopt;
    int value = 0;
    for (const char c : text.substr(at, count)) {
        if (c < '0' || c > '9') return std::nullopt;
        value = value * 10 + (c - '0');
    }
    return value;
}

bool has(std::string_view text, std::size_t at, char c) { return at < text.size() && text[at] == c; }

std::string two(int value) { return std::string(value < 10 ? "0" : "") + std::to_string(value); }

std::string four(int value) {
    std::string text = std::to_string(value);
    return std::string(text.size() < 4 ? 4 - text.size() : 0, '0') + text;
}

std::chrono::year_month_day calendar(const Date& date) {
    return std::chrono::year{date.year} / std::chrono::month{static_cast<unsigned>(date.month)} /
           std::chrono::day{static_cast<unsigned>(date.day)};
}

// "2026-06-11" at the front of `text`; the day must exist.
std::optional<Date> leading_date(std::string_view text) {
    const auto year = digits(text, 0, 4);
    const auto month = digits(text, 5, 2);
    const auto day = digits(text, 8, 2);
    if (!year || !month || !day || !has(text, 4, '-') || !has(text, 7, '-')) return std::nullopt;
    const Date date{*year, *month, *day};
    if (date.year < kFirstYear || !calendar(date).ok()) return std::nullopt;
    return date;
}

// "Z" or "+01:00", the whole of `text`. RFC 3339 keeps -00:00 for "offset unknown", which is what we cannot
// use.
std::optional<int> offset_of(std::string_view text) {
    if (text == "Z") return 0;
    const auto hours = digits(text, 1, 2);
    const auto minutes = digits(text, 4, 2);
    if (text.size() != 6 || !hours || !minutes || text[3] != ':' || *minutes > 59) return std::nullopt;
    const int offset = *hours * 60 + *minutes;
    if (offset > kMostOffsetMin || (text[0] == '-' && offset == 0)) return std::nullopt;
    if (text[0] == '+') return offset;
    return text[0] == '-' ? std::optional<int>(-offset) : std::nullopt;
}

std::string offset_text(int offset_min) {
    const int size = offset_min < 0 ? -offset_min : offset_min;
    return (offset_min < 0 ? "-" : "+") + two(size / 60) + ":" + two(size % 60);
}

// Whole days towards minus infinity, so that times before 1970 fall on the right day.
std::int64_t floored_days(std::int64_t seconds) {
    return (seconds >= 0 ? seconds : seconds - (kSecondsADay - 1)) / kSecondsADay;
}

} // namespace

bool operator<(const Date& a, const Date& b) { return day_number(a) < day_number(b); }

Result<Time> parse_time(std::string_view text) {
    const auto date = leading_date(text);
    if (!date) return time_malformed(text, "no such day");
    const auto hour = digits(text, 11, 2);
    const auto minute = digits(text, 14, 2);
    if (!has(text, 10, 'T') || !hour || !minute || !has(text, 13, ':'))
        return time_malformed(text, "hour and minute are missing");
    const bool seconds_written = has(text, 16, ':');
    const auto second = seconds_written ? digits(text, 17, 2) : std::optional<int>(0);
    if (!second || *hour > 23 || *minute > 59 || *second > 59)
        return time_malformed(text, "no such hour, minute or second");
    const std::string_view zone = text.substr(seconds_written ? 19 : 16);
    if (zone.empty()) return time_malformed(text, "it has no offset from UTC");
    if (zone.front() == '.') return time_malformed(text, "it has parts of a second");
    const auto offset = offset_of(zone);
    if (!offset) return time_malformed(text, "'" + std::string(zone) + "' is no offset from UTC");
    Time time;
    time.text = std::string(text.substr(0, 16)) + ":" + two(*second) + std::string(zone);
    time.unix_s = day_number(*date) * kSecondsADay + *hour * 3600 + *minute * 60 + *second - *offset * 60;
    time.offset_min = *offset;
    return time;
}

Time time_at(std::int64_t unix_s, int offset_min) {
    const std::int64_t local = unix_s + offset_min * 60;
    const std::int64_t days = floored_days(local);
    const int rest = static_cast<int>(local - days * kSecondsADay);
    // +00:00 and not Z, so that every time we write is as long as the next and shows its offset.
    return {date_text(date_from_day_number(days)) + "T" + two(rest / 3600) + ":" + two(rest / 60 % 60) + ":" +
                two(rest % 60) + offset_text(offset_min),
            unix_s, offset_min};
}

Result<Date> parse_date(std::string_view text) {
    if (text.size() == 7) { // a month alone stands for its last day
        const auto first = leading_date(std::string(text) + "-01");
        if (!first) return no_date(text, "no such month");
        const auto last = std::chrono::year{first->year} /
                          std::chrono::month{static_cast<unsigned>(first->month)} / std::chrono::last;
        return Date{first->year, first->month, static_cast<int>(static_cast<unsigned>(last.day()))};
    }
    const auto date = leading_date(text);
    if (!date || text.size() != 10) return no_date(text, "no such day");
    return *date;
}

std::string date_text(const Date& date) {
    return four(date.year) + "-" + two(date.month) + "-" + two(date.day);
}

std::string date_words(const Date& date) {
    static constexpr std::array<const char*, 12> kMonths = {"January",   "February", "March",    "April",
                                                            "May",       "June",     "July",     "August",
                                                            "September", "October",  "November", "December"};
    if (date.month < 1 || date.month > 12) return date_text(date);
    return std::to_string(date.day) + " " + kMonths[static_cast<std::size_t>(date.month - 1)] + " " +
           std::to_string(date.year);
}

Date date_of(const Time& time) {
    return date_from_day_number(floored_days(time.unix_s + time.offset_min * 60));
}

std::string clock_text(const Time& time) {
    const std::int64_t local = time.unix_s + time.offset_min * 60;
    const int rest = static_cast<int>(local - floored_days(local) * kSecondsADay);
    return two(rest / 3600) + ":" + two(rest / 60 % 60);
}

std::int64_t day_number(const Date& date) {
    return std::chrono::sys_days(calendar(date)).time_since_epoch().count();
}

Date date_from_day_number(std::int64_t days) {
    const std::chrono::year_month_day day{std::chrono::sys_days(std::chrono::days(days))};
    return {static_cast<int>(day.year()), static_cast<int>(static_cast<unsigned>(day.month())),
            static_cast<int>(static_cast<unsigned>(day.day()))};
}

double minutes_between(const Time& earlier, const Time& later) {
    return static_cast<double>(later.unix_s - earlier.unix_s) / 60.0;
}

} // namespace undersheet::entry
