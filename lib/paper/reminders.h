// The days to come that a paper names, as an iCalendar file (RFC 5545): the yearly look and the end of the guarantee.
//
// Promises: the same entries give the same bytes; a day is a day, in no time zone; each has an alarm two weeks before.
//   Lines end and are folded as the RFC says.
// Threads: pure functions.
#pragma once

#include "paper/document.h"
#include "paper/making.h"

namespace undersheet::paper {

[[nodiscard]] std::vector<Reminder> reminders_of(const Making& making); // of the guarantee
[[nodiscard]] Reminder day_to_come(const Making& making, const std::string& name, const entry::Date& on,
                                   const entry::Time& written, std::string_view what_key);

// A fault (record_too_thin) when the paper names no day to come.
[[nodiscard]] Result<std::string> render_ics(const Document& document, const Words& words);

} // namespace undersheet::paper
