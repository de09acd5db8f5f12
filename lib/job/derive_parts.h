// The parts this roof calls for, in the order of work, each waiting (or not needed, with the reason).
#pragma once

#include "job/job.h"

namespace undersheet::job {

[[nodiscard]] std::vector<Part> derive_parts(const Roof& roof, const method::Method& method);

} // namespace undersheet::job
