// The look of a paper in HTML: one style sheet for screen, narrow screen, dark screen and A4.
//
// Only html.cpp includes this. Nothing in it depends on a document; the running foot is written by html.cpp.
#pragma once

#include "paper/markup.h"

namespace undersheet::paper {

[[nodiscard]] Literal style_sheet();

} // namespace undersheet::paper
