// Could this catalogue have kept these data? An entry from another device is signed by whoever wrote it and read against the
// catalogue by nobody, while rules and roofs rely on its words and ranges.
//
// Promises: what check() made passes. The first field that could not have been kept is named, with the value; a field the
//   kind does not have is no breach, a newer catalogue may have it. A personal field may be a commitment or text, a whole
//   number may have decimals, one text may stand for a list, and any field may have been left unlooked at.
// Does not: ask whether a field is missing, hold rules between fields, or know the roof.
// Threads: pure functions.
#pragma once

#include "entry/value.h"
#include "method/kinds.h"

namespace undersheet::method {

[[nodiscard]] Done check_stored(const Kind& kind, const entry::Value& data);

} // namespace undersheet::method
