// A job for targets that need one: what a morning on a small roof leaves behind, and everything that is made from it.
//
// The entries are read through entry::read_entry and nothing else: just what a book from a stranger may hold, since
// a signature says who wrote a thing and not whether the catalogue knows it.
#pragma once

#include "job/judge.h"

namespace undersheet::fuzz {

[[nodiscard]] const method::Catalogue& own_kinds();
[[nodiscard]] const method::Method& own_method();

// One entry a line, {"kind","place"?,"part"?,"author"?,"when","data","raw"?}; a line that cannot be an entry is left out.
[[nodiscard]] job::EntryList entries_from(std::string_view json_lines);
[[nodiscard]] const job::EntryList& small_job();

// Folds and judges, and makes every list and every paper in every format. Whatever the entries say, nothing may be thrown.
void judge_and_print(const job::EntryList& entries, const method::Method& method,
                     const std::optional<entry::Hash>& within = {});

} // namespace undersheet::fuzz
