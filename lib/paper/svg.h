// A drawing as SVG inside a page of HTML.
//
// Promises: scales with the page; drawn in the page's own ink, so it is readable in the dark and in print; its words are its
//   alternative text.
// Only the HTML renderer includes this file.
#pragma once

#include "paper/drawing.h"
#include "paper/markup.h"

namespace undersheet::paper {

[[nodiscard]] Markup svg(const Drawing& drawing);

} // namespace undersheet::paper
