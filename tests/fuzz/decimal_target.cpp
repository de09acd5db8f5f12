// Numbers: exact, in one spelling, and as people type them into every field of the catalogue that takes one.
#include "base/decimal.h"
#include "desk/plain_number.h"
#include "method/numbers.h"
#include "tests/fuzz/small_job.h"
#include "tests/fuzz/targets.h"

#include <cmath>

namespace undersheet::fuzz {
namespace {

void promise_exact(const Decimal& number) {
    const std::string text = number.text();
    const auto again = Decimal::parse(text);
    promise(again.ok() && *again == number, "'" + text + "' reads as another number");
    promise(again->text() == text, "'" + text + "' is printed in a second form");
    promise(text != "-0" && text.find_first_of("eE+") == std::string::npos,
            "'" + text + "' is no plain form");
    promise(std::abs(number.digits()) <= 999'999'999'999'999, "more than fifteen digits");
    promise(std::isfinite(number.value()), "'" + text + "' has no value");
    const auto square = number.times(number);
    promise(!square || !(*square < Decimal()), "a square is below nothing");
    for (const int places : {0, 3, 9}) {
        const auto rounded = Decimal::rounded(number.value(), places);
        promise(!rounded || rounded->places() <= places, "rounding leaves digits");
        promise(!fixed(number.value(), places).empty(), "a number without digits");
    }
}

// Of a unit of its own, a comma, blanks: each field reads it or refuses it.
void type_into_fields(std::string_view typed) {
    for (const auto& kind : own_kinds().kinds()) {
        for (const auto& field : kind.fields) {
            if (field.type != method::FieldType::number && field.type != method::FieldType::whole) continue;
            const auto number = method::typed_number(field, typed);
            if (!number) continue;
            promise(!(number->value < field.range->least) && !(field.range->most < number->value),
                    kind.name + " " + field.name + " took what is outside its range");
        }
    }
}

} // namespace

void read_a_decimal(std::string_view bytes) {
    if (const auto read = Decimal::parse(bytes)) {
        promise_exact(*read);
    } else {
        promise_readable(read.fault());
    }
    if (const auto plain = desk::plain_number(bytes)) {
        const auto read = Decimal::parse(*plain);
        promise(read.ok(), "'" + *plain + "' was called plain and cannot be read");
        promise_exact(*read);
    }
    constexpr std::size_t kLongestTyped = 40;
    if (bytes.size() <= kLongestTyped) type_into_fields(bytes);
}

} // namespace undersheet::fuzz
