// The punch list on paper: what is still to be put right, then what was, worst first.
//
// Each row: number, place, what, which sign-off it holds, who raised it and when, the photograph before, who cleared it and
// when, the photograph after, the second look. Duplicates are shown once with what else they were raised as. Totals last.
#pragma once

#include "job/punch.h"
#include "paper/document.h"
#include "paper/setting.h"

namespace undersheet::paper {

[[nodiscard]] Document punch(const job::Job& job, const job::Judgement& judgement, const Setting& setting);

} // namespace undersheet::paper
