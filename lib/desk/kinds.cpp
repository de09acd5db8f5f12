#include "desk/desk.h"

#include "base/text.h"
#include "desk/own.h"
#include "method/units.h"

namespace undersheet::desk {
namespace {

std::string group_word(method::Group group) {
    switch (group) {
    case method::Group::reading:
        return "reading";
    case method::Group::event:
        return "event";
    case method::Group::office:
        break;
    }
    return "office";
}

std::string judging_words(const method::Kind& kind) {
    switch (kind.judging) {
    case method::Judging::replaces:
        return "A later one at the same place counts instead of the earlier one; both stay in the history.";
    case method::Judging::fills:
        return "A later one adds to the earlier, field by field; the last word counts.";
    case method::Judging::adds:
        break;
    }
    return kind.group == method::Group::reading ? "Each one counts beside the others." : "";
}

// The program's own fallbacks in words.
std::string fallback_words(const std::string& fallback) {
    if (fallback == "$when") return "that day";
    return fallback.starts_with("$") ? "the same as " + fallback.substr(1) : fallback;
}

void put_range(FieldLine& line, const method::Field& field) {
    if (field.range) line.least = field.range->least.text();
    if (field.range) line.most = field.range->most.text();
    if (field.usual) line.usual_least = field.usual->least.text();
    if (field.usual) line.usual_most = field.usual->most.text();
}

FieldLine line_of(const method::Field& field) {
    FieldLine line;
    line.name = field.name;
    line.type = method::type_words(field.type);
    line.unit = method::unit_sign(field.unit);
    line.prompt = field.prompt;
    line.odd = field.suspicious;
    line.fallback = fallback_words(field.fallback);
    put_range(line, field);
    for (std::size_t i = 0; i < field.choices.size(); ++i) {
        line.choices.push_back({field.choices[i], i < field.meanings.size() ? field.meanings[i] : ""});
    }
    line.required = field.required;
    line.personal = field.personal;
    line.may_skip = field.may_skip;
    return line;
}

std::string places_of(const method::Kind& kind) {
    std::vector<std::string> words;
    for (const auto form : kind.places) words.emplace_back(method::place_words(form));
    return joined(words, "; ");
}

KindLine line_of(const method::Kind& kind) {
    KindLine line;
    line.name = kind.name;
    line.heading = kind.heading;
    line.prompt = kind.prompt;
    line.group = group_word(kind.group);
    line.judging = judging_words(kind);
    line.place = places_of(kind);
    line.example = kind.example;
    line.place_required = kind.place_required;
    line.part_required = kind.part_required;
    line.typed = !kind.automatic;
    for (const auto& field : kind.fields) line.fields.push_back(line_of(field));
    return line;
}

} // namespace

std::vector<KindLine> kinds() {
    std::vector<KindLine> lines;
    for (const auto& kind : own_catalogue().kinds()) lines.push_back(line_of(kind));
    return lines;
}

Result<KindLine> kind(std::string_view name) {
    std::string wanted = replaced(std::string(name), "-", "_");
    const method::Kind* found = own_catalogue().find(wanted);
    if (found == nullptr) return method::unknown_kind(own_catalogue(), name);
    return line_of(*found);
}

std::vector<std::string> stage_names() {
    std::vector<std::string> names;
    for (const auto& stage : own_method().stages()) names.push_back(stage.name);
    return names;
}

std::vector<std::string> step_names(std::string_view stage) {
    std::vector<std::string> names;
    if (const auto* found = own_method().stage(stage)) {
        for (const auto& step : found->steps) names.push_back(step.name);
    }
    return names;
}

} // namespace undersheet::desk
