#include "paper/clean.h"

#include "base/text.h"

#include <algorithm>
#include <array>

namespace undersheet::paper {

namespace {

struct Range {
    char32_t first, last;
};

template <std::size_t N>
bool is_in(const std::array<Range, N>& ranges, char32_t c) {
    return std::any_of(ranges.begin(), ranges.end(), [c](Range r) { return c >= r.first && c <= r.last; });
}

constexpr std::array<Range, 4> kUnprintable{{{0x00, 0x09}, {0x0B, 0x1F}, {0x7F, 0x7F}, {0xFFFE, 0xFFFF}}};
// Where a word may break, and the marks of one direction; words.h sets U+2068 and U+2069 in pairs round a right-to-left name.
constexpr std::array<Range, 4> kHarmless{
    {{0xAD, 0xAD}, {0x061C, 0x061C}, {0x200E, 0x200F}, {0x2068, 0x2069}}};
constexpr std::array<Range, 7> kNoWidth{{{0x0300, 0x036F},
                                         {0x0591, 0x05BD},
                                         {0x064B, 0x065F},
                                         {0x200B, 0x200F},
                                         {0x20D0, 0x20FF},
                                         {0x2068, 0x2069},
                                         {0xFE00, 0xFE0F}}};
constexpr std::array<Range, 9> kTwoWide{{{0x1100, 0x115F},
                                         {0x2E80, 0x303E},
                                         {0x3041, 0xA4CF},
                                         {0xAC00, 0xD7A3},
                                         {0xF900, 0xFAFF},
                                         {0xFE30, 0xFE6F},
                                         {0xFF00, 0xFF60},
                                         {0x1F300, 0x1FAFF},
                                         {0x20000, 0x3FFFD}}};
constexpr std::array<Range, 3> kRightToLeft{{{0x0590, 0x08FF}, {0xFB1D, 0xFDFF}, {0xFE70, 0xFEFC}}};

constexpr char32_t kReplacement = 0xFFFD;
constexpr std::string_view kReplacementBytes = "\xEF\xBF\xBD";

bool prints(char32_t c) {
    return c != kReplacement && !is_in(kUnprintable, c) && (!is_unseen(c) || is_in(kHarmless, c));
}

} // namespace

std::string clean(std::string_view text) {
    std::string out;
    while (!text.empty()) {
        const Character c = take_character(text);
        out += prints(c.code) ? c.bytes : kReplacementBytes;
    }
    return out;
}

std::size_t columns(std::string_view text) {
    std::size_t width = 0;
    while (!text.empty()) {
        const char32_t code = take_character(text).code;
        if (!is_in(kNoWidth, code)) width += is_in(kTwoWide, code) ? 2 : 1;
    }
    return width;
}

bool has_right_to_left(std::string_view text) {
    while (!text.empty())
        if (is_in(kRightToLeft, take_character(text).code)) return true;
    return false;
}

} // namespace undersheet::paper
