#include "method/kinds.h"

#include "entry/json.h"
#include "method/json_schema.h"
#include "method/kinds_sound.h"
#include "method/meant.h"
#include "schema/embedded.h"

#include <algorithm>
#include <array>

namespace undersheet::method {
namespace {

using entry::PlaceForm;
using entry::Value;

template <class T>
struct Word {
    std::string_view name;
    T is;
    std::string_view words = {};
};

constexpr std::array kTypes{
    Word<FieldType>{"number", FieldType::number, "a number"},
    Word<FieldType>{"whole", FieldType::whole, "a whole number"},
    Word<FieldType>{"text", FieldType::text, "text on one line"},
    Word<FieldType>{"words", FieldType::words, "text"},
    Word<FieldType>{"label", FieldType::label, "a name of letters and digits, like R1"},
    Word<FieldType>{"choice", FieldType::choice, "one of these"},
    Word<FieldType>{"yes_no", FieldType::yes_no, "yes or no"},
    Word<FieldType>{"time", FieldType::time, "a time, like 11:20"},
    Word<FieldType>{"date", FieldType::date, "a day, like 2027-01-31"},
    Word<FieldType>{"people", FieldType::people, "names, commas between"},
    Word<FieldType>{"person", FieldType::person, "a name"},
    Word<FieldType>{"place", FieldType::place, "a place on the roof"},
    Word<FieldType>{"places", FieldType::places, "places, commas between"},
    Word<FieldType>{"points", FieldType::points, "points x,y in m, blanks between"},
    Word<FieldType>{"hash", FieldType::hash, "64 hexadecimal digits"},
    Word<FieldType>{"hashes", FieldType::hashes, "names of entries, commas between"},
    Word<FieldType>{"list", FieldType::list, "names, commas between"},
    Word<FieldType>{"fields", FieldType::fields, "fields of another entry"}};

constexpr std::array kPlaces{
    Word<PlaceForm>{"corner", PlaceForm::corner, "a corner, like A"},
    Word<PlaceForm>{"pair", PlaceForm::pair, "two corners, like AB"},
    Word<PlaceForm>{"along", PlaceForm::along, "a point along an edge, like AB+1.20"},
    Word<PlaceForm>{"point", PlaceForm::point, "a point on the deck, like 2.10,0.80"},
    Word<PlaceForm>{"label", PlaceForm::label, "a name, like R1"},
    Word<PlaceForm>{"joint", PlaceForm::joint, "a joint, like B2|B3"},
    Word<PlaceForm>{"line", PlaceForm::line, "a line, like 2.75,0>2.75,4.60"}};

constexpr std::array kGroups{Word<Group>{"reading", Group::reading}, Word<Group>{"event", Group::event},
                             Word<Group>{"office", Group::office}};

constexpr std::array kJudgings{Word<Judging>{"replaces", Judging::replaces},
                               Word<Judging>{"adds", Judging::adds}, Word<Judging>{"fills", Judging::fills}};

// The shape was checked before, so a word that is not in its table is a gap between schema and table: our own mistake.
template <class Words>
auto word_is(const Words& words, const std::string& name) {
    const auto found =
        std::find_if(words.begin(), words.end(), [&](const auto& word) { return word.name == name; });
    if (found == words.end()) throw std::logic_error("kinds.schema.json lets through '" + name + "'");
    return found->is;
}

bool flag(const Value& from, std::string_view key) {
    const Value* held = from.find(key);
    return held != nullptr && held->boolean() != nullptr && *held->boolean();
}

int small_number(const Value& from, std::string_view key) { return static_cast<int>(from.number_of(key, 0)); }

std::optional<Range> read_range(const Value& from, std::string_view key) {
    const entry::List& ends = from.list_of(key);
    if (ends.empty()) return std::nullopt;
    return Range{*ends[0].number(), *ends[1].number()};
}

Field read_field(const Value& from) {
    Field field;
    field.name = from.text_of("name");
    field.type = word_is(kTypes, from.text_of("type"));
    field.unit = from.text_of("unit");
    field.range = read_range(from, "range");
    field.usual = read_range(from, "usual");
    field.places = small_number(from, "places");
    for (const Value& choice : from.list_of("choices")) {
        field.choices.push_back(choice.text_of("word"));
        field.meanings.push_back(choice.text_of("means"));
    }
    field.prompt = from.text_of("prompt");
    field.suspicious = from.text_of("suspicious");
    field.fallback = from.text_of("fallback");
    field.required = flag(from, "required");
    field.personal = flag(from, "personal");
    field.may_skip = !flag(from, "must_know");
    field.shortest = small_number(from, "shortest");
    field.line = from.line;
    return field;
}

Result<FieldRule> read_rule(const Value& from) {
    const auto has = [&](std::string_view key) { return from.find(key) != nullptr ? 1 : 0; };
    if (has("sum") + has("at_most") + has("when") != 1) {
        return unsound(from.line, "a rule is one of three: sum and equals; at_most; when, is and wants");
    }
    FieldRule rule;
    rule.asks = flag(from, "asks");
    rule.line = from.line;
    if (from.find("sum") != nullptr) {
        rule.parts = from.texts_of("sum");
        rule.field = from.text_of("equals");
    } else if (from.find("at_most") != nullptr) {
        rule.sort = FieldRule::Sort::at_most;
        rule.field = from.texts_of("at_most")[0];
        rule.other = from.texts_of("at_most")[1];
    } else {
        rule.sort = FieldRule::Sort::wants;
        rule.field = from.text_of("when");
        rule.words = from.texts_of("is");
        rule.other = from.text_of("wants");
        rule.asks = true;
    }
    return rule;
}

std::vector<PlaceForm> read_places(const Value& from) {
    std::vector<PlaceForm> forms;
    for (const std::string& name : from.texts_of("places")) {
        if (name != "any") {
            forms.push_back(word_is(kPlaces, name));
            continue;
        }
        for (const auto& word : kPlaces) forms.push_back(word.is);
    }
    return forms;
}

// "Not looked" answers a question about the roof; it names nothing, and it is no text of an entry's own making.
bool can_be_skipped(const Kind& kind, const Field& field) {
    constexpr std::array kTypesThatAsk{FieldType::number, FieldType::whole,  FieldType::text,
                                       FieldType::words,  FieldType::choice, FieldType::yes_no,
                                       FieldType::time,   FieldType::date,   FieldType::place};
    const bool asks =
        std::find(kTypesThatAsk.begin(), kTypesThatAsk.end(), field.type) != kTypesThatAsk.end();
    const bool is_key =
        std::find(kind.key_fields.begin(), kind.key_fields.end(), field.name) != kind.key_fields.end();
    return field.may_skip && asks && !is_key && !field.personal;
}

Done add_rows(Kind& kind, const Value& from) {
    for (const Value& field : from.list_of("fields")) kind.fields.push_back(read_field(field));
    for (const Value& row : from.list_of("rules")) {
        auto rule = read_rule(row);
        if (!rule) return rule.fault();
        kind.rules.push_back(std::move(*rule));
    }
    return {};
}

Kind read_head(const Value& from) {
    Kind kind;
    kind.name = from.text_of("name");
    kind.heading = from.text_of("heading");
    kind.prompt = from.text_of("prompt");
    kind.group = word_is(kGroups, from.text_of("group"));
    kind.section = from.text_of("section");
    kind.judging = word_is(kJudgings, from.text_of("judging"));
    kind.key_fields = from.texts_of("keys");
    kind.places = read_places(from);
    kind.place_required = flag(from, "place_required");
    kind.part_required = flag(from, "part_required");
    kind.automatic = flag(from, "automatic");
    kind.own_hand = flag(from, "own_hand");
    kind.example = from.text_of("example");
    kind.line = from.line;
    return kind;
}

Result<Kind> read_kind(const Value& from, const Value* shared) {
    Kind kind = read_head(from);
    if (auto done = add_rows(kind, from); !done) return done.fault();
    for (const std::string& name : from.texts_of("uses")) {
        const Value* set = shared == nullptr ? nullptr : shared->find(name);
        if (set == nullptr)
            return unsound(from.line, kind.name + " uses '" + name + "', which is not shared");
        if (auto done = add_rows(kind, *set); !done) return done.fault();
    }
    const bool skips = flag(from, "may_skip");
    for (Field& field : kind.fields) field.may_skip = skips && can_be_skipped(kind, field);
    return kind;
}

} // namespace

const Field* Kind::field(std::string_view wanted) const {
    const auto found =
        std::find_if(fields.begin(), fields.end(), [&](const Field& f) { return f.name == wanted; });
    return found == fields.end() ? nullptr : &*found;
}

const Kind* Catalogue::find(std::string_view name) const {
    const auto found =
        std::find_if(kinds_.begin(), kinds_.end(), [&](const Kind& k) { return k.name == name; });
    return found == kinds_.end() ? nullptr : &*found;
}

Result<Catalogue> Catalogue::read(std::string_view json_text) {
    auto schema = entry::read_json(schema::kinds_schema_json());
    if (!schema) return schema.fault();
    auto file = entry::read_json(json_text);
    if (!file) return unsound(0, one_line(file.fault()));
    if (auto done = check_shape(*schema, *file, kCatalogueFile); !done) return done.fault();
    Catalogue catalogue;
    catalogue.hash_ = entry::sha256(json_text);
    for (const Value& from : file->list_of("kinds")) {
        auto kind = read_kind(from, file->find("shared"));
        if (!kind) return kind.fault();
        if (auto done = check_sound(*kind); !done) return done.fault();
        if (catalogue.find(kind->name) != nullptr)
            return unsound(from.line, "there are two kinds named " + kind->name);
        catalogue.kinds_.push_back(std::move(*kind));
    }
    return catalogue;
}

Fault unknown_kind(const Catalogue& catalogue, std::string_view name) {
    std::vector<std::string> known;
    for (const Kind& kind : catalogue.kinds()) {
        if (!kind.automatic) known.push_back(kind.name);
    }
    return {Code::kind_unknown,
            "'" + shown(name) + "' is nothing that can be recorded",
            {},
            did_you_mean(name, known)};
}

std::string_view type_words(FieldType type) {
    const auto found =
        std::find_if(kTypes.begin(), kTypes.end(), [type](const auto& word) { return word.is == type; });
    return found == kTypes.end() ? std::string_view() : found->words;
}

std::string_view place_words(PlaceForm form) {
    const auto found =
        std::find_if(kPlaces.begin(), kPlaces.end(), [form](const auto& word) { return word.is == form; });
    return found == kPlaces.end() ? std::string_view("nowhere") : found->words;
}

} // namespace undersheet::method
