// The catalogue of kinds: what is taken holds together, and can be typed against.
#include "method/check.h"
#include "tests/fuzz/targets.h"

namespace undersheet::fuzz {
namespace {

using method::Field;
using method::Kind;

void promise_range(const std::optional<method::Range>& range, const std::string& field) {
    promise(!range || !(range->most < range->least), field + " has a range the wrong way round");
}

void promise_field(const Field& field) {
    const bool number = field.type == method::FieldType::number || field.type == method::FieldType::whole;
    promise(!number || field.range.has_value(), field.name + " is a number without range");
    promise_range(field.range, field.name);
    promise_range(field.usual, field.name);
    if (field.range && field.usual) {
        promise(!(field.usual->least < field.range->least) && !(field.range->most < field.usual->most),
                field.name + " is usual where it cannot be");
    }
    promise(field.unit.empty() || field.name.ends_with("_" + field.unit) || field.name == field.unit,
            field.name + " does not end in its unit");
}

// A word, a number and a list for every field: taken or refused, never more.
void type_into(const method::Catalogue& catalogue, const Kind& kind) {
    const auto nobody = [](std::string_view) -> Result<std::string> { return std::string("p0123456789"); };
    for (const entry::Value& value :
         {entry::Value("12,5"), entry::Value("A"), entry::Value(3), entry::Value("2026-06-11"),
          entry::Value(entry::List{entry::Value("AB")}), entry::Value()}) {
        method::Input input{{}, "AB", *entry::parse_time("2026-06-11T12:00:00+01:00"), nobody, {}};
        for (const Field& field : kind.fields) input.typed.emplace_back(field.name, value);
        const auto checked = method::check(catalogue, kind, input);
        if (!checked) promise_readable(checked.fault());
    }
}

} // namespace

void read_a_catalogue(std::string_view bytes) {
    const auto read = method::Catalogue::read(bytes);
    if (!read) return promise_readable(read.fault());
    promise(read->hash() == entry::sha256(bytes), "the hash is of other bytes");
    for (const Kind& kind : read->kinds()) {
        promise(read->find(kind.name) == &kind, kind.name + " stands twice");
        for (const Field& field : kind.fields) {
            promise(kind.field(field.name) == &field, field.name + " stands twice");
            promise_field(field);
        }
        type_into(*read, kind);
    }
}

} // namespace undersheet::fuzz
