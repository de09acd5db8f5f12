// What can be recorded, told to people: the page in docs and the help of one kind, both written from the catalogue.
//
// Promises: everything that stands there comes from the catalogue, in its order; the same catalogue gives the same bytes.
//   Help keeps to 80 columns, but for the example: that is one line, to be copied.
// Does not: print; the command line does.
// Threads: pure functions.
#pragma once

#include "method/kinds.h"

namespace undersheet::method {

[[nodiscard]] std::string kinds_page(const Catalogue& catalogue); // docs/kinds.md
[[nodiscard]] std::string kind_help(const Kind& kind);            // for one kind, as plain text

// What a field takes: "% from 0 to 60, usually 7 to 28", "yes or no", "none (firm), springy, soft".
[[nodiscard]] std::string field_takes(const Field& field);

} // namespace undersheet::method
