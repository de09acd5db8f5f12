// A paper as a PDF file on A4: to print, to send, to keep. It is drawn here; no browser is asked.
//
// Promises: the words of the document in its order, as in html.h, and what a drawing says under it; page numbers and the name of the paper on every
//   page; headings as bookmarks; photographs as they came. The same document gives the same bytes. A character the typeface lacks, or
//   one that is written from right to left, is drawn as □ and named in the last line of the paper. Format characters that nobody
//   sees (U+200B to U+200F, U+2068, U+2069, U+FE00 to U+FE0F) are left out.
// Only in builds with UNDERSHEET_PDF.
#pragma once

#include "paper/document.h"
#include "paper/words.h"
#include "pdf/marks.h"

namespace undersheet::paper {

// The pages as they are laid out, before they are bytes.
[[nodiscard]] pdf::File pdf_pages(const Document& document, const Words& words);

[[nodiscard]] std::string render_pdf(const Document& document, const Words& words);

} // namespace undersheet::paper
