// What nobody looked at: honest answers ("not looked", "could not reach") and what was never asked.
#pragma once

#include "job/rules.h"

namespace undersheet::job {

// One line each, in the order of the inspection. Never empty of what is missing: printed, never read as fine.
[[nodiscard]] std::vector<std::string> not_looked_list(const Context& context);

} // namespace undersheet::job
