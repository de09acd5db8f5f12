#include "method/json_schema.h"

#include "base/text.h"

#include <algorithm>
#include <array>

namespace undersheet::method {
namespace {

using entry::Value;

// Where a walk along the schema stands: one value, the schema it has to fit, and the spot it was reached from.
struct Spot {
    const Value& root; // of the schema, for $defs
    std::string_view file;
    const Value& schema;
    const Value& value;
    const Spot* from = nullptr; // lives longer: it is further up the stack
    std::string_view key = {};  // of a member; else the place in a list
    std::size_t index = 0;

    [[nodiscard]] Spot member(std::string_view its_key, const Value& held, const Value& its_schema) const {
        return {root, file, its_schema, held, this, its_key, 0};
    }
    [[nodiscard]] Spot item(std::size_t its_index, const Value& held, const Value& its_schema) const {
        return {root, file, its_schema, held, this, {}, its_index};
    }
    [[nodiscard]] Spot under(const Value& other_schema) const {
        return {root, file, other_schema, value, from, key, index};
    }
};

Done fits(const Spot& at);

// Worked out only for a fault: "kinds[3].fields[0].unit".
std::string path_of(const Spot& at) {
    if (at.from == nullptr) return {};
    const std::string above = path_of(*at.from);
    if (at.key.empty()) return above + "[" + std::to_string(at.index) + "]";
    return above.empty() ? std::string(at.key) : above + "." + std::string(at.key);
}

Fault against_schema(const Spot& at, const std::string& what) {
    const std::string where = std::string(at.file) + " line " + std::to_string(at.value.line);
    const std::string path = path_of(at);
    return {Code::method_malformed, (path.empty() ? "the file" : path) + " " + what, where, {}};
}

std::string_view type_of(const Value& value) {
    if (value.map() != nullptr) return "object";
    if (value.list() != nullptr) return "array";
    if (value.text() != nullptr) return "string";
    if (value.boolean() != nullptr) return "boolean";
    return value.number()->is_integer() ? "integer" : "number";
}

std::string value_shown(const Value& value) {
    if (const auto* text = value.text()) return "'" + *text + "'";
    if (const auto* number = value.number()) return number->text();
    return std::string(type_of(value));
}

Done reference(const Value& rule, const Spot& at) {
    constexpr std::string_view kHere = "#/$defs/";
    const Value* defined = at.root.find("$defs");
    if (rule.text() != nullptr && rule.text()->starts_with(kHere) && defined != nullptr) {
        const Value* target = defined->find(rule.text()->substr(kHere.size()));
        if (target != nullptr) return fits(at.under(*target));
    }
    return against_schema(at, "has a schema that points at " + value_shown(rule) + ", which is not there");
}

Done type(const Value& rule, const Spot& at) {
    const std::string_view is = type_of(at.value);
    const std::string wanted = rule.text() == nullptr ? std::string() : *rule.text();
    if (is == wanted || (wanted == "number" && is == "integer")) return {};
    return against_schema(at, "is of type " + std::string(is) + ", it should be " + wanted);
}

Done one_of(const Value& rule, const Spot& at) {
    std::vector<std::string> words;
    if (rule.list() == nullptr) return against_schema(at, "has a schema whose enum is no list");
    for (const Value& allowed : *rule.list()) {
        if (allowed == at.value) return {};
        words.push_back(value_shown(allowed));
    }
    return against_schema(at, "is " + value_shown(at.value) + ", it should be one of " + joined(words, ", "));
}

Done required(const Value& rule, const Spot& at) {
    if (at.value.map() == nullptr || rule.list() == nullptr) return {};
    for (const Value& name : *rule.list()) {
        if (name.text() != nullptr && at.value.find(*name.text()) == nullptr) {
            return against_schema(at, "has no '" + *name.text() + "'");
        }
    }
    return {};
}

Done properties(const Value& rule, const Spot& at) {
    if (at.value.map() == nullptr || rule.map() == nullptr) return {};
    for (const auto& [name, schema] : *rule.map()) {
        const Value* held = at.value.find(name);
        if (held == nullptr) continue;
        if (auto done = fits(at.member(name, *held, schema)); !done) return done;
    }
    return {};
}

// Members that `properties` does not name: none may be there (false), any (true), or they fit a schema.
Done other_members(const Value& rule, const Spot& at) {
    if (at.value.map() == nullptr) return {};
    const Value* named = at.schema.find("properties");
    const bool* allowed = rule.boolean();
    for (const auto& [name, held] : *at.value.map()) {
        if (named != nullptr && named->find(name) != nullptr) continue;
        const Spot here = at.member(name, held, rule);
        if (allowed != nullptr && !*allowed) return against_schema(here, "is not known here");
        if (allowed != nullptr) continue;
        if (auto done = fits(here); !done) return done;
    }
    return {};
}

Done items(const Value& rule, const Spot& at) {
    if (at.value.list() == nullptr) return {};
    std::size_t count = 0;
    for (const Value& item : *at.value.list()) {
        if (auto done = fits(at.item(count++, item, rule)); !done) return done;
    }
    return {};
}

Done least_items(const Value& rule, const Spot& at) {
    if (at.value.list() == nullptr || rule.number() == nullptr) return {};
    const std::size_t count = at.value.list()->size();
    if (static_cast<std::int64_t>(count) >= rule.number()->whole()) return {};
    return against_schema(at, "has " + std::to_string(count) + " pieces, it needs " + rule.number()->text());
}

Done most_items(const Value& rule, const Spot& at) {
    if (at.value.list() == nullptr || rule.number() == nullptr) return {};
    const std::size_t count = at.value.list()->size();
    if (static_cast<std::int64_t>(count) <= rule.number()->whole()) return {};
    return against_schema(at,
                          "has " + std::to_string(count) + " pieces, it may have " + rule.number()->text());
}

Done least_length(const Value& rule, const Spot& at) {
    if (at.value.text() == nullptr || rule.number() == nullptr) return {};
    if (static_cast<std::int64_t>(character_count(*at.value.text())) >= rule.number()->whole()) return {};
    return against_schema(at, "is shorter than " + rule.number()->text() + " characters");
}

Done least(const Value& rule, const Spot& at) {
    const auto* number = at.value.number();
    if (number == nullptr || rule.number() == nullptr || !(*number < *rule.number())) return {};
    return against_schema(at, "is " + number->text() + ", under " + rule.number()->text());
}

Done most(const Value& rule, const Spot& at) {
    const auto* number = at.value.number();
    if (number == nullptr || rule.number() == nullptr || !(*rule.number() < *number)) return {};
    return against_schema(at, "is " + number->text() + ", over " + rule.number()->text());
}

Done above(const Value& rule, const Spot& at) {
    const auto* number = at.value.number();
    if (number == nullptr || rule.number() == nullptr || *rule.number() < *number) return {};
    return against_schema(at, "is " + number->text() + ", it has to be over " + rule.number()->text());
}

Done below(const Value& rule, const Spot& at) {
    const auto* number = at.value.number();
    if (number == nullptr || rule.number() == nullptr || *number < *rule.number()) return {};
    return against_schema(at, "is " + number->text() + ", it has to be under " + rule.number()->text());
}

struct Keyword {
    std::string_view name;
    Done (*check)(const Value& rule,
                  const Spot& at); // nullptr for a remark, which says nothing about the shape
};

// A check says nothing of a value that is not of its type: `type` says that.
constexpr std::array kKeywords{Keyword{"$schema", nullptr},
                               Keyword{"$id", nullptr},
                               Keyword{"$defs", nullptr},
                               Keyword{"title", nullptr},
                               Keyword{"description", nullptr},
                               Keyword{"default", nullptr},
                               Keyword{"$ref", reference},
                               Keyword{"type", type},
                               Keyword{"enum", one_of},
                               Keyword{"required", required},
                               Keyword{"additionalProperties", other_members},
                               Keyword{"properties", properties},
                               Keyword{"minItems", least_items},
                               Keyword{"maxItems", most_items},
                               Keyword{"items", items},
                               Keyword{"minLength", least_length},
                               Keyword{"minimum", least},
                               Keyword{"maximum", most},
                               Keyword{"exclusiveMinimum", above},
                               Keyword{"exclusiveMaximum", below}};

Done fits(const Spot& at) {
    if (at.schema.map() == nullptr) return against_schema(at, "has a schema that is no object");
    for (const auto& [name, rule] : *at.schema.map()) {
        const auto keyword = std::find_if(kKeywords.begin(), kKeywords.end(),
                                          [&name = name](const Keyword& row) { return row.name == name; });
        if (keyword == kKeywords.end()) {
            return against_schema(at, "has a schema with '" + name + "', which is not understood here");
        }
        if (keyword->check == nullptr) continue;
        if (auto done = keyword->check(rule, at); !done) return done;
    }
    return {};
}

} // namespace

Done check_shape(const Value& schema, const Value& value, std::string_view file) {
    return fits({schema, file, schema, value});
}

} // namespace undersheet::method
