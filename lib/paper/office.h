// The office file: everything the other papers say and everything they leave out, for the firm, its insurer, or whoever asks
// in ten years. Inspection, stages, punch list and completion record, then what was bought and used, the hours, every
// reading as it was read, what was corrected, and the journal entry by entry.
//
// Promises: each line of the journal carries the short name of its entry, as every other line that stands on one.
// Threads: pure function.
#pragma once

#include "paper/making.h"

namespace undersheet::paper {

[[nodiscard]] Document office(const job::Job& job, const job::Judgement& judgement, const Setting& setting);

} // namespace undersheet::paper
