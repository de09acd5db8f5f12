// The catalogue: every kind of entry there is, field by field, with unit, range, words and the question as a
// roofer asks it.
//
// Promises: whatever was read holds together. It fits schema/kinds.schema.json, names are unique, the unit at
//   the end of a field's name is its unit, every number has a range and its usual values lie inside it.
//   Otherwise one line says where and why.
// Comes from: schema/kinds.json; its hash pins what a job was recorded with.
// Does not: judge a value beyond its range, or know a roof. Adding a kind or a field is a change to the data.
// Threads: plain values, read once, never changed.
#pragma once

#include "base/decimal.h"
#include "entry/hash.h"
#include "entry/place.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace undersheet::method {

// How a value is typed, and so how it is kept: number and whole as decimals; people, places, points, hashes and list as
// lists of text; fields as an object; all others as text, yes_no as "yes" or "no".
// clang-format off
enum class FieldType {
    number, whole, text, words, label, choice, yes_no, time, date,
    people, person, place, places, points, hash, hashes, list, fields
};
// clang-format on

struct Range {
    Decimal least;
    Decimal most;
    [[nodiscard]] std::string words() const { return least.text() + " to " + most.text(); }
};

struct Field {
    std::string name = {};
    FieldType type = FieldType::text;
    std::string unit = {};           // as it ends the name: "mm", "pct", "ms"; "" when it has none
    std::optional<Range> range = {}; // outside is refused: it cannot be
    std::optional<Range> usual = {}; // outside is asked about once, and kept
    int places = 0;                  // decimals that people type
    std::vector<std::string> choices = {};
    std::vector<std::string> meanings = {}; // one for each choice, "" where the word says it
    std::string prompt = {};                // what to type, in a few words
    std::string suspicious = {};            // what makes a roofer look twice
    std::string fallback = {}; // taken when left out: a value, "$when" (that day), "$batch" (another field)
    bool required = false;
    bool personal = false; // never stands in a body
    bool may_skip = false; // "not_looked" and "cant_reach" are answers
    int shortest = 0;      // characters of a text, pieces of a list
    int line = 0;          // in the file it was read from
};

// What a later entry does to an earlier one at the same place: stands in place of it, beside it, or over it field by field.
enum class Judging { replaces, adds, fills };
enum class Group { reading, event, office };

// What fields must be to each other. Numbers, times and dates that are not there are no breach.
struct FieldRule {
    enum class Sort { sum, at_most, wants };
    Sort sort = Sort::sum;
    std::vector<std::string> parts = {}; // sum: these together make `field` (a missing one is 0)
    std::string field = {};              // sum: the whole; at_most: the lesser; wants: the one looked at
    std::string other = {};              // at_most: the greater; wants: the field that then should be there
    std::vector<std::string> words = {}; // wants: when `field` holds one of these
    bool asks = false;                   // a breach is asked about, not refused
    int line = 0;
};

struct Kind {
    std::string name = {};
    std::string heading = {};
    std::string prompt = {};
    Group group = Group::reading;
    std::string section = {}; // where it stands in an inspection: "3.6"
    Judging judging = Judging::adds;
    std::vector<std::string> key_fields = {};  // with the place: what makes two entries the same thing
    std::vector<entry::PlaceForm> places = {}; // where it can be recorded, besides nowhere
    bool place_required = false;
    bool part_required = false;
    bool automatic = false;   // written by the program, never typed
    bool own_hand = false;    // a person answers for it: signed with that person's own key where there is one
    std::string example = {}; // one whole command
    std::vector<Field> fields = {};
    std::vector<FieldRule> rules = {};
    int line = 0;

    [[nodiscard]] const Field* field(std::string_view name) const; // nullptr when it has none of that name
};

class Catalogue {
public:
    [[nodiscard]] static Result<Catalogue> read(std::string_view json_text);

    [[nodiscard]] const Kind* find(std::string_view name) const; // nullptr when there is none
    [[nodiscard]] const std::vector<Kind>& kinds() const { return kinds_; }
    [[nodiscard]] entry::Hash hash() const { return hash_; } // of the file's bytes

private:
    std::vector<Kind> kinds_;
    entry::Hash hash_ = {};
};

// kind_unknown, with the nearest word there is.
[[nodiscard]] Fault unknown_kind(const Catalogue& catalogue, std::string_view name);

[[nodiscard]] std::string_view type_words(FieldType type);         // "a number", "yes or no"
[[nodiscard]] std::string_view place_words(entry::PlaceForm form); // "an edge, like AB"

} // namespace undersheet::method
