// The TrueType file that goes into a PDF: ISO 32000-1, 9.9 says which tables a reader needs.
#include "pdf/embedded_font.h"
#include "pdf/true_type.h"

#include <set>

namespace undersheet::pdf {
namespace {

std::string big_endian(std::uint32_t value, int count) {
    std::string out;
    for (int shift = (count - 1) * 8; shift >= 0; shift -= 8)
        out += static_cast<char>(value >> static_cast<unsigned>(shift) & 0xFFU);
    return out;
}

// OpenType 1.9, "glyf": a letter with an accent names the glyphs it is put together from.
void add_parts(std::string_view file, std::uint16_t glyph, std::set<std::uint16_t>& all) {
    const std::string_view outline = outline_of(file, glyph);
    if (!all.insert(glyph).second || outline.empty() || i16_at(outline, 0) >= 0) return;
    constexpr unsigned kWords = 0x1, kScale = 0x8, kMore = 0x20, kTwoScales = 0x40, kMatrix = 0x80;
    for (std::size_t at = 10; at + 4 <= outline.size();) {
        const unsigned flags = u16_at(outline, at);
        add_parts(file, u16_at(outline, at + 2), all);
        if ((flags & kMore) == 0) return;
        at += (flags & kWords) != 0 ? 8U : 6U;
        at += (flags & kScale) != 0 ? 2U : (flags & kTwoScales) != 0 ? 4U : (flags & kMatrix) != 0 ? 8U : 0U;
    }
}

struct Table {
    std::string name, bytes;
};

// "glyf" with nothing but what is used, and "loca" that says where it is, in the long form.
std::vector<Table> outlines(const Font& font, const Used& used) {
    std::set<std::uint16_t> wanted;
    add_parts(font.file(), 0, wanted);
    for (const auto& [glyph, code] : used) add_parts(font.file(), glyph, wanted);
    std::string drawn, places;
    for (int glyph = 0; glyph < font.glyphs(); ++glyph) {
        places += big_endian(static_cast<std::uint32_t>(drawn.size()), 4);
        if (!wanted.contains(static_cast<std::uint16_t>(glyph))) continue;
        drawn += outline_of(font.file(), static_cast<std::uint16_t>(glyph));
        drawn.resize((drawn.size() + 3) / 4 * 4, '\0');
    }
    places += big_endian(static_cast<std::uint32_t>(drawn.size()), 4);
    return {{"glyf", std::move(drawn)}, {"loca", std::move(places)}};
}

std::uint32_t checked(std::string_view bytes) {
    std::uint32_t sum = 0;
    for (std::size_t at = 0; at < bytes.size(); at += 4) sum += u32_at(bytes, at);
    return sum;
}

// How the directory is searched by halves: OpenType 1.9, "table directory".
std::string directory_head(std::size_t tables) {
    std::uint32_t power = 1, halvings = 0;
    while (power * 2 <= tables) {
        power *= 2;
        ++halvings;
    }
    const auto count = static_cast<std::uint32_t>(tables);
    return big_endian(0x00010000, 4) + big_endian(count, 2) + big_endian(power * 16, 2) +
           big_endian(halvings, 2) + big_endian((count - power) * 16, 2);
}

std::string file_of(const std::vector<Table>& tables) {
    std::string directory = directory_head(tables.size()), bodies;
    const std::size_t begins = directory.size() + tables.size() * 16;
    for (const Table& table : tables) {
        directory += table.name + big_endian(checked(table.bytes), 4) +
                     big_endian(static_cast<std::uint32_t>(begins + bodies.size()), 4) +
                     big_endian(static_cast<std::uint32_t>(table.bytes.size()), 4);
        bodies += table.bytes;
        bodies.resize((bodies.size() + 3) / 4 * 4, '\0');
    }
    return directory + bodies;
}

} // namespace

std::string subset_of(const Font& font, const Used& used) {
    std::vector<Table> tables;
    for (const char* name : {"cvt ", "fpgm", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "prep"}) {
        if (std::string_view(name) == "glyf" || std::string_view(name) == "loca") {
            for (Table& table : outlines(font, used))
                if (table.name == name) tables.push_back(std::move(table));
            continue;
        }
        const std::string_view kept = table_of(font.file(), name);
        if (!kept.empty()) tables.push_back({name, std::string(kept)});
        if (std::string_view(name) == "head" && kept.size() >= 52)
            tables.back().bytes.replace(50, 2, big_endian(1, 2)); // "loca" is in the long form now
    }
    return file_of(tables);
}

} // namespace undersheet::pdf
