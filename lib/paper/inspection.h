// The pre-install deck inspection: is this deck fit to bond a sheet to, and what has to be put right first?
//
// Order: verdict and counts; what to put right; who, when, weather; safety; under the deck; boards; fixings; joints;
// moisture; levels; outline; walls; gutter and outlets; openings; sheet and creases; tins; what was not looked at;
// decisions by others; photographs; signature.
// Promises: every value as it was read, with its limit and source; what nobody looked at is always listed.
// The weather of an hour and the work on the parts are no reason to call the deck unfit; they are listed where they belong.
#pragma once

#include "job/judge.h"
#include "paper/document.h"
#include "paper/setting.h"

namespace undersheet::paper {

[[nodiscard]] Document inspection(const job::Job& job, const job::Judgement& judgement,
                                  const Setting& setting);

} // namespace undersheet::paper
