// What the checked fixing heads say of the whole roof.
//
// Promises: the bound is the exact one-sided hypergeometric one (trade/heads); the first sample stays in the record, and
//   once different heads were checked the new sample alone is judged.
// Does not: say that a roof has none proud; only a full check does.
#pragma once

#include "job/job.h"

namespace undersheet::job {

struct HeadsSample {
    std::int64_t total = 0, checked = 0, below = 0, flush = 0, proud = 0, bad = 0, squares = 0, at_most = 0;
    double found_pct = 0, at_most_pct = 0, worst_mm = 0;
    bool is_full = false;         // every head was checked
    bool all_wanted = false;      // so many were bad that all have to be checked
    bool cleared = false;         // bad ones were found once; later checks found them put right
    std::set<std::string> boards; // that had a bad head
    Worded line;                  // "0 of 50; could be up to 8 of 170 (4.7 %)"
    std::vector<std::string> working;
    std::vector<const entry::Entry*> entries; // the sample that is judged
};

[[nodiscard]] std::optional<HeadsSample> judge_heads(const Job& job, const method::Method& method);

} // namespace undersheet::job
