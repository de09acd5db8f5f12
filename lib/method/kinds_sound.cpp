#include "method/kinds_sound.h"

#include "base/text.h"
#include "method/units.h"

#include <algorithm>
#include <array>

namespace undersheet::method {
namespace {

bool is_number(const Field& field) {
    return field.type == FieldType::number || field.type == FieldType::whole;
}

bool can_be_short(const Field& field) {
    constexpr std::array kShort{FieldType::text, FieldType::words, FieldType::places, FieldType::points,
                                FieldType::list};
    return std::find(kShort.begin(), kShort.end(), field.type) != kShort.end();
}

bool is_one_of(const std::vector<std::string>& words, const std::string& word) {
    return std::find(words.begin(), words.end(), word) != words.end();
}

// The strict written form takes keys of up to 32 small letters, digits and underscores.
bool is_key(std::string_view name) {
    constexpr std::size_t kLongest = 32;
    const auto fits = [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_'; };
    return !name.empty() && name.size() <= kLongest && name[0] >= 'a' && name[0] <= 'z' &&
           std::all_of(name.begin(), name.end(), fits);
}

bool is_inside(const Range& inner, const Range& outer) {
    return !(inner.least < outer.least) && !(outer.most < inner.most);
}

// "" when sound, else what is wrong; the caller adds name and line.
std::string wrong_number(const Field& field) {
    if (!is_number(field))
        return field.range || field.usual || field.places > 0 ? "has a range but is no number" : "";
    if (!field.range) return "is a number without a range";
    if (!(field.range->least < field.range->most))
        return "has the range " + field.range->words() + ", which is inside out";
    if (!field.usual) return {};
    if (field.usual->most < field.usual->least)
        return "has usual values " + field.usual->words() + ", which is inside out";
    if (is_inside(*field.usual, *field.range)) return {};
    return "has usual values " + field.usual->words() + " outside its range " + field.range->words();
}

std::string wrong_unit(const Field& field) {
    const std::string in_name(unit_in_name(field.name));
    if (in_name != field.unit)
        return "has the unit '" + field.unit + "', but its name says '" + in_name + "'";
    if (!in_name.empty() && !is_number(field)) return "has a unit but is no number";
    if (field.type == FieldType::number && in_name.empty()) return "is a number without a unit in its name";
    return {};
}

std::string wrong_choices(const Field& field) {
    if (field.type != FieldType::choice) return field.choices.empty() ? "" : "has choices but is no choice";
    if (field.choices.empty()) return "is a choice without words";
    for (std::size_t i = 0; i < field.choices.size(); ++i) {
        const std::string& word = field.choices[i];
        const bool lower = word == lower_ascii(word) && word.find_first_of(" -") == std::string::npos;
        if (!lower) return "has the word '" + word + "', which is not in small letters with underscores";
        if (std::count(field.choices.begin(), field.choices.end(), word) > 1)
            return "has the word '" + word + "' twice";
    }
    return {};
}

std::string wrong_rest(const Kind& kind, const Field& field) {
    if (!is_key(field.name)) return "is not a name of up to 32 small letters, digits and underscores";
    if (field.shortest > 0 && !can_be_short(field))
        return "has a shortest length but is neither text nor list";
    const bool text = field.type == FieldType::text || field.type == FieldType::words;
    if (field.personal && !text) return "is personal but no text";
    if (field.fallback.starts_with("$")) {
        const std::string from = field.fallback.substr(1);
        return from == "when" || kind.field(from) != nullptr
                   ? ""
                   : "falls back on " + from + ", which is not there";
    }
    if (field.type != FieldType::choice || field.fallback.empty()) return {};
    return is_one_of(field.choices, field.fallback) ? "" : "falls back on a word that it does not have";
}

std::string wrong_field(const Kind& kind, const Field& field) {
    for (const std::string& what :
         {wrong_rest(kind, field), wrong_number(field), wrong_unit(field), wrong_choices(field)}) {
        if (!what.empty()) return what;
    }
    const auto same = [&](const Field& other) { return other.name == field.name; };
    return std::count_if(kind.fields.begin(), kind.fields.end(), same) > 1 ? "is there twice" : "";
}

std::vector<std::string> fields_of(const FieldRule& rule) {
    std::vector<std::string> names = rule.parts;
    names.push_back(rule.field);
    if (rule.sort != FieldRule::Sort::sum) names.push_back(rule.other);
    return names;
}

std::string wrong_words(const Kind& kind, const FieldRule& rule) {
    const Field& looked_at = *kind.field(rule.field);
    const std::vector<std::string> yes_no{"yes", "no"};
    const auto& words = looked_at.type == FieldType::yes_no ? yes_no : looked_at.choices;
    for (const std::string& word : rule.words) {
        if (!is_one_of(words, word))
            return "has a rule for " + rule.field + " being '" + word + "', which it cannot be";
    }
    return rule.words.empty() ? "has a rule without words" : "";
}

std::string wrong_rule(const Kind& kind, const FieldRule& rule) {
    for (const std::string& name : fields_of(rule)) {
        if (kind.field(name) == nullptr) return "has a rule about '" + name + "', which is no field of it";
    }
    if (rule.sort == FieldRule::Sort::wants) return wrong_words(kind, rule);
    const FieldType type = kind.field(rule.field)->type;
    for (const std::string& name : fields_of(rule)) {
        const bool fits = rule.sort == FieldRule::Sort::sum ? kind.field(name)->type == FieldType::whole
                                                            : kind.field(name)->type == type;
        if (!fits) return "has a rule that compares " + name + " with something of another type";
    }
    const bool ordered = type == FieldType::number || type == FieldType::whole || type == FieldType::time ||
                         type == FieldType::date;
    return ordered ? "" : "has a rule about the order of " + rule.field + ", which has none";
}

Done check_kind_itself(const Kind& kind) {
    const std::string name = kind.name + " ";
    if (!is_key(kind.name))
        return unsound(kind.line, "'" + kind.name + "' is not a name of small letters and underscores");
    if (kind.place_required && kind.places.empty())
        return unsound(kind.line, name + "needs a place but takes none");
    if (kind.example.empty() != kind.automatic) {
        return unsound(kind.line, name + (kind.automatic ? "is written by the program, it needs no example"
                                                         : "has no example"));
    }
    const auto lost = std::find_if(kind.key_fields.begin(), kind.key_fields.end(),
                                   [&](const std::string& key) { return kind.field(key) == nullptr; });
    if (lost == kind.key_fields.end()) return {};
    return unsound(kind.line, name + "has the key '" + *lost + "', which is no field of it");
}

} // namespace

Fault unsound(int line, std::string what) {
    const std::string where(kCatalogueFile);
    return {Code::method_malformed,
            std::move(what),
            line == 0 ? where : where + " line " + std::to_string(line),
            {}};
}

Done check_sound(const Kind& kind) {
    if (auto done = check_kind_itself(kind); !done) return done;
    for (const Field& field : kind.fields) {
        const std::string what = wrong_field(kind, field);
        if (!what.empty()) return unsound(field.line, kind.name + " " + field.name + " " + what);
    }
    for (const FieldRule& rule : kind.rules) {
        const std::string what = wrong_rule(kind, rule);
        if (!what.empty()) return unsound(rule.line, kind.name + " " + what);
    }
    return {};
}

} // namespace undersheet::method
