// A paper as plain text: 80 columns, for a terminal, an e-mail or a message; every word of the document, no page numbers.
//
// Promises: UTF-8, lines no wider than 80 columns, each ended by a line feed. Photographs are named by their caption and
//   the beginning of their hash. What is struck stands between ~ and ~.
#pragma once

#include "paper/document.h"
#include "paper/words.h"

#include <string>

namespace undersheet::paper {

[[nodiscard]] std::string render_text(const Document& document, const Words& words);

} // namespace undersheet::paper
