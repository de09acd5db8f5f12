// The order: what to buy for a roof, and the cut list with a drawing of every bar. It goes to a merchant, so the customer is not on it.
//
// Promises: every line of the take-off's order, the price by the firm's own list, and the sum, or why there is none.
// Threads: pure function.
#pragma once

#include "job/judge.h"
#include "paper/document.h"
#include "paper/setting.h"

namespace undersheet::paper {

// Refused without a price list, and where the record is too thin to be taken off.
[[nodiscard]] Result<Document> order(const job::Job& job, const job::Judgement& judgement,
                                     const Setting& setting);

} // namespace undersheet::paper
