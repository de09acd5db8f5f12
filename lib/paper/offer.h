// The offer: what the customer's roof costs, what is done for it, and what has to be settled first, in plain words.
//
// Promises: one price with its VAT and why that rate; no build-up, no limits, no numbers of entries. It waits for two signatures.
// Threads: pure function.
#pragma once

#include "job/judge.h"
#include "paper/document.h"
#include "paper/setting.h"

namespace undersheet::paper {

// Refused without a price list, without a total, and where the record is too thin to be taken off.
[[nodiscard]] Result<Document> offer(const job::Job& job, const job::Judgement& judgement,
                                     const Setting& setting);

} // namespace undersheet::paper
