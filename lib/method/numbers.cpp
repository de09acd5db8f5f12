#include "method/numbers.h"

#include "base/text.h"
#include "method/meant.h"
#include "method/units.h"

#include <algorithm>

namespace undersheet::method {
namespace {

struct NumberPieces {
    std::string number;
    std::string unit;
};

Fault number_malformed(std::string_view typed, std::string_view why) {
    return {
        Code::number_malformed, "'" + shown(typed) + "' " + std::string(why), {}, "type it like 12 or 12.5"};
}

NumberPieces number_pieces(std::string_view typed) {
    // A telephone's keyboard may put the long minus of typesetters (U+2212).
    std::string text = replaced(std::string(trimmed(typed)), "−", "-");
    if (text.starts_with("+")) text.erase(0, 1);
    const auto end = std::min(text.find_first_not_of("0123456789.,-"), text.size());
    return {text.substr(0, end), std::string(trimmed(std::string_view(text).substr(end)))};
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }

Result<std::string> with_point(const std::string& number, std::string_view typed) {
    const auto commas = std::count(number.begin(), number.end(), ',');
    if (commas == 0) return number;
    if (commas > 1) return number_malformed(typed, "has two commas");
    if (number.find('.') != std::string::npos) return number_malformed(typed, "has a comma and a point");
    return replaced(number, ",", ".");
}

// "1,200" may be one and a fifth, or twelve hundred with the comma of English print.
bool may_be_thousands(const std::string& number) {
    constexpr std::size_t kGroup = 3;
    const auto comma = number.find(',');
    const auto first = number.find_first_not_of('-');
    return comma != std::string::npos && number.size() - comma - 1 == kGroup && number[first] != '0';
}

std::string with_sign(const Decimal& value, const Field& field) {
    const std::string sign(unit_sign(field.unit));
    return sign.empty() ? value.text() : value.text() + " " + sign;
}

bool is_outside(const Decimal& value, const std::optional<Range>& range) {
    return range && (value < range->least || range->most < value);
}

Result<Decimal> read_decimal(const Field& field, const NumberPieces& pieces, std::string_view typed) {
    if (pieces.number.empty()) return number_malformed(typed, "is not a number");
    if (!pieces.unit.empty() && is_digit(pieces.unit[0])) return number_malformed(typed, "is two numbers");
    auto plain = with_point(pieces.number, typed);
    if (!plain) return plain.fault();
    auto value = Decimal::parse(*plain);
    if (!value)
        return value.fault().code == Code::number_malformed ? number_malformed(typed, "is not a number")
                                                            : value.fault();
    return converted(*value, pieces.unit, field.unit);
}

} // namespace

Result<Number> typed_number(const Field& field, std::string_view typed) {
    const NumberPieces pieces = number_pieces(typed);
    auto value = read_decimal(field, pieces, typed);
    if (!value) return value.fault();
    if (field.type == FieldType::whole && !value->is_integer())
        return number_malformed(typed, "is not a whole number");
    const std::string what = with_sign(*value, field);
    if (is_outside(*value, field.range)) {
        const std::string as_typed = pieces.unit.empty() ? "" : " (typed " + shown(trimmed(typed)) + ")";
        return Fault{
            Code::field_out_of_range, what + as_typed + " is outside " + field.range->words(), {}, {}};
    }
    Number number{*value};
    if (is_outside(*value, field.usual)) {
        number.questions.push_back(what + " is outside the usual " + field.usual->words() + ", is it right?");
    }
    if (may_be_thousands(pieces.number)) {
        const std::string bare = replaced(pieces.number, ",", "");
        number.questions.push_back(pieces.number + " was read as " + what + ", is it " + bare + "?");
    }
    return number;
}

} // namespace undersheet::method
