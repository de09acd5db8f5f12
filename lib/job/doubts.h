// Whether a record puts signed parts of a stage in doubt, by a row of the method: rain on the bare deck, a proud head found late.
#pragma once

#include "job/job.h"

namespace undersheet::job {

[[nodiscard]] bool casts_doubt(const method::Doubt& row, std::string_view kind, const entry::Value& data,
                               const method::Method& method, const std::vector<Part>& parts);

} // namespace undersheet::job
