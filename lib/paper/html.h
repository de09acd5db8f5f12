// A paper as one HTML page that stands alone: read on a phone, in a browser, by a screen reader, or printed on A4.
//
// Promises: HTML5, UTF-8, no script and nothing fetched (the page forbids itself both); photographs are inside the page.
//   Somebody's text cannot become markup (markup.h). Tables have header cells with a scope; a table of figures scrolls
//   on a narrow screen, a table of words is set one row under the other. Colour never says anything by itself.
//   Page numbers and the name of the paper stand on every printed page where the browser knows margin boxes.
#pragma once

#include "paper/document.h"
#include "paper/words.h"

#include <string>

namespace undersheet::paper {

[[nodiscard]] std::string render_html(const Document& document, const Words& words);

} // namespace undersheet::paper
