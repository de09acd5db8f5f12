#include "base/text.h"

#include <algorithm>
#include <array>

namespace undersheet {
namespace {

// Length of the sequence that a lead byte opens, 0 for none.
int sequence_length(unsigned char lead) {
    if (lead < 0x80) return 1;
    if (lead >= 0xC2 && lead <= 0xDF) return 2;
    if (lead >= 0xE0 && lead <= 0xEF) return 3;
    if (lead >= 0xF0 && lead <= 0xF4) return 4;
    return 0;
}

// The second byte carries the limits that rule out overlong forms, surrogates and values past U+10FFFF.
bool second_byte_fits(unsigned char lead, unsigned char second) {
    if (lead == 0xE0) return second >= 0xA0;
    if (lead == 0xED) return second <= 0x9F;
    if (lead == 0xF0) return second >= 0x90;
    if (lead == 0xF4) return second <= 0x8F;
    return true;
}

bool is_continuation(unsigned char byte) { return (byte & 0xC0) == 0x80; }

struct Range {
    char32_t first, last;
};

// Unicode 15.0, DerivedCoreProperties.txt: Default_Ignorable_Code_Point without the joiners below; and the second block
// of control characters, the line and paragraph separators and the marks of annotations, which show nothing either.
constexpr std::array<Range, 17> kUnseen{{{0x80, 0x9F},
                                         {0xAD, 0xAD},
                                         {0x034F, 0x034F},
                                         {0x061C, 0x061C},
                                         {0x115F, 0x1160},
                                         {0x17B4, 0x17B5},
                                         {0x180E, 0x180E},
                                         {0x200B, 0x200B},
                                         {0x200E, 0x200F},
                                         {0x2028, 0x202E},
                                         {0x2060, 0x206F},
                                         {0x3164, 0x3164},
                                         {0xFEFF, 0xFEFF},
                                         {0xFFA0, 0xFFA0},
                                         {0xFFF0, 0xFFFB},
                                         {0x1BCA0, 0x1BCA3},
                                         {0x1D173, 0x1D17A}}};
constexpr Range kTags{0xE0000, 0xE0FFF}; // tags and variant selectors
// Persian, the scripts of India and Mongolian are written with these, Japanese names and emoji with the selectors.
constexpr std::array<Range, 5> kJoiners{
    {{0x180B, 0x180D}, {0x180F, 0x180F}, {0x200C, 0x200D}, {0xFE00, 0xFE0F}, {0xE0100, 0xE01EF}}};

template <std::size_t N>
bool is_in(const std::array<Range, N>& ranges, char32_t c) {
    return std::any_of(ranges.begin(), ranges.end(), [c](Range r) { return c >= r.first && c <= r.last; });
}

int hex_digit(char c) {
    if (c >= '0' && c <= '9') return c - '0';
    if (c >= 'a' && c <= 'f') return c - 'a' + 10;
    return -1;
}

} // namespace

bool is_utf8(std::string_view bytes) {
    for (std::size_t i = 0; i < bytes.size();) {
        const auto lead = static_cast<unsigned char>(bytes[i]);
        const auto length = static_cast<std::size_t>(sequence_length(lead));
        if (length == 0 || i + length > bytes.size()) return false;
        for (std::size_t k = 1; k < length; ++k) {
            if (!is_continuation(static_cast<unsigned char>(bytes[i + k]))) return false;
        }
        if (length > 1 && !second_byte_fits(lead, static_cast<unsigned char>(bytes[i + 1]))) return false;
        i += length;
    }
    return true;
}

bool has_control_characters(std::string_view text) {
    return std::any_of(text.begin(), text.end(), [](char c) {
        const auto byte = static_cast<unsigned char>(c);
        return (byte < 0x20 && c != '\n') || byte == 0x7F;
    });
}

bool is_joiner(char32_t code) { return is_in(kJoiners, code); }

bool is_unseen(char32_t code) {
    return is_in(kUnseen, code) || (code >= kTags.first && code <= kTags.last && !is_joiner(code));
}

std::optional<UnseenCharacter> find_unseen(std::string_view text, Joiners joiners) {
    for (std::size_t at = 1; !text.empty(); ++at) {
        const char32_t code = take_character(text).code;
        if (is_unseen(code) || (joiners == Joiners::unseen && is_joiner(code)))
            return UnseenCharacter{code, at};
    }
    return std::nullopt;
}

std::string without_unseen(std::string_view text) {
    std::string seen;
    while (!text.empty()) {
        const Character c = take_character(text);
        if (!is_unseen(c.code)) seen += c.bytes;
    }
    return seen;
}

std::string code_name(char32_t code) {
    constexpr std::string_view kDigits = "0123456789ABCDEF";
    std::string digits;
    for (; code != 0 || digits.size() < 4; code >>= 4U) digits.insert(digits.begin(), kDigits[code & 0xFU]);
    return "U+" + digits;
}

std::size_t character_count(std::string_view utf8) {
    return static_cast<std::size_t>(std::count_if(
        utf8.begin(), utf8.end(), [](char c) { return !is_continuation(static_cast<unsigned char>(c)); }));
}

Character take_character(std::string_view& text) {
    const auto lead = static_cast<unsigned char>(text.front());
    const auto length = static_cast<std::size_t>(sequence_length(lead));
    const bool is_whole = length != 0 && length <= text.size() && is_utf8(text.substr(0, length));
    const std::string_view bytes = text.substr(0, is_whole ? length : 1);
    text.remove_prefix(bytes.size());
    if (!is_whole) return {0xFFFD, bytes};
    char32_t code = length == 1 ? lead : lead & (0x7FU >> length);
    for (const char c : bytes.substr(1)) code = (code << 6U) | (static_cast<unsigned char>(c) & 0x3FU);
    return {code, bytes};
}

std::string_view trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(" \t\r\n");
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(" \t\r\n") - first + 1);
}

