// A number exactly as it was typed: 12.1 stays 12.1, on every machine and for ever.
//
// Promises: at most 15 significant digits, no exponent, no trailing zero, no minus zero; parsing and printing are exact.
//   value() is the nearest double (exact division of two exact doubles, so correctly rounded).
// Does not: do arithmetic beyond exact products and comparison; judging works with doubles, keeping with decimals.
// Written by hand because the number parsers of the standard library are missing where we also build (WebAssembly).
#pragma once

#include "base/result.h"

#include <cstdint>
#include <string>
#include <string_view>

namespace undersheet {

class Decimal {
public:
    Decimal() = default;
    static Decimal of(std::int64_t whole);
    // Plain digits with an optional minus and one point: "-0.5", "12". No comma, no exponent, no blanks.
    static Result<Decimal> parse(std::string_view text);
    // digits / 10^places, exactly: scaled(25, 1) is 2.5. Places 0 to 18.
    static Result<Decimal> scaled(std::int64_t digits, int places);
    // The decimal nearest to `value` with that many places (0 to 9), halves away from zero.
    static Result<Decimal> rounded(double value, int places);

    [[nodiscard]] double value() const;
    [[nodiscard]] std::string text() const;
    // The value is digits() / 10^places(), in its smallest form: for exact work with whole numbers.
    [[nodiscard]] std::int64_t digits() const { return digits_; }
    [[nodiscard]] int places() const { return places_; }
    [[nodiscard]] bool is_integer() const { return places_ == 0; }
    [[nodiscard]] std::int64_t whole() const; // towards zero
    // Exact product; refused when it needs more than 15 digits, or its digits before shortening more than 18.
    [[nodiscard]] Result<Decimal> times(const Decimal& other) const;

    friend bool operator==(const Decimal& a, const Decimal& b) {
        return a.digits_ == b.digits_ && a.places_ == b.places_;
    }
    friend bool operator<(const Decimal& a, const Decimal& b);

private:
    Decimal(std::int64_t digits, int places);
    std::int64_t digits_ = 0; // value = digits_ / 10^places_, places_ as small as possible
    int places_ = 0;
};

// `value` printed with that many places, halves away from zero, a point whatever the locale. "-0.0" never appears.
[[nodiscard]] std::string fixed(double value, int places);
// As fixed(), with trailing zeros (and a bare point) dropped.
[[nodiscard]] std::string shortest(double value, int places);

} // namespace undersheet
