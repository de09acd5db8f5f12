// Which supplement somebody means, and whether it takes more. Only the desk includes this.
#pragma once

#include "desk/session.h"

namespace undersheet::desk {

// Folds the job within the supplement that `typed` names: "" is the only one that is open, "0" the first record.
[[nodiscard]] Done choose_supplement(Case& on, const std::string& typed);

// A job that was handed over takes more only within a supplement that nobody has signed.
[[nodiscard]] Done supplement_takes_more(const job::Job& job);

} // namespace undersheet::desk
