// Does one kind of the catalogue hold together? What a shape cannot say: names, units, ranges, rules that point at fields.
//
// Promises: the first thing wrong is named with the line of the file.
// Does not: know other kinds; that two have one name is seen where all are read.
// Threads: pure functions.
#pragma once

#include "method/kinds.h"

namespace undersheet::method {

inline constexpr std::string_view kCatalogueFile = "kinds.json";

[[nodiscard]] Done check_sound(const Kind& kind);

// method_malformed at that line of kinds.json; line 0 for the whole file.
[[nodiscard]] Fault unsound(int line, std::string what);

} // namespace undersheet::method
