// Puts the roof together from what was recorded of it: edges into an order of corners, tapes into coordinates.
#pragma once

#include "job/job.h"

namespace undersheet::job {

[[nodiscard]] Roof build_roof(const std::vector<Reading>& readings, const method::Method& method);

} // namespace undersheet::job
