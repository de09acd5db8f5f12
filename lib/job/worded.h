// What a job is spoken of by, as it can be said again in another language: parts, choices, places, days, faults.
//
// Does not: know any other language; that is the papers' business (paper/said.h).
// Threads: plain values.
#pragma once

#include "base/fault.h"
#include "base/worded.h"
#include "entry/time.h"

#include <string>
#include <string_view>

namespace undersheet::job {

using undersheet::worded;
using undersheet::Worded;

[[nodiscard]] Worded typed(std::string text);
[[nodiscard]] Worded detail_worded(const Fault& fault);
// "where: detail; clears", as one_line() has it; the where is a name of the computation's, unless it is given in words.
[[nodiscard]] Worded fault_worded(const Fault& fault, const Worded& where = {});
[[nodiscard]] Worded choice_worded(std::string_view field, const std::string& word);
[[nodiscard]] Worded place_worded(const std::string& written);
[[nodiscard]] Worded date_worded(const entry::Date& date);

// "band/AB" in words: "band, edge AB".
[[nodiscard]] Worded part_worded(std::string_view part);
[[nodiscard]] Worded opened_again(std::string_view part); // why a later one is in doubt
[[nodiscard]] Worded no_chase_at(const std::string& abutment);
[[nodiscard]] std::string part_words(std::string_view part);

} // namespace undersheet::job
