#include "method/typed.h"

#include "base/text.h"
#include "method/dates.h"
#include "method/lists.h"
#include "method/meant.h"
#include "method/numbers.h"
#include "method/words.h"

#include <array>

namespace undersheet::method {
namespace {

using entry::Value;

// Yes, no and numbers of JSON read as if they had been typed.
Result<std::string> scalar_text(const Field& field, const Value& typed) {
    if (const auto* text = typed.text()) return std::string(trimmed(*text));
    if (const auto* number = typed.number()) return number->text();
    if (const auto* yes = typed.boolean()) return std::string(*yes ? "yes" : "no");
    return Fault{
        Code::json_shape, "takes one value, not several", {}, "type " + std::string(type_words(field.type))};
}

Result<Kept> kept_number(const Field& field, const std::string& typed) {
    auto number = typed_number(field, typed);
    if (!number) return number.fault();
    return Kept{Value(number->value), {}, std::move(number->questions)};
}

Result<Kept> kept_date(const std::string& typed) {
    auto date = typed_date(typed);
    if (!date) return date.fault();
    return Kept{Value(entry::date_text(*date))};
}

Result<Kept> kept_time(const std::string& typed, const Setting& setting) {
    auto time = typed_time(typed, setting.when);
    if (!time) return time.fault();
    Kept kept{Value(time->text)};
    if (!setting.when.text.empty() && time->unix_s > setting.when.unix_s) {
        kept.questions.push_back(typed + " is later than the entry itself; was it the day before?");
    }
    return kept;
}

Result<Kept> kept_hash(const std::string& typed) {
    auto hash = entry::parse_hash(lower_ascii(typed));
    if (!hash) return hash.fault();
    return Kept{Value(entry::hash_text(*hash))};
}

Result<Kept> kept_place(const std::string& typed) {
    auto place = entry::parse_place(typed);
    if (!place) return place.fault();
    return Kept{Value(entry::place_text(*place))};
}

Result<Kept> kept_label(const std::string& typed) {
    auto place = entry::parse_place(typed);
    if (place && place->form == entry::PlaceForm::label) return Kept{Value(typed)};
    const std::string is = place ? "is " + std::string(place_words(place->form)) : "cannot be a name";
    return Fault{Code::place_wrong_type,
                 "'" + shown(typed) + "' " + is,
                 {},
                 "type up to 24 letters, digits, '-', '_' or '.', like R1"};
}

Result<Kept> kept_person(const std::string& typed, const Setting& setting) {
    auto id = find_person(typed, setting.person);
    if (!id) return id.fault();
    return Kept{Value(*id)};
}

Result<Kept> kept_text(const Field& field, const std::string& typed) {
    if (auto done = check_length(field, typed); !done) return done.fault();
    return Kept{Value(typed)};
}

Result<Kept> kept_word(const Field& field, const std::string& typed) {
    auto word = field.type == FieldType::yes_no ? yes_or_no(typed) : one_of_choices(field, typed);
    if (!word) return word.fault();
    return Kept{Value(*word)};
}

Result<Kept> kept_scalar(const Field& field, const std::string& typed, const Setting& setting) {
    switch (field.type) {
    case FieldType::number:
    case FieldType::whole:
        return kept_number(field, typed);
    case FieldType::choice:
    case FieldType::yes_no:
        return kept_word(field, typed);
    case FieldType::time:
        return kept_time(typed, setting);
    case FieldType::date:
        return kept_date(typed);
    case FieldType::label:
        return kept_label(typed);
    case FieldType::person:
        return kept_person(typed, setting);
    case FieldType::place:
        return kept_place(typed);
    case FieldType::hash:
        return kept_hash(typed);
    default:
        return kept_text(field, typed);
    }
}

Result<Kept> kept_gap(const Field& field, const std::string& typed, std::string_view gap) {
    if (field.may_skip) return Kept{Value(gap)};
    return Fault{
        Code::choice_unknown, "'" + shown(typed) + "' is no answer here", {}, "type " + field.prompt};
}

Result<Kept> read_scalar(const Field& field, const Value& typed, const Setting& setting) {
    const auto text = scalar_text(field, typed);
    if (!text) return text.fault();
    if (auto done = check_text(field, *text); !done) return done.fault();
    const std::string_view gap = field.personal ? std::string_view() : gap_word(*text);
    auto kept = gap.empty() ? kept_scalar(field, *text, setting) : kept_gap(field, *text, gap);
    if (!kept || field.personal || field.type == FieldType::person) return kept;
    const auto* number = kept->value.number();
    if (*text != (number == nullptr ? *kept->value.text() : number->text())) kept->raw = *text;
    return kept;
}

Result<Kept> read_list(const Field& field, const Value& typed, const Setting& setting) {
    auto list = typed_list(field, typed, setting.person);
    if (!list) return list.fault();
    Kept kept{Value(list->items)};
    if (field.type != FieldType::people) kept.raw = list->raw;
    return kept;
}

} // namespace

Result<Kept> read_typed(const Field& field, const Value& typed, const Setting& setting) {
    if (is_list(field.type)) return read_list(field, typed, setting);
    if (field.type != FieldType::fields) return read_scalar(field, typed, setting);
    if (typed.map() != nullptr) return Kept{typed};
    return Fault{Code::json_shape, "takes fields with their values", {}, {}};
}

} // namespace undersheet::method
