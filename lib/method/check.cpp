#include "method/check.h"

#include "base/text.h"
#include "method/field_rules.h"
#include "method/meant.h"

#include <algorithm>

namespace undersheet::method {
namespace {

using entry::Value;

Fault at(Fault fault, const Kind& kind, std::string_view field) {
    fault.where = kind.name + " " + std::string(field);
    return fault;
}

std::vector<std::string> names_of(const Kind& kind) {
    std::vector<std::string> names;
    for (const Field& field : kind.fields) names.push_back(field.name);
    return names;
}

// The kind that has such a field, for who typed it one command too far; "" when none or the catalogue has it nowhere.
std::string kind_with(const Catalogue& catalogue, std::string_view field) {
    for (const Kind& kind : catalogue.kinds()) {
        if (kind.field(field) != nullptr && kind.group == Group::reading) return kind.name;
    }
    return {};
}

Fault unknown_field(const Catalogue& catalogue, const Kind& kind, std::string_view name) {
    const std::string other = kind_with(catalogue, name);
    const std::string hint = other.empty() ? "" : ", but " + other + " has";
    const std::vector<std::string> names = names_of(kind);
    return {Code::field_unknown, "has no field '" + shown(name) + "'" + hint, kind.name,
            names.empty() ? "it takes no fields" : did_you_mean(name, names)};
}

bool is_there(const Checked& checked, const std::string& name) {
    return checked.data.find(name) != nullptr || checked.personal.count(name) > 0;
}

void keep(Checked& checked, const Kind& kind, const Field& field, Kept kept) {
    for (const std::string& question : kept.questions) {
        checked.questions.push_back(kind.name + " " + field.name + ": " + question);
    }
    if (field.personal) {
        checked.personal[field.name] = *kept.value.text();
        return;
    }
    checked.data.set(field.name, std::move(kept.value));
    if (!kept.raw.empty()) checked.raw.set(field.name, Value(kept.raw));
}

Done read_fields(Checked& checked, const Catalogue& catalogue, const Kind& kind, const Input& input) {
    const Setting setting{input.when, input.person};
    for (const auto& [name, typed] : input.typed) {
        const Field* field = kind.field(name);
        if (field == nullptr) return unknown_field(catalogue, kind, name);
        if (is_there(checked, name))
            return at({Code::json_shape, "is there twice", {}, "type it once"}, kind, name);
        auto kept = read_typed(*field, typed, setting);
        if (!kept) return at(kept.fault(), kind, name);
        keep(checked, kind, *field, std::move(*kept));
    }
    return {};
}

// What a field falls back on: nothing, that day, another field, or a value.
std::optional<Value> fallback_of(const Field& field, const Checked& checked, const Input& input) {
    if (!field.fallback.starts_with("$"))
        return field.fallback.empty() ? std::nullopt : std::optional<Value>(field.fallback);
    if (field.fallback == "$when") {
        if (input.when.text.empty()) return std::nullopt;
        return Value(entry::date_text(entry::date_of(input.when)));
    }
    const Value* other = checked.data.find(field.fallback.substr(1));
    return other == nullptr ? std::nullopt : std::optional<Value>(*other);
}

Done fill(Checked& checked, const Kind& kind, const Input& input) {
    for (const Field& field : kind.fields) {
        if (is_there(checked, field.name) || input.before.find(field.name) != nullptr) continue;
        if (const auto value = fallback_of(field, checked, input)) {
            auto kept = read_typed(field, *value, {input.when, input.person});
            if (!kept) return at(kept.fault(), kind, field.name);
            kept->raw.clear(); // nobody typed it
            keep(checked, kind, field, std::move(*kept));
        } else if (field.required) {
            return at(
                {Code::field_missing, "is missing", {}, "type " + field.name + "= (" + field.prompt + ")"},
                kind, field.name);
        }
    }
    return {};
}

Done check_rules(Checked& checked, const Kind& kind, const Input& input) {
    const Value personal("given"); // only whether it is there matters to a rule
    auto questions = hold_rules(kind, [&](const std::string& name) -> const Value* {
        if (const Value* typed = checked.data.find(name)) return typed;
        return checked.personal.count(name) > 0 ? &personal : input.before.find(name);
    });
    if (!questions) return questions.fault();
    checked.questions.insert(checked.questions.end(), questions->begin(), questions->end());
    return {};
}

std::string places_of(const Kind& kind) {
    std::vector<std::string> words;
    for (const auto form : kind.places) words.emplace_back(place_words(form));
    return words.empty() ? "it is recorded without a place" : "give " + joined(words, "; or ");
}

Done check_place(Checked& checked, const Kind& kind, const Input& input) {
    if (trimmed(input.place).empty()) {
        if (!kind.place_required) return {};
        return at({Code::place_wrong_type, "is missing", {}, places_of(kind)}, kind, "place");
    }
    if (!is_utf8(input.place))
        return at({Code::text_not_utf8, "holds bytes that are no text", {}, {}}, kind, "place");
    auto place = entry::parse_place(trimmed(input.place));
    if (!place) return at(place.fault(), kind, "place");
    checked.place = entry::place_text(*place);
    if (std::find(kind.places.begin(), kind.places.end(), place->form) != kind.places.end()) return {};
    const std::string is = "'" + checked.place + "' is " + std::string(place_words(place->form));
    return at({Code::place_wrong_type, is, {}, places_of(kind)}, kind, "place");
}

// A reading that says nothing is a slip; an event may be all there is to say.
Done check_something(const Kind& kind, const Input& input) {
    const bool says_nothing = input.typed.empty() && trimmed(input.place).empty();
    if (kind.group != Group::reading || !says_nothing) return {};
    return Fault{Code::field_missing, "nothing was typed", kind.name,
                 "there are " + joined(names_of(kind), ", ")};
}

} // namespace

Result<Checked> check(const Catalogue& catalogue, const Kind& kind, const Input& input) {
    Checked checked;
    if (auto done = check_something(kind, input); !done) return done.fault();
    if (auto done = read_fields(checked, catalogue, kind, input); !done) return done.fault();
    if (auto done = fill(checked, kind, input); !done) return done.fault();
    if (auto done = check_rules(checked, kind, input); !done) return done.fault();
    if (auto done = check_place(checked, kind, input); !done) return done.fault();
    return checked;
}

} // namespace undersheet::method
