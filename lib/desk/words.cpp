#include "desk/words.h"

#include "base/text.h"
#include "method/units.h"

namespace undersheet::desk {
namespace {

constexpr std::size_t kShortHash = 8; // as entries are named on the screen

// "air_c" is "air", "rh_pct" is "rh": the unit stands behind the figure instead.
std::string spoken_name(std::string_view field) {
    const std::string_view unit = method::unit_in_name(field);
    std::string name(field);
    if (name == unit) return ""; // a tape is just "3.20 m"
    if (!unit.empty() && name.size() > unit.size() + 1) name.resize(name.size() - unit.size() - 1);
    return replaced(std::move(name), "_", " ");
}

std::string with_name(std::string_view field, const std::string& said) {
    const std::string name = spoken_name(field);
    return name.empty() ? said : name + " " + said;
}

// A figure typed without its unit gets it: "2,1" of a tape is "2,1 m".
std::string typed_words(std::string_view field, const std::string& typed) {
    const std::string_view sign = method::unit_sign(method::unit_in_name(field));
    const bool ends_in_digit = typed.back() >= '0' && typed.back() <= '9';
    return sign.empty() || !ends_in_digit ? typed : typed + " " + std::string(sign);
}

std::string list_words(const entry::List& list) {
    std::vector<std::string> pieces;
    for (const auto& piece : list) pieces.push_back(value_words(piece));
    return joined(pieces, ", ");
}

std::string map_words(const entry::Map& map) {
    std::vector<std::string> pieces;
    for (const auto& member : map) pieces.push_back(member.key + " " + value_words(member.value));
    return joined(pieces, ", ");
}

bool is_of_people(const method::Field* field) {
    return field != nullptr &&
           (field->type == method::FieldType::people || field->type == method::FieldType::person);
}

std::string people_words(const job::Job& job, const entry::Value& value) {
    if (const auto* one = value.text()) return job.person_name(*one);
    std::vector<std::string> names;
    if (value.list() != nullptr)
        for (const auto& one : *value.list())
            if (const auto* id = one.text()) names.push_back(job.person_name(*id));
    return joined(names, ", ");
}

// The number somebody has in the book: it is for programs, and the name stands beside it.
bool is_own_number(const entry::Entry& entry, const std::string& field) {
    return entry.kind == "person" && field == "person";
}

// What stands for one field: as typed when that differs, the personal value while it is held.
std::string said_for(const job::Job& job, const entry::Entry& entry, const method::Kind* kind,
                     const entry::Member& member) {
    if (entry::commitment_of(member.value)) return with_name(member.key, entry.field_text(member.key));
    if (const std::string typed = entry.raw.text_of(member.key); !typed.empty())
        return with_name(member.key, typed_words(member.key, typed));
    return field_words(job, kind, member.key, member.value);
}

std::vector<std::string> names_in_order(const entry::Entry& entry, const method::Kind* kind) {
    std::vector<std::string> names;
    if (kind != nullptr) {
        for (const auto& field : kind->fields) names.push_back(field.name);
    }
    if (entry.data.map() == nullptr) return names;
    for (const auto& member : *entry.data.map()) {
        if (kind == nullptr || kind->field(member.key) == nullptr) names.push_back(member.key);
    }
    return names;
}

} // namespace

std::string value_words(const entry::Value& value) {
    if (const auto* text = value.text()) return replaced(*text, "_", " ");
    if (const auto* number = value.number()) return number->text();
    if (const auto* yes = value.boolean()) return *yes ? "yes" : "no";
    if (const auto* list = value.list()) return list_words(*list);
    return value.map() == nullptr ? std::string() : map_words(*value.map());
}

std::string field_words(const job::Job& job, const method::Kind* kind, const std::string& name,
                        const entry::Value& value) {
    const method::Field* field = kind == nullptr ? nullptr : kind->field(name);
    if (is_of_people(field)) return with_name(name, people_words(job, value));
    const bool as_typed = field != nullptr && (field->type == method::FieldType::text ||
                                               field->type == method::FieldType::words ||
                                               field->type == method::FieldType::label);
    std::string said = as_typed && value.text() != nullptr ? *value.text() : value_words(value);
    if (field != nullptr && field->type == method::FieldType::hash) said = said.substr(0, kShortHash);
    if (value.number() == nullptr) return with_name(name, said);
    const std::string_view sign = method::unit_sign(method::unit_in_name(name));
    return with_name(name, said + (sign.empty() ? "" : " " + std::string(sign)));
}

std::string entry_words(const job::Job& job, const entry::Entry& entry, const method::Kind* kind) {
    std::vector<std::string> pieces;
    for (const auto& name : names_in_order(entry, kind)) {
        const entry::Value* value = entry.data.find(name);
        if (value != nullptr && !is_own_number(entry, name))
            pieces.push_back(said_for(job, entry, kind, {name, *value}));
    }
    return joined(pieces, ", ");
}

Lines marks_of(const entry::Entry& entry, const method::Method& method) {
    Lines marks;
    const double late_min = entry::minutes_between(entry.when, entry.clock);
    if (late_min > method.limit("written_late_min")) marks.push_back("written later: at " + entry.clock.text);
    if (late_min < 0) marks.push_back("ahead of the clock, which stood at " + entry.clock.text);
    if (entry.simulated) marks.emplace_back("clock set by hand");
    return marks;
}

std::string heading_of(const method::Catalogue& kinds, const std::string& kind) {
    const method::Kind* found = kinds.find(kind);
    return found == nullptr ? kind : found->heading;
}

std::string by_words(const job::Job& job, const entry::Entry* entry) {
    if (entry == nullptr) return "";
    return job.person_name(entry->author) + ", " + entry::date_words(entry::date_of(entry->when)) + " " +
           entry::clock_text(entry->when);
}

} // namespace undersheet::desk
