#include "tests/paper/hostile_roof.h"

namespace undersheet::test {
namespace {

using entry::Entry;
using entry::Value;
using method::Field;
using method::FieldType;
using method::Kind;

// Texts by which entries find each other. They stay as they are where the story needs them, and are attacked in the kinds
// that the story does without.
const std::set<std::string> kNamesOfOthers = {"step", "finding", "person",   "tin",
                                              "item", "label",   "label_of", "rule"};

bool is_text(const Field& field) {
    return field.type == FieldType::text || field.type == FieldType::words || field.type == FieldType::label;
}

std::string attacked(const std::string& attack, const std::string& kind, const std::string& field) {
    return attack + "~" + kind + "." + field + "~";
}

void put(Entry& entry, const Field& field, const std::string& text) {
    if (!field.personal) {
        entry.data.set(field.name, text);
        return;
    }
    entry.data.set(field.name, Value().set("cid", std::string(64, 'c')));
    entry.personal[field.name] = text;
}

void attack_texts(Entry& entry, const Kind& kind, const std::string& attack, bool all) {
    for (const Field& field : kind.fields) {
        if (is_text(field) && (all || !kNamesOfOthers.contains(field.name)))
            put(entry, field, attacked(attack, kind.name, field.name));
    }
}

// Something for every other field; lists and hashes are texts too.
Value something(const Field& field, const std::string& text) {
    if (field.usual) return field.usual->least;
    if (field.range) return field.range->least;
    if (!field.choices.empty()) return field.choices.front();
    switch (field.type) {
    case FieldType::yes_no:
        return "yes";
    case FieldType::time:
        return "2026-05-21T11:00:00+01:00";
    case FieldType::date:
        return "2026-05-21";
    case FieldType::hash:
        return std::string(64, 'a');
    case FieldType::fields:
        return Value().set("note", text);
    case FieldType::people:
    case FieldType::places:
    case FieldType::points:
    case FieldType::hashes:
    case FieldType::list:
        return entry::List{text};
    default:
        return text;
    }
}

const char* place_for(const Kind& kind) {
    static const std::map<entry::PlaceForm, const char*> kPlaces = {
        {entry::PlaceForm::pair, "BC"},         {entry::PlaceForm::along, "BC+1.20"},
        {entry::PlaceForm::point, "1.00,1.00"}, {entry::PlaceForm::label, "R9"},
        {entry::PlaceForm::joint, "B8|B9"},     {entry::PlaceForm::line, "0.00,0.00>1.00,1.00"},
        {entry::PlaceForm::corner, "B"}};
    return kind.places.empty() ? "" : kPlaces.at(kind.places.front());
}

Entry one_of(const Kind& kind, const std::string& attack, std::int64_t number) {
    Entry made;
    made.kind = kind.name;
    made.job = "job";
    made.author = "ip";
    made.device = "device";
    made.when = made.clock = *entry::parse_time("2026-05-21T15:00:00+01:00");
    made.lam = made.seq = number;
    made.place = *entry::parse_place(place_for(kind));
    if (kind.part_required) made.part = "trim-off";
    for (const Field& field : kind.fields) {
        if (!is_text(field))
            made.data.set(field.name, something(field, attacked(attack, kind.name, field.name)));
    }
    attack_texts(made, kind, attack, true);
    made.hash = entry::sha256(kind.name + std::to_string(number));
    return made;
}

// A visit after the hand-over, that knows of all there was: opened, looked, signed.
void add_visit(job::EntryList& entries, const std::string& attack) {
    std::optional<entry::Hash> opened;
    for (const char* kind : {"supplement", "look", "supplement_sign"}) {
        Entry made =
            one_of(*default_kinds().find(kind), attack, static_cast<std::int64_t>(entries.size()) + 1);
        made.prev = entries.back().hash;
        made.supplement = opened;
        if (!opened) opened = made.hash;
        entries.push_back(std::move(made));
    }
}

} // namespace

job::EntryList hostile_roof(const std::string& attack) {
    job::EntryList entries = troubled_roof().entries();
    std::set<std::string> told;
    for (Entry& entry : entries) {
        const Kind* kind = default_kinds().find(entry.kind);
        told.insert(entry.kind);
        if (kind != nullptr) attack_texts(entry, *kind, attack, false);
    }
    add_visit(entries, attack);
    told.insert({"supplement", "look", "supplement_sign"});
    for (const Kind& kind : default_kinds().kinds()) {
        if (!told.contains(kind.name))
            entries.push_back(one_of(kind, attack, static_cast<std::int64_t>(entries.size()) + 1));
    }
    return entries;
}

std::set<std::string> named_in(std::string_view text) {
    std::set<std::string> names;
    for (auto at = text.find('~'); at != text.npos; at = text.find('~', at + 1)) {
        const auto name = text.substr(at + 1, text.find('~', at + 1) - at - 1);
        if (name.find_first_not_of("abcdefghijklmnopqrstuvwxyz_0123456789.") == name.npos &&
            name.find('.') != name.npos)
            names.insert(std::string(name));
    }
    return names;
}

std::string torn(std::string_view text, std::string_view attack) {
    for (const std::string& name : named_in(text)) {
        const std::string mark = "~" + name + "~";
        for (auto at = text.find(mark); at != text.npos; at = text.find(mark, at + 1)) {
            if (!text.substr(0, at).ends_with(attack)) return name;
        }
    }
    return {};
}

} // namespace undersheet::test
