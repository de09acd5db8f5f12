// The cut list of one sort of trim as a drawing: each bar to scale, the pieces in it, what is left over.
//
// Promises: bars that are cut alike are drawn once, with how many; every piece says which run it is for.
// Threads: pure function.
#pragma once

#include "job/takeoff.h"
#include "paper/drawing.h"
#include "paper/words.h"

namespace undersheet::paper {

[[nodiscard]] Drawing bars_drawing(const job::TrimCuts& cuts, std::string title, const Words& words);

} // namespace undersheet::paper
