// Times and days, as they are written down and as people type them.
#include "entry/time.h"
#include "method/dates.h"
#include "tests/fuzz/targets.h"

namespace undersheet::fuzz {
namespace {

void promise_time(const entry::Time& time) {
    const auto again = entry::parse_time(time.text);
    promise(again.ok() && again->text == time.text && again->unix_s == time.unix_s &&
                again->offset_min == time.offset_min,
            "'" + time.text + "' does not read as itself");
    const auto rebuilt = entry::time_at(time.unix_s, time.offset_min);
    const auto read = entry::parse_time(rebuilt.text);
    promise(read.ok() && read->unix_s == time.unix_s && read->offset_min == time.offset_min,
            "'" + rebuilt.text + "' is another moment than '" + time.text + "'");
    promise(entry::clock_text(time).size() == 5, "a clock shows hours and minutes");
}

void promise_date(const entry::Date& date) {
    const auto again = entry::parse_date(entry::date_text(date));
    promise(again.ok() && *again == date, "a day does not read as itself");
    promise(entry::date_from_day_number(entry::day_number(date)) == date, "a day is counted as another");
    promise(!entry::date_words(date).empty(), "a day without words");
}

} // namespace

void read_a_time(std::string_view bytes) {
    const auto time = entry::parse_time(bytes);
    if (time) {
        promise_time(*time);
        promise_date(entry::date_of(*time));
    } else {
        promise_readable(time.fault());
    }
    if (const auto date = entry::parse_date(bytes)) promise_date(*date);
    if (const auto date = method::typed_date(bytes)) promise_date(*date);
    const auto noon = entry::parse_time("2026-06-11T12:00:00+01:00");
    if (const auto typed = method::typed_time(bytes, *noon)) promise_time(*typed);
}

} // namespace undersheet::fuzz