std::string lower_ascii(std::string_view text) {
    std::string out(text);
    for (char& c : out) {
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    }
    return out;
}

std::vector<std::string> split(std::string_view text, char at) {
    std::vector<std::string> pieces;
    for (;;) {
        const auto end = text.find(at);
        pieces.emplace_back(text.substr(0, end));
        if (end == std::string_view::npos) return pieces;
        text.remove_prefix(end + 1);
    }
}

std::string counted(std::size_t count, std::string_view one, std::string_view many) {
    return std::to_string(count) + " " + std::string(count == 1 ? one : many);
}

std::string joined(const std::vector<std::string>& pieces, std::string_view between) {
    std::string out;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        if (i > 0) out += between;
        out += pieces[i];
    }
    return out;
}

std::string replaced(std::string text, std::string_view what, std::string_view by) {
    if (what.empty()) return text; // nothing stands everywhere, and would be found for ever
    for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + by.size())) {
        text.replace(at, what.size(), by);
    }
    return text;
}

std::string hex(std::span<const std::uint8_t> bytes) {
    constexpr std::string_view digits = "0123456789abcdef";
    std::string out;
    out.reserve(bytes.size() * 2);
    for (const std::uint8_t byte : bytes) {
        out += digits[byte >> 4];
        out += digits[byte & 15];
    }
    return out;
}

std::optional<std::vector<std::uint8_t>> unhex(std::string_view digits) {
    if (digits.size() % 2 != 0) return std::nullopt;
    std::vector<std::uint8_t> out;
    out.reserve(digits.size() / 2);
    for (std::size_t i = 0; i < digits.size(); i += 2) {
        const int high = hex_digit(digits[i]);
        const int low = hex_digit(digits[i + 1]);
        if (high < 0 || low < 0) return std::nullopt;
        out.push_back(static_cast<std::uint8_t>(high * 16 + low));
    }
    return out;
}

std::size_t slips_between(std::string_view a, std::string_view b) {
    std::vector<std::size_t> row(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j) row[j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        std::size_t diagonal = row[0];
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t above = row[j];
            row[j] = std::min({row[j] + 1, row[j - 1] + 1, diagonal + (a[i - 1] == b[j - 1] ? 0U : 1U)});
            diagonal = above;
        }
    }
    return row[b.size()];
}

std::string nearest_word(std::string_view word, const std::vector<std::string>& known) {
    constexpr std::size_t kMostSlips = 2;
    std::string best;
    std::size_t fewest = kMostSlips + 1;
    for (const auto& candidate : known) {
        const std::size_t slips = slips_between(word, candidate);
        if (slips < fewest && slips < candidate.size()) {
            fewest = slips;
            best = candidate;
        }
    }
    return best;
}

} // namespace undersheet
