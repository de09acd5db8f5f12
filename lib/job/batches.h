// Which roofs hold a batch: for a recall, asked years later.
//
// Promises: capitals, blanks and hyphens do not tell batches apart (practice). A spelling that is nearly alike - one character
//   more, less or other, or letters that look like figures - is shown apart and never counted.
// Does not: know other jobs; ask of each in turn, folded within its last supplement, so that repairs are in it.
#pragma once

#include "job/job.h"
#include "job/stock.h"

namespace undersheet::job {

enum class Alike { not_at_all, nearly, same };
[[nodiscard]] Alike alike(std::string_view asked, std::string_view printed);

// What is looked for. An empty product is any; a day that is not given leaves the window open.
struct BatchWanted {
    std::string batch = {}, product = {};
    std::optional<entry::Date> from = {}, to = {};
};

// One thing that carries the batch, or might, and the parts it went into.
struct BatchFound {
    std::string printed = {}; // as it was written down, "" when it was not
    std::string product = {}; // "deck_adhesive"; "sheet" for the sheet itself
    const entry::Entry* entry = nullptr;
    std::vector<std::string> parts = {};
    std::optional<double> amount_l = {}; // as far as somebody wrote it down
};

struct BatchesOn {
    std::vector<BatchFound> certain = {};
    std::vector<BatchFound> open = {};   // no batch is known, of the product and in the time that are asked
    std::vector<BatchFound> nearly = {}; // nearly the same spelling
    std::vector<BatchFound> unused = {}; // certain, and went into nothing: in the van, or thrown away
};

[[nodiscard]] BatchesOn batches_on(const Job& job, const BatchWanted& wanted);

// Over all roofs that were asked: an unknown batch leaves a roof open only where it is of a product that had the batch
// somewhere, and where the roof is not certain anyway. With no product known everything unknown stays open.
void rule_out(std::vector<BatchesOn>& roofs, const BatchWanted& wanted);

} // namespace undersheet::job
