// Findings as numbered items, the same number everywhere on a paper; decisions that let a limit go.
#pragma once

#include "paper/making.h"

namespace undersheet::paper {

// Findings about the deck, walls, sheet and tins, worst first, notes last: those an inspection numbers, from 1. The weather
// of the hour, the day's own rules, the work and the punch list are not among them.
[[nodiscard]] std::vector<const job::Finding*> numbered(const Making& making);

// The findings on readings of this kind, a line each: those of the air and of the day, which are not numbered.
void add_passing(Making& making, std::string_view kind);

[[nodiscard]] Item finding_item(const Making& making, const job::Finding& finding, std::string number);
[[nodiscard]] std::string plain_says(const Making& making, const job::Finding& finding); // places in words
[[nodiscard]] std::string source_words(const Making& making,
                                       const job::Finding& finding); // "BS 6229:2018 (published)"
// Every limit that was let go by name, with who, role, reason, limit and reading.
void add_departures(Making& making);
// What nobody looked at, a line each; the heading is there even when there is nothing.
void add_not_looked(Making& making);

} // namespace undersheet::paper
