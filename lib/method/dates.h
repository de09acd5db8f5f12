// Days and times as they stand on labels and as people type them.
//
// Promises: a day is read when it can only be one day: 2027-01-31, 31 Jan 2027, Jan 31 2027; a month alone (2026-11,
//   Nov 2026, 11/2026) is its last day. 31/1/2027 and years of two digits are refused with what to type.
//   A time is RFC 3339, or 11:20 on the day and with the offset of the entry.
// Does not: read a clock.
// Threads: pure functions.
#pragma once

#include "entry/time.h"

namespace undersheet::method {

[[nodiscard]] Result<entry::Date> typed_date(std::string_view typed);
[[nodiscard]] Result<entry::Time> typed_time(std::string_view typed, const entry::Time& when);

} // namespace undersheet::method
