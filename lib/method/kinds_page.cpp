#include "method/kinds_page.h"

#include "base/text.h"
#include "method/units.h"

#include <algorithm>
#include <array>
#include <set>

namespace undersheet::method {
namespace {

constexpr std::size_t kColumns = 80;

std::string number_takes(const Field& field) {
    const std::string sign(unit_sign(field.unit));
    std::string takes = field.type == FieldType::whole ? "a whole number" : "a number";
    if (!sign.empty()) takes += " in " + sign;
    if (field.range) takes += ", " + field.range->words();
    if (field.usual) takes += ", usually " + field.usual->words();
    return takes;
}

std::string choice_takes(const Field& field) {
    std::vector<std::string> words;
    for (std::size_t i = 0; i < field.choices.size(); ++i) {
        const std::string& means = field.meanings[i];
        words.push_back(means.empty() ? field.choices[i] : field.choices[i] + " (" + means + ")");
    }
    return joined(words, ", ");
}

std::string left_out(const Field& field) {
    if (field.fallback.empty()) return {};
    if (field.fallback == "$when") return "; left out, the day of the entry";
    if (field.fallback.starts_with("$")) return "; left out, the " + field.fallback.substr(1);
    return "; left out, " + field.fallback;
}

std::string where_words(const Kind& kind) {
    constexpr std::size_t kAllForms = 7;
    if (kind.places.empty()) return "Recorded without a place.";
    if (kind.places.size() == kAllForms)
        return kind.place_required ? "At a place on the roof." : "At a place on the roof, or without one.";
    std::vector<std::string> forms;
    for (const auto form : kind.places) forms.emplace_back(place_words(form));
    return "At " + joined(forms, "; or ") + (kind.place_required ? "." : "; or without a place.");
}

std::string same_thing(const Kind& kind) {
    std::vector<std::string> keys;
    if (!kind.places.empty()) keys.emplace_back("place");
    keys.insert(keys.end(), kind.key_fields.begin(), kind.key_fields.end());
    return keys.empty() ? std::string() : " with the same " + joined(keys, " and ");
}

std::string judging_words(const Kind& kind) {
    switch (kind.judging) {
    case Judging::replaces:
        return "A later entry" + same_thing(kind) + " takes the place of the earlier one.";
    case Judging::fills:
        return "A later entry" + same_thing(kind) + " fills in or changes field by field.";
    case Judging::adds:
        break;
    }
    return "A later entry stands beside the earlier ones.";
}

// The sentences under a kind's heading. How a later reading counts is said of readings only.
std::string about(const Kind& kind) {
    std::string text = where_words(kind);
    if (kind.part_required) text += " Names the part it belongs to.";
    if (kind.group == Group::reading) text += " " + judging_words(kind);
    if (kind.own_hand) text += " A person answers for it: who has a PIN on this device gives it.";
    if (kind.automatic) text += " Written by the program, never typed.";
    return text;
}

std::string rule_words(const FieldRule& rule) {
    switch (rule.sort) {
    case FieldRule::Sort::sum:
        return joined(rule.parts, " + ") + " must make " + rule.field;
    case FieldRule::Sort::at_most:
        return rule.field +
               (rule.asks ? " is usually not more or later than " : " must not be more or later than ") +
               rule.other;
    case FieldRule::Sort::wants:
        return "with " + rule.field + " " + joined(rule.words, " or ") + ", type " + rule.other + " too";
    }
    return {};
}

// ---- plain text ----

// Words wrapped to 80 columns, every line behind `indent` blanks; the first begins where `first` ends.
std::string wrapped(std::string_view text, std::size_t indent, std::string first) {
    std::string out;
    std::string line = std::move(first);
    line.resize(std::max(line.size(), indent), ' ');
    bool fresh = true;
    for (const std::string& word : split(text, ' ')) {
        if (!fresh && character_count(line) + 1 + character_count(word) > kColumns) {
            out += line + "\n";
            line.assign(indent, ' ');
            fresh = true;
        }
        line += (fresh ? "" : " ") + word;
        fresh = false;
    }
    return out + line + "\n";
}

std::string help_field(const Field& field, std::size_t indent) {
    std::string text = field.prompt + ": " + field_takes(field) + left_out(field);
    if (!field.suspicious.empty()) text += ". Look twice: " + field.suspicious;
    return wrapped(text, indent, "  " + field.name + (field.required ? " *" : ""));
}

// ---- Markdown ----

std::string cell(std::string_view text) { return replaced(std::string(text), "|", "\\|"); }

std::string page_row(const Field& field) {
    const std::string name =
        "`" + field.name + "`" + (field.required ? " *" : "") + (field.personal ? " (p)" : "");
    return "| " + name + " | " + cell(field.prompt) + " | " + cell(field_takes(field) + left_out(field)) +
           " | " + cell(field.suspicious) + " |\n";
}

bool same_fields(const Kind& a, const Kind& b) {
    return a.fields.size() == b.fields.size() &&
           std::equal(a.fields.begin(), a.fields.end(), b.fields.begin(),
                      [](const Field& x, const Field& y) { return x.name == y.name && x.line == y.line; });
}

std::string page_fields(const Catalogue& catalogue, const Kind& kind) {
    if (kind.fields.empty()) return {};
    for (const Kind& earlier : catalogue.kinds()) {
        if (&earlier == &kind) break;
        if (same_fields(earlier, kind)) return "The fields are those of `" + earlier.name + "`.\n\n";
    }
    std::string out = "| field | what to type | takes | look twice at |\n|---|---|---|---|\n";
    for (const Field& field : kind.fields) out += page_row(field);
    for (const FieldRule& rule : kind.rules)
        out += (&rule == &kind.rules.front() ? "\n- " : "- ") + rule_words(rule) + "\n";
    return out + "\n";
}

std::string page_kind(const Catalogue& catalogue, const Kind& kind) {
    std::string out =
        "### " + kind.name + ": " + kind.heading + "\n\n" + kind.prompt + " " + about(kind) + "\n\n";
    if (!kind.example.empty()) out += "```sh\n" + kind.example + "\n```\n\n";
    return out + page_fields(catalogue, kind);
}

std::string page_units(const Catalogue& catalogue) {
    std::set<std::string> units;
    for (const Kind& kind : catalogue.kinds()) {
        for (const Field& field : kind.fields) units.insert(field.unit);
    }
    units.erase("");
    std::string out = "| field ends in | kept in | may be typed in |\n|---|---|---|\n";
    for (const std::string& unit : units) {
        out += "| `_" + unit + "` | " + std::string(unit_sign(unit)) + " | " + typed_units(unit) + " |\n";
    }
    return out + "\n";
}

constexpr std::string_view kIntroduction =
    "# What can be recorded\n\n"
    "Written from `schema/kinds.json`; change that file, not this page.\n\n"
    "A field marked * cannot be left out. One marked (p) is personal: it is kept apart from the entry and "
    "can be erased.\n"
    "In readings, `not looked` and `can't reach` are answers too, and are printed as such; they do not mean "
    "*fine*.\n"
    "Outside its range a value is refused. Outside what is usual it is asked about once and kept.\n\n"
    "A number takes one decimal point or comma, and another unit of the same quantity behind it: "
    "`height_mm=15cm`,\n"
    "`wind_ms=17mph`. What was typed is kept beside it. A time is `11:20`, on the day of the entry, or "
    "written out with its\n"
    "offset. A day is `2027-01-31` or `31 Jan 2027`; a month alone, `2026-11`, is its last day.\n\n";

} // namespace

std::string field_takes(const Field& field) {
    switch (field.type) {
    case FieldType::number:
    case FieldType::whole:
        return number_takes(field);
    case FieldType::choice:
        return choice_takes(field);
    default:
        break;
    }
    const std::string takes(type_words(field.type));
    if (field.shortest == 0) return takes;
    const bool text = field.type == FieldType::text || field.type == FieldType::words;
    return takes + ", " + std::to_string(field.shortest) + (text ? " characters or more" : " or more");
}

std::string kind_help(const Kind& kind) {
    std::size_t widest = 0;
    for (const Field& field : kind.fields)
        widest = std::max(widest, field.name.size() + (field.required ? 2U : 0U));
    const std::size_t indent = widest + 4;
    std::string out =
        kind.name + ": " + kind.heading + "\n" + wrapped(kind.prompt + " " + about(kind), 0, {}) + "\n";
    for (const Field& field : kind.fields) out += help_field(field, indent);
    if (!kind.rules.empty()) out += "\n";
    for (const FieldRule& rule : kind.rules) out += wrapped(rule_words(rule), 2, "- ");
    if (!kind.example.empty()) out += "\n  " + kind.example + "\n";
    return out;
}

std::string kinds_page(const Catalogue& catalogue) {
    constexpr std::array kHeadings{std::pair{Group::reading, "## Readings\n\n"},
                                   std::pair{Group::event, "## Events\n\n"},
                                   std::pair{Group::office, "## The firm, people and jobs\n\n"}};
    std::string out = std::string(kIntroduction) + page_units(catalogue);
    for (const auto& [group, heading] : kHeadings) {
        out += heading;
        for (const Kind& kind : catalogue.kinds()) {
            if (kind.group == group) out += page_kind(catalogue, kind);
        }
    }
    out.pop_back(); // one line end is enough at the end
    return out;
}

} // namespace undersheet::method
