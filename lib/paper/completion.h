// The completion record: what the customer keeps. Two pages and the photographs.
//
// Page 1 is read in sixty seconds: whether the roof is finished and nothing is open; what was laid; the guarantee and who to
// ring; five lines of care; what the customer decided or was told; signatures. Page 2 (completion_details.h) is for the
// surveyor who comes years later.
// Promises: plain words; whatever is open, was let go, or was not looked at stands on it. Nobody is blamed.
#pragma once

#include "job/judge.h"
#include "paper/document.h"
#include "paper/setting.h"

namespace undersheet::paper {

[[nodiscard]] Document completion(const job::Job& job, const job::Judgement& judgement,
                                  const Setting& setting);

} // namespace undersheet::paper
