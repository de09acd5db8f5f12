#include "method/stored.h"

#include "entry/json.h"
#include "entry/time.h"
#include "method/meant.h"
#include "method/words.h"

#include <algorithm>

namespace undersheet::method {
namespace {

using entry::Value;

bool is_number(const Field& field, const Value& value) {
    const Decimal* number = value.number();
    if (number == nullptr) return false;
    return !field.range || !(*number < field.range->least || field.range->most < *number);
}

bool is_text(const Value& value) { return value.text() != nullptr; }

// One alone may stand without its list.
bool are_texts(const Value& value) {
    if (is_text(value)) return true;
    return value.list() != nullptr && std::all_of(value.list()->begin(), value.list()->end(), is_text);
}

bool is_choice(const Field& field, const Value& value) {
    return is_text(value) &&
           std::find(field.choices.begin(), field.choices.end(), *value.text()) != field.choices.end();
}

bool is_yes_or_no(const Value& value) {
    return is_text(value) && (*value.text() == "yes" || *value.text() == "no");
}

bool is_gap(const Value& value) {
    return is_text(value) && (*value.text() == "not_looked" || *value.text() == "cant_reach");
}

bool is_of_type(const Field& field, const Value& value) {
    switch (field.type) {
    case FieldType::number:
    case FieldType::whole:
        return is_number(field, value);
    case FieldType::choice:
        return is_choice(field, value);
    case FieldType::yes_no:
        return is_yes_or_no(value);
    case FieldType::time:
        return is_text(value) && entry::parse_time(*value.text()).ok();
    case FieldType::date:
        return is_text(value) && entry::parse_date(*value.text()).ok();
    case FieldType::place:
        return is_text(value) && entry::parse_place(*value.text()).ok();
    case FieldType::people:
    case FieldType::places:
    case FieldType::points:
    case FieldType::hashes:
    case FieldType::list:
        return are_texts(value);
    case FieldType::fields:
        return value.map() != nullptr;
    case FieldType::text:
    case FieldType::words:
    case FieldType::label:
    case FieldType::person:
    case FieldType::hash: // compared, never followed
        return is_text(value);
    }
    return false;
}

} // namespace

Done check_stored(const Kind& kind, const Value& data) {
    if (data.map() == nullptr) return Fault{Code::json_shape, "holds no fields", kind.name};
    for (const auto& member : *data.map()) {
        const Field* field = kind.field(member.key);
        if (field == nullptr || field->personal || is_gap(member.value)) continue;
        if (is_of_type(*field, member.value)) continue;
        return Fault{Code::field_out_of_range,
                     shown(entry::write_strict(member.value)) + " is nothing it can hold",
                     kind.name + " " + field->name};
    }
    return {};
}

} // namespace undersheet::method
