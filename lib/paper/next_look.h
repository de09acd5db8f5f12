// When the roof is to be looked at next: after the last visit that was signed, or a year after the guarantee begins.
//
// Promises: a visit that named a day is taken at its word; a yearly look that named none counts a year from its own day; a
//   visit that is not signed yet moves nothing.
// Threads: pure functions.
#pragma once

#include "paper/guarantee.h"

namespace undersheet::paper {

struct NextLook {
    entry::Date due = {};
    std::optional<entry::Date> last = {};  // the visit it counts from; nothing: from the guarantee
    const entry::Entry* written = nullptr; // what it follows from
};

// Nothing when neither a guarantee nor a visit says anything of it.
[[nodiscard]] std::optional<NextLook> next_look(const Making& making);
// Those days for a calendar, up to the end of the guarantee, and its last day.
[[nodiscard]] std::vector<Reminder> looks_to_come(const Making& making);

} // namespace undersheet::paper
