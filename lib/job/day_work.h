// What is left to do on a roof and how long it takes, by the hours of the method's take-off: what day.h is asked with.
//
// Promises: the parts that are neither signed, closed, left out nor needed, in the order of work; neighbouring parts of one stage
//   are one piece of work, but each section of the field stands by itself. A part that was begun counts whole.
// Does not: know who is there; the method's crew shares the hours.
// Threads: pure function on values.
#pragma once

#include "job/job.h"
#include "job/schedule.h"

namespace undersheet::job {

// Refused where the record is too thin to be taken off.
[[nodiscard]] Result<std::vector<Work>> work_left(const Job& job, const method::Method& method);

} // namespace undersheet::job
