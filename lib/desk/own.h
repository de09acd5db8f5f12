// The data files that come with the program, read once: the catalogue of kinds and the method.
//
// Promises: that they can be read is tested, so one that cannot is our own mistake and throws std::logic_error.
// Does not: know a job's own method; that one was pinned when the job began.
#pragma once

#include "method/kinds.h"
#include "method/method.h"

namespace undersheet::desk {

[[nodiscard]] std::string_view own_text(std::string_view file_name); // "method.json"
[[nodiscard]] const method::Catalogue& own_catalogue();
[[nodiscard]] const method::Method& own_method();

} // namespace undersheet::desk
