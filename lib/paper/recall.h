// Which roofs hold a batch that was called back: the firm's own paper, over all jobs of its book.
#pragma once

#include "job/batches.h"
#include "paper/document.h"
#include "paper/setting.h"

namespace undersheet::paper {

// One roof, folded within its last supplement so that repairs count, and what was found on it.
struct RoofAsked {
    const job::Job* job = nullptr;
    job::BatchesOn batches = {};
};

struct RecallAsked {
    job::BatchWanted wanted = {};
    std::string notice = {}; // whose notice, which number
    std::vector<RoofAsked> roofs = {};
};

// Certain roofs, those that cannot be ruled out, spellings nearly alike, and what was never used.
[[nodiscard]] Document recall(const RecallAsked& asked, const Setting& setting, const entry::Time& as_of);

} // namespace undersheet::paper
