// The marks of one page as the drawing orders of a PDF (ISO 32000-1, 8 and 9).
#pragma once

#include "pdf/embedded_font.h"
#include "pdf/marks.h"

namespace undersheet::pdf {

struct UsedFonts {
    Used regular, bold;
};

// Adds what it uses to `used`. Fonts are called F0 and F1, pictures P0, P1 and so on.
[[nodiscard]] std::string content_of(const Page& page, const File& file, UsedFonts& used);

} // namespace undersheet::pdf
