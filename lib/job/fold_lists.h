// The lists of a job that entries fill one by one: people, decisions, answers, papers given out, the punch list.
#pragma once

#include "job/readings.h"

namespace undersheet::job {

void take_lists(Job& job, const Counted& counted);

} // namespace undersheet::job
