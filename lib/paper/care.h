// The care paper: what the owner of the roof does and leaves alone, when it is looked at, and who to ring.
//
// Threads: pure function.
#pragma once

#include "paper/making.h"

namespace undersheet::paper {

void add_care_lines(Making& making); // the five, as the completion record prints them
[[nodiscard]] Document care(const job::Job& job, const job::Judgement& judgement, const Setting& setting);

} // namespace undersheet::paper
