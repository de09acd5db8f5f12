#include "pdf/embedded_font.h"

#include "pdf/true_type.h"

#include <algorithm>

namespace undersheet::pdf {
namespace {

constexpr std::size_t kRowsAtOnce = 100; // of a CMap section: ISO 32000-1, 9.7.5.4

// Six letters before the name say that this is a part of the font: the same glyphs, the same letters.
std::string part_name(const Font& font, const Used& used) {
    std::uint32_t mixed = 2166136261U; // FNV-1a
    for (const auto& [glyph, code] : used) mixed = (mixed ^ glyph) * 16777619U;
    std::string letters;
    for (int i = 0; i < 6; ++i, mixed /= 26) letters += static_cast<char>('A' + mixed % 26);
    return letters + "+" + font.name();
}

std::string widths_of(const Font& font, const Used& used) {
    std::string out = "[";
    for (const auto& [glyph, code] : used)
        out += std::to_string(glyph) + "[" + std::to_string(font.width_mil(glyph)) + "]";
    return out + "]";
}

// What each glyph means, for whoever copies, searches or reads aloud.
std::string meanings_of(const Used& used) {
    std::string out = "/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n"
                      "/CIDSystemInfo <</Registry (Adobe) /Ordering (UCS) /Supplement 0>> def\n"
                      "/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n"
                      "1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n";
    std::vector<std::string> rows;
    for (const auto& [glyph, code] : used)
        rows.push_back("<" + hex4(glyph) + "> <" + hex4(static_cast<unsigned>(code)) + ">\n");
    for (std::size_t first = 0; first < rows.size(); first += kRowsAtOnce) {
        const std::size_t last = std::min(first + kRowsAtOnce, rows.size());
        out += std::to_string(last - first) + " beginbfchar\n";
        for (std::size_t i = first; i < last; ++i) out += rows[i];
        out += "endbfchar\n";
    }
    return out + "endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n";
}

// ISO 32000-1, table 122. The file does not say how thick its stems are; 80 is only used where the font is replaced.
std::string descriptor(const Font& font, const std::string& name, int file) {
    const std::string_view head = table_of(font.file(), "head"), across = table_of(font.file(), "hhea");
    std::string box;
    for (const std::size_t at : {36U, 38U, 40U, 42U})
        box += std::to_string(font.scaled(i16_at(head, at))) + " ";
    const int capital = font.scaled(i16_at(table_of(font.file(), "OS/2"), 88));
    return "<</Type/FontDescriptor/FontName/" + name + "/Flags 32/FontBBox[" + box +
           "]/ItalicAngle 0/Ascent " + std::to_string(font.scaled(i16_at(across, 4))) + "/Descent " +
           std::to_string(font.scaled(i16_at(across, 6))) + "/CapHeight " + std::to_string(capital) +
           "/StemV 80/FontFile2 " + named(file) + ">>";
}

} // namespace

int add_font(Objects& objects, const Font& font, const Used& used) {
    const std::string name = part_name(font, used), file = subset_of(font, used);
    const int embedded = objects.add_deflated("/Length1 " + std::to_string(file.size()), file);
    const int described = objects.add(descriptor(font, name, embedded));
    const int meanings = objects.add_deflated("", meanings_of(used));
    const int glyphs =
        objects.add("<</Type/Font/Subtype/CIDFontType2/BaseFont/" + name +
                    "/CIDSystemInfo<</Registry(Adobe)/Ordering(Identity)/Supplement 0>>"
                    "/FontDescriptor " +
                    named(described) + "/DW 0/W " + widths_of(font, used) + "/CIDToGIDMap/Identity>>");
    return objects.add("<</Type/Font/Subtype/Type0/BaseFont/" + name +
                       "/Encoding/Identity-H/DescendantFonts[" + named(glyphs) + "]/ToUnicode " +
                       named(meanings) + ">>");
}

} // namespace undersheet::pdf
