// The head and foot that every paper has, filled in from the job.
//
// Promises: firm, customer and addresses as they were recorded, "(erased)" where a person's data were taken out; the check
//   value is the digest over the names of the job's entries the paper was made from, in their order.
#pragma once

#include "job/job.h"
#include "paper/document.h"
#include "paper/setting.h"

namespace undersheet::paper {

[[nodiscard]] Document framed(std::string name, const job::Job& job, const Setting& setting);

} // namespace undersheet::paper
