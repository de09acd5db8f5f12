// A text as a QR code (ISO/IEC 18004) that a phone can read off the paper.
//
// Promises: the same text gives the same drawing; four modules of white stand around it.
// Does not: say in words what it says; the text stands beside it on the paper. Does not take more than a few lines: 300 bytes.
#pragma once

#include "paper/drawing.h"

namespace undersheet::paper {

[[nodiscard]] Drawing qr_drawing(const std::string& text, std::string title);

} // namespace undersheet::paper
