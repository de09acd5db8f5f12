// A typeface inside a PDF file: only the glyphs that are used, with what each of them means, so that text can be copied and searched.
//
// Promises: the same glyphs give the same bytes. Glyphs keep their numbers; the outlines of the others are left out.
// Threads: pure functions.
#pragma once

#include "pdf/font.h"
#include "pdf/objects.h"

#include <map>

namespace undersheet::pdf {

using Used = std::map<std::uint16_t, char32_t>; // glyph, and the character it stands for

[[nodiscard]] int add_font(Objects& objects, const Font& font, const Used& used);
[[nodiscard]] std::string subset_of(const Font& font, const Used& used); // a TrueType file

} // namespace undersheet::pdf
