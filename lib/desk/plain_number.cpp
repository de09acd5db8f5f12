#include "desk/plain_number.h"

#include <algorithm>
#include <optional>

namespace undersheet::desk {
namespace {

constexpr std::size_t kMostDigits = 15; // as base/decimal.h keeps them
constexpr int kMostPlaces = 18;
constexpr int kFarExponent = 10'000; // beyond any double: further digits of an exponent change nothing

bool is_digit(char c) { return c >= '0' && c <= '9'; }

// A number taken apart: 0.DIGITS times ten to the power of `point`. No digits is zero.
struct Parts {
    bool negative = false;
    std::string digits = {};
    int point = 0;
};

// Takes digits off the front of `rest`.
std::string_view digits_off(std::string_view& rest) {
    const auto end = std::find_if_not(rest.begin(), rest.end(), is_digit);
    const auto taken = rest.substr(0, static_cast<std::size_t>(end - rest.begin()));
    rest.remove_prefix(taken.size());
    return taken;
}

bool takes(std::string_view& rest, char c) {
    if (rest.empty() || rest.front() != c) return false;
    rest.remove_prefix(1);
    return true;
}

std::optional<int> exponent_off(std::string_view& rest) {
    const bool negative = takes(rest, '-');
    if (!negative) takes(rest, '+');
    const auto digits = digits_off(rest);
    if (digits.empty()) return std::nullopt;
    int exponent = 0;
    for (const char c : digits) exponent = std::min(kFarExponent, exponent * 10 + (c - '0'));
    return negative ? -exponent : exponent;
}

void strip_zeros(Parts& parts) {
    const auto first = std::min(parts.digits.find_first_not_of('0'), parts.digits.size());
    parts.digits.erase(0, first);
    parts.point -= static_cast<int>(first);
    while (!parts.digits.empty() && parts.digits.back() == '0') parts.digits.pop_back();
}

// RFC 8259, section 6; nothing when the word is no number.
std::optional<Parts> parts_of(std::string_view word) {
    Parts parts;
    parts.negative = takes(word, '-');
    const auto whole = digits_off(word);
    if (whole.empty() || (whole.size() > 1 && whole.front() == '0')) return std::nullopt;
    parts.digits = whole;
    parts.point = static_cast<int>(whole.size());
    if (takes(word, '.')) {
        const auto behind = digits_off(word);
        if (behind.empty()) return std::nullopt;
        parts.digits += behind;
    }
    if (takes(word, 'e') || takes(word, 'E')) {
        const auto exponent = exponent_off(word);
        if (!exponent) return std::nullopt;
        parts.point += *exponent;
    }
    if (!word.empty()) return std::nullopt;
    strip_zeros(parts);
    return parts;
}

// Halves go up; 9.996 may become 10.
void round_to(Parts& parts, std::size_t digits) {
    if (parts.digits.size() <= digits) return;
    const bool up = parts.digits[digits] >= '5';
    parts.digits.resize(digits);
    if (!up) return strip_zeros(parts);
    auto at = parts.digits.rbegin();
    for (; at != parts.digits.rend() && *at == '9'; ++at) *at = '0';
    if (at != parts.digits.rend()) {
        ++*at;
    } else {
        parts.digits.insert(0, 1, '1');
        ++parts.point;
    }
    strip_zeros(parts);
}

std::string written(const Parts& parts) {
    std::string text = parts.digits;
    const auto size = static_cast<int>(text.size());
    if (parts.point <= 0) {
        text.insert(0, "0." + std::string(static_cast<std::size_t>(-parts.point), '0'));
    } else if (parts.point >= size) {
        text.append(static_cast<std::size_t>(parts.point - size), '0');
    } else {
        text.insert(static_cast<std::size_t>(parts.point), ".");
    }
    return parts.negative ? "-" + text : text;
}

std::string shown(std::string_view word) {
    constexpr std::size_t kLongest = 24;
    return word.size() <= kLongest ? std::string(word) : std::string(word.substr(0, kLongest)) + "...";
}

// Digits from the first to the last place that is kept; none where the number would vanish.
std::size_t digits_kept(const Parts& parts) {
    const int room = kMostPlaces + parts.point;
    return room < 1 ? 0 : std::min(kMostDigits, static_cast<std::size_t>(room));
}

} // namespace

Result<std::string> plain_number(std::string_view word) {
    auto parts = parts_of(word);
    if (!parts) return Fault{Code::number_malformed, shown(word) + " is no number", {}, {}};
    if (parts->digits.empty()) return std::string("0");
    const auto digits = digits_kept(*parts);
    if (digits > 0) round_to(*parts, digits);
    if (digits > 0 && parts->point <= static_cast<int>(kMostDigits)) return written(*parts);
    return Fault{Code::number_too_long,
                 shown(word) + " is too great or too small to be kept",
                 {},
                 "numbers reach from 10^-18 to 10^15"};
}

} // namespace undersheet::desk
