// A TrueType file taken apart: its tables by name, and numbers out of them.
//
// Promises: reading past an end gives 0 or nothing, so a short file is never read outside itself.
// Threads: plain values; the bytes belong to somebody else.
#pragma once

#include <cstdint>
#include <string_view>

namespace undersheet::pdf {

[[nodiscard]] std::uint16_t u16_at(std::string_view bytes, std::size_t at);
[[nodiscard]] std::int16_t i16_at(std::string_view bytes, std::size_t at);
[[nodiscard]] std::uint32_t u32_at(std::string_view bytes, std::size_t at);

// The table of that name ("glyf"); empty when the file has none.
[[nodiscard]] std::string_view table_of(std::string_view file, std::string_view name);

// The outline of a glyph out of "glyf"; empty for one without ink.
[[nodiscard]] std::string_view outline_of(std::string_view file, std::uint16_t glyph);

} // namespace undersheet::pdf
