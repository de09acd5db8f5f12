// The typeface of the papers in two weights: which characters it can draw and how wide each of them is.
//
// Promises: the font files are part of the library, so every machine sets the same line in the same place.
// Does not: kern, shape, or write from right to left.
// Threads: made once, then only read.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace undersheet::pdf {

enum class Face { regular, bold };

class Font {
public:
    Font(std::string_view file, std::string name);

    [[nodiscard]] bool draws(char32_t code) const { return glyph(code) != 0; }
    [[nodiscard]] std::uint16_t glyph(char32_t code) const; // 0 when there is none
    [[nodiscard]] int width_mil(std::uint16_t glyph) const; // in thousandths of the size, as a PDF counts
    [[nodiscard]] double width_pt(std::string_view utf8, double size_pt) const;

    [[nodiscard]] const std::string& name() const { return name_; } // its PostScript name
    [[nodiscard]] std::string_view file() const { return file_; }
    [[nodiscard]] int glyphs() const { return glyphs_; }
    [[nodiscard]] int scaled(int units) const { return units * 1000 / units_of_em_; }

private:
    void read_characters(std::string_view cmap);

    std::string_view file_;
    std::string name_;
    int units_of_em_ = 1000, glyphs_ = 0;
    std::vector<std::uint16_t> glyph_of_; // by character, U+0000 to U+FFFF
    std::vector<int> width_of_;           // by glyph
};

[[nodiscard]] const Font& font(Face face);

} // namespace undersheet::pdf
