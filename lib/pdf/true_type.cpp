#include "pdf/true_type.h"

namespace undersheet::pdf {
namespace {

std::uint32_t byte_at(std::string_view bytes, std::size_t at) {
    return at < bytes.size() ? static_cast<unsigned char>(bytes[at]) : 0U;
}

std::string_view part(std::string_view bytes, std::size_t at, std::size_t length) {
    if (at > bytes.size() || length > bytes.size() - at) return {};
    return bytes.substr(at, length);
}

// Where a glyph begins in "glyf": short offsets count in pairs of bytes.
std::size_t offset_of(std::string_view file, std::size_t glyph) {
    const bool is_long = u16_at(table_of(file, "head"), 50) != 0;
    const std::string_view places = table_of(file, "loca");
    return is_long ? u32_at(places, glyph * 4) : u16_at(places, glyph * 2) * std::size_t{2};
}

} // namespace

std::uint16_t u16_at(std::string_view bytes, std::size_t at) {
    return static_cast<std::uint16_t>(byte_at(bytes, at) << 8U | byte_at(bytes, at + 1));
}

std::int16_t i16_at(std::string_view bytes, std::size_t at) {
    return static_cast<std::int16_t>(u16_at(bytes, at));
}

std::uint32_t u32_at(std::string_view bytes, std::size_t at) {
    return static_cast<std::uint32_t>(u16_at(bytes, at)) << 16U | u16_at(bytes, at + 2);
}

std::string_view table_of(std::string_view file, std::string_view name) {
    for (std::size_t row = 0; row < u16_at(file, 4); ++row) {
        const std::size_t at = 12 + row * 16;
        if (part(file, at, 4) == name) return part(file, u32_at(file, at + 8), u32_at(file, at + 12));
    }
    return {};
}

std::string_view outline_of(std::string_view file, std::uint16_t glyph) {
    const std::size_t begin = offset_of(file, glyph), end = offset_of(file, glyph + std::size_t{1});
    return end <= begin ? std::string_view() : part(table_of(file, "glyf"), begin, end - begin);
}

} // namespace undersheet::pdf
