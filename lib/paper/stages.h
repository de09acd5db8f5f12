// The stage sign-off sheet: one line a part, in the order of work: how it stands, who, when, which tins, which reading.
//
// Order: the parts, with struck signatures and confirmations set in beneath; pauses; departures; what was left out; what
// is left to settle.
// Promises: no signature disappears; one that a reopening took back stands struck beneath its part, with the reason.
#pragma once

#include "job/judge.h"
#include "paper/making.h"

namespace undersheet::paper {

// One part as a row of that sheet: part, stands, who, when, tins, reading.
[[nodiscard]] Row part_row(const Making& making, const job::Part& part);
[[nodiscard]] std::string tins_words(const Making& making, const std::vector<std::string>& labels);
[[nodiscard]] Document stages(const job::Job& job, const job::Judgement& judgement, const Setting& setting);

} // namespace undersheet::paper
