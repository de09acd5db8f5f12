#include "base/decimal.h"

#include <array>
#include <cmath>
#include <cstdlib>

namespace undersheet {
namespace {

constexpr int kMostPlaces = 18;
constexpr std::int64_t kMostValue = 999'999'999'999'999;

std::int64_t power_of_ten(int exponent) {
    std::int64_t power = 1;
    for (int i = 0; i < exponent; ++i) power *= 10;
    return power;
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }

Fault malformed(std::string_view text) {
    return {Code::number_malformed,
            "'" + std::string(text) + "' is not a number",
            {},
            "write plain digits with at most one decimal point, like 12 or 12.5"};
}

Fault too_long(std::string_view text) {
    return {Code::number_too_long, "'" + std::string(text) + "' has more than 15 digits", {}, "round it"};
}

// What a text of plain digits holds before it is brought to its smallest form.
struct Digits {
    std::int64_t value = 0;
    int places = 0;
    int significant = 0;
    bool any = false;
};

Result<Digits> read_digits(std::string_view text, std::string_view whole) {
    Digits read;
    bool after_point = false;
    for (const char c : text) {
        if (c == '.' && !after_point && read.any) {
            after_point = true;
            continue;
        }
        if (!is_digit(c)) return malformed(whole);
        read.any = true;
        if (read.value != 0 || c != '0') ++read.significant;
        if (read.significant > kMostPlaces) return too_long(whole);
        read.value = read.value * 10 + (c - '0');
        if (after_point) ++read.places;
        if (read.places > kMostPlaces) return too_long(whole);
    }
    if (!read.any || text.back() == '.') return malformed(whole);
    return read;
}

} // namespace

Decimal::Decimal(std::int64_t digits, int places) : digits_(digits), places_(places) {
    while (places_ > 0 && digits_ % 10 == 0) {
        digits_ /= 10;
        --places_;
    }
}

Decimal Decimal::of(std::int64_t whole) { return {whole, 0}; }

Result<Decimal> Decimal::parse(std::string_view text) {
    const bool negative = !text.empty() && text.front() == '-';
    const std::string_view plain = negative ? text.substr(1) : text;
    if (plain.empty()) return malformed(text);
    auto read = read_digits(plain, text);
    if (!read) return read.fault();
    const Decimal made(negative ? -read->value : read->value, read->places);
    if (std::llabs(made.digits_) > kMostValue) return too_long(text);
    return made;
}

Result<Decimal> Decimal::scaled(std::int64_t digits, int places) {
    const std::string shown = std::to_string(digits) + " / 10^" + std::to_string(places);
    if (places < 0 || places > kMostPlaces) return too_long(shown);
    const Decimal made(digits, places);
    if (made.digits_ > kMostValue || made.digits_ < -kMostValue) return too_long(shown);
    return made;
}

Result<Decimal> Decimal::rounded(double value, int places) {
    if (!std::isfinite(value))
        return Fault{Code::value_impossible, "a computed value is not a number", {}, {}};
    const double scaled = std::round(value * static_cast<double>(power_of_ten(places)));
    if (std::fabs(scaled) > static_cast<double>(kMostValue)) return too_long(fixed(value, places));
    return Decimal(static_cast<std::int64_t>(scaled), places);
}

double Decimal::value() const {
    return static_cast<double>(digits_) / static_cast<double>(power_of_ten(places_));
}

std::int64_t Decimal::whole() const { return digits_ / power_of_ten(places_); }

std::string Decimal::text() const {
    std::string digits = std::to_string(std::llabs(digits_));
    const auto places = static_cast<std::size_t>(places_);
    if (digits.size() <= places) digits.insert(0, places + 1 - digits.size(), '0');
    if (places > 0) digits.insert(digits.size() - places, ".");
    return digits_ < 0 ? "-" + digits : digits;
}

Result<Decimal> Decimal::times(const Decimal& other) const {
    const double about = static_cast<double>(digits_) * static_cast<double>(other.digits_);
    if (std::fabs(about) > 9e18 || places_ + other.places_ > kMostPlaces)
        return too_long(text() + " x " + other.text());
    const Decimal made(digits_ * other.digits_, places_ + other.places_);
    if (std::llabs(made.digits_) > kMostValue) return too_long(made.text());
    return made;
}

bool operator<(const Decimal& a, const Decimal& b) {
    if (a.places_ == b.places_) return a.digits_ < b.digits_;
    // Whole parts first, then the rest scaled to the longer of the two: both fit, since each has at most 18 places.
    if (a.whole() != b.whole()) return a.whole() < b.whole();
    const auto rest = [](const Decimal& d) {
        return (d.digits_ % power_of_ten(d.places_)) * power_of_ten(kMostPlaces - d.places_);
    };
    return rest(a) < rest(b);
}

std::string fixed(double value, int places) {
    if (!std::isfinite(value)) return "?";
    const double scale = static_cast<double>(power_of_ten(places));
    const double scaled = std::round(std::fabs(value) * scale);
    if (scaled > 9e17) return "?";
    const auto all = static_cast<std::int64_t>(scaled);
    std::string digits = std::to_string(all);
    const auto wide = static_cast<std::size_t>(places);
    if (digits.size() <= wide) digits.insert(0, wide + 1 - digits.size(), '0');
    if (wide > 0) digits.insert(digits.size() - wide, ".");
    return value < 0 && all != 0 ? "-" + digits : digits;
}

std::string shortest(double value, int places) {
    std::string text = fixed(value, places);
    if (text.find('.') == std::string::npos) return text;
    while (text.back() == '0') text.pop_back();
    if (text.back() == '.') text.pop_back();
    return text;
}

} // namespace undersheet
