#include "method/meant.h"

#include "base/text.h"

namespace undersheet::method {
namespace {

// "reading" begins reading_pct and no other; "" when none or several begin so.
std::string only_beginning(std::string_view word, const std::vector<std::string>& known) {
    std::string found;
    for (const auto& candidate : known) {
        if (word.empty() || !candidate.starts_with(word)) continue;
        if (!found.empty()) return {};
        found = candidate;
    }
    return found;
}

} // namespace

std::string probably_meant(std::string_view word, const std::vector<std::string>& known) {
    const std::string small = lower_ascii(word);
    std::string meant = only_beginning(small, known);
    return meant.empty() ? nearest_word(small, known) : meant;
}

std::string did_you_mean(std::string_view word, const std::vector<std::string>& known) {
    const std::string all = "there are " + joined(known, ", ");
    const std::string meant = probably_meant(word, known);
    return meant.empty() ? all : "did you mean " + meant + "? " + all;
}

std::string shown(std::string_view typed) {
    constexpr std::size_t kMost = 60;
    if (!is_utf8(typed)) return "(bytes that are no text)";
    std::string out;
    for (const char c : typed) {
        const auto byte = static_cast<unsigned char>(c);
        const bool begins = (byte & 0xC0) != 0x80; // never cut a character in two
        if (out.size() >= kMost && begins) return out + "…";
        out += byte < 0x20 || byte == 0x7F ? '?' : c;
    }
    return out;
}

} // namespace undersheet::method
