// The tables, facts and lists of a paper, and whose it is, as comma-separated values (RFC 4180), for a spreadsheet.
//
// Promises: UTF-8 with a byte order mark, lines end with CR LF, every line has as many fields as the widest table, and the first
//   field names the table or section. Lines that stand beneath a row come after it, in its second field. A field that a spreadsheet would
//   take for a formula begins with an apostrophe; a plain number does not.
// Does not: write sentences, drawings and what has a story of its own; the other formats have that.
// Threads: pure function.
#pragma once

#include "paper/document.h"
#include "paper/words.h"

namespace undersheet::paper {

[[nodiscard]] std::string render_csv(const Document& document, const Words& words);

} // namespace undersheet::paper
