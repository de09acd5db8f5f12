#include "pdf/font.h"

#include "base/text.h"
#include "pdf/font_files.h"
#include "pdf/true_type.h"

#include <algorithm>

namespace undersheet::pdf {
namespace {

constexpr std::size_t kCharacters = 0x10000;

// The subtable for Windows and Unicode's first plane, in the segmented format that every such font has.
std::string_view segments_of(std::string_view cmap) {
    for (std::size_t row = 0; row < u16_at(cmap, 2); ++row) {
        const std::size_t at = 4 + row * 8;
        if (u16_at(cmap, at) != 3 || u16_at(cmap, at + 2) != 1) continue;
        const std::size_t begins = u32_at(cmap, at + 4);
        if (begins < cmap.size() && u16_at(cmap, begins) == 4) return cmap.substr(begins);
    }
    return {};
}

// OpenType 1.9, "cmap", format 4: a segment gives its glyphs by a shift, or by a table that its offset leads to.
std::uint16_t glyph_in(std::string_view segments, std::size_t row, std::size_t rows, std::size_t code) {
    const std::size_t starts = 16 + rows * 2, shifts = starts + rows * 2, offsets = shifts + rows * 2;
    const std::uint16_t shift = u16_at(segments, shifts + row * 2);
    const std::uint16_t offset = u16_at(segments, offsets + row * 2);
    if (offset == 0) return static_cast<std::uint16_t>(code + shift);
    const std::size_t into = code - u16_at(segments, starts + row * 2);
    const std::uint16_t glyph = u16_at(segments, offsets + row * 2 + offset + into * 2);
    return glyph == 0 ? glyph : static_cast<std::uint16_t>(glyph + shift);
}

} // namespace

Font::Font(std::string_view file, std::string name) : file_(file), name_(std::move(name)) {
    units_of_em_ = std::max<int>(u16_at(table_of(file, "head"), 18), 1);
    glyphs_ = u16_at(table_of(file, "maxp"), 4);
    const std::string_view widths = table_of(file, "hmtx");
    const int listed =
        std::max<int>(u16_at(table_of(file, "hhea"), 34), 1); // the rest are as wide as the last
    for (int glyph = 0; glyph < glyphs_; ++glyph)
        width_of_.push_back(
            scaled(u16_at(widths, static_cast<std::size_t>(std::min(glyph, listed - 1)) * 4)));
    read_characters(table_of(file, "cmap"));
}

void Font::read_characters(std::string_view cmap) {
    glyph_of_.assign(kCharacters, 0);
    const std::string_view segments = segments_of(cmap);
    const std::size_t rows = u16_at(segments, 6) / 2U;
    for (std::size_t row = 0; row < rows; ++row) {
        const std::size_t first = u16_at(segments, 16 + rows * 2 + row * 2);
        const std::size_t last = std::min<std::size_t>(u16_at(segments, 14 + row * 2), kCharacters - 2);
        for (std::size_t code = first; code <= last; ++code)
            glyph_of_[code] = glyph_in(segments, row, rows, code);
    }
}

std::uint16_t Font::glyph(char32_t code) const { return code < kCharacters ? glyph_of_[code] : 0; }

int Font::width_mil(std::uint16_t glyph) const { return glyph < width_of_.size() ? width_of_[glyph] : 0; }

double Font::width_pt(std::string_view utf8, double size_pt) const {
    int mils = 0;
    while (!utf8.empty()) mils += width_mil(glyph(take_character(utf8).code));
    return mils * size_pt / 1000;
}

const Font& font(Face face) {
    static const Font regular(regular_ttf(), "Carlito");
    static const Font bold(bold_ttf(), "Carlito-Bold");
    return face == Face::bold ? bold : regular;
}

} // namespace undersheet::pdf
