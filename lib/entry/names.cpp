#include "entry/names.h"

#include "base/text.h"

#include <algorithm>
#include <array>

namespace undersheet::entry {
namespace {

template <std::size_t N>
std::array<std::uint8_t, N> random_bytes(World& world) {
    std::array<std::uint8_t, N> bytes{};
    world.random(bytes);
    return bytes;
}

std::uint64_t milliseconds(World& world) {
    return static_cast<std::uint64_t>(world.clock().unix_s) * 1000 +
           static_cast<std::uint64_t>(world.mono_millis() % 1000);
}

} // namespace

std::string new_entry_id(World& world) {
    auto bytes = random_bytes<16>(world);
    const std::uint64_t stamp = milliseconds(world);
    for (std::size_t i = 0; i < 6; ++i) bytes[i] = static_cast<std::uint8_t>(stamp >> (40 - 8 * i));
    bytes[6] = static_cast<std::uint8_t>((bytes[6] & 0x0FU) | 0x70U); // version 7
    bytes[8] = static_cast<std::uint8_t>((bytes[8] & 0x3FU) | 0x80U); // variant
    std::string text = hex(bytes);
    for (const std::size_t dash : {8U, 13U, 18U, 23U}) text.insert(dash, 1, '-');
    return text;
}

std::string new_job(World& world) { return hex(random_bytes<16>(world)); }

std::string new_person(World& world) { return "p" + hex(random_bytes<5>(world)); }

bool is_hex(std::string_view text, std::size_t digits) {
    return text.size() == digits && std::all_of(text.begin(), text.end(), [](char c) {
               return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f');
           });
}

bool is_entry_id(std::string_view text) {
    constexpr std::string_view kVariants = "89ab";
    if (text.size() != 36 || text[14] != '7' || kVariants.find(text[19]) == std::string_view::npos)
        return false;
    if (text[8] != '-' || text[13] != '-' || text[18] != '-' || text[23] != '-') return false;
    std::string digits(text);
    std::erase(digits, '-');
    return is_hex(digits, 32);
}

bool is_job(std::string_view text) { return is_hex(text, 32); }

bool is_person(std::string_view text) { return text.starts_with("p") && is_hex(text.substr(1), 10); }

} // namespace undersheet::entry
