// The journal on paper: readings as they were read, what was corrected, and every entry there is.
#pragma once

#include "job/stock.h"
#include "paper/making.h"

#include <functional>

namespace undersheet::paper {

// An entry as it was written, whatever was said of it later.
[[nodiscard]] job::Reading as_written(const entry::Entry& entry);
// "height: 165 mm, instrument: tape"
[[nodiscard]] std::string facts_words(const Making& making, const job::Reading& reading,
                                      std::string_view between);

// Readings as they were read, what counts and what no longer does, in the order they were written.
void add_readings(Making& making, const std::function<bool(const entry::Entry&)>& is_wanted);
// Which tin went into which part, by whom.
void add_tins_used(Making& making, const std::function<bool(const job::TinUse&)>& is_wanted);
void add_corrections(Making& making); // old and new, field by field
void add_journal(Making& making);

} // namespace undersheet::paper
