#include "method/kinds.h"

#include "base/text.h"
#include "entry/json.h"
#include "tests/support/catalogue.h"

#include <algorithm>
#include <set>

using namespace undersheet;
using namespace undersheet::method;

namespace {

// The names of design's list and of the stage events: scripts rely on them.
const std::vector<std::string> kNames{"site",        "day",        "structure",
                                      "board",       "heads",      "joint",
                                      "moisture",    "level",      "tape",
                                      "edge",        "section",    "abutment",
                                      "chase",       "gutter",     "opening",
                                      "own_key",     "patch",      "alter",
                                      "sheet",       "crease",     "tin",
                                      "use",         "air",        "photo",
                                      "work",        "look",       "trim",
                                      "begin",       "tick",       "pause",
                                      "resume",      "finish",     "sign",
                                      "send_back",   "confirm",    "reopen",
                                      "leave_out",   "take_back",  "decide",
                                      "reason",      "told",       "punch_add",
                                      "punch_clear", "punch_look", "punch_join",
                                      "settle",      "correct",    "withdraw",
                                      "issue",       "supplement", "supplement_sign",
                                      "firm",        "person",     "open",
                                      "erase",       "retention",  "revoke"};

const Field& field_of(std::string_view kind, std::string_view name) {
    const Field* field = the_kind(kind).field(name);
    if (field == nullptr) throw std::logic_error("no such field: " + std::string(name));
    return *field;
}

// Cut as a shell would: blanks between words, quotes hold them together.
std::vector<std::string> words_of(const std::string& command) {
    std::vector<std::string> words;
    bool quoted = false, begun = false;
    for (const char c : command) {
        if (c == '"') {
            quoted = !quoted;
        } else if (c == ' ' && !quoted) {
            begun = false;
            continue;
        }
        if (!begun) words.emplace_back();
        begun = true;
        if (c != '"') words.back() += c;
    }
    return words;
}

// What an example types: name=value, --name value, and bare words for the fields that must be there, in their order.
Input example_of(const Kind& kind) {
    Input input = typed({});
    const auto words = words_of(kind.example);
    std::vector<std::string> bare;
    for (std::size_t i = 1; i < words.size(); ++i) {
        const auto equals = words[i].find('=');
        if (words[i] == "--at") {
            input.place = words[++i];
        } else if (words[i] == "--part") {
            ++i;
        } else if (words[i].starts_with("--")) {
            std::string field = words[i].substr(2); // an option is its field with dashes
            std::replace(field.begin(), field.end(), '-', '_');
            input.typed.emplace_back(std::move(field), words[++i]);
        } else if (equals != std::string::npos) {
            input.typed.emplace_back(words[i].substr(0, equals), words[i].substr(equals + 1));
        } else {
            bare.push_back(words[i]);
        }
    }
    const auto verbs =
        static_cast<std::ptrdiff_t>(kind.group == Group::reading || kind.name.starts_with("punch") ? 2 : 1);
    bare.erase(bare.begin(),
               bare.begin() + verbs + (kind.part_required && kind.group == Group::event ? 1 : 0));
    for (const Field& field : kind.fields) {
        const auto there = [&](const auto& pair) { return pair.first == field.name; };
        if (!field.required || bare.empty() || std::any_of(input.typed.begin(), input.typed.end(), there))
            continue;
        input.typed.emplace_back(field.name, bare.front());
        bare.erase(bare.begin());
    }
    CHECK(bare.empty());
    return input;
}

} // namespace

TEST_CASE("the catalogue has every kind that scripts rely on, and no other") {
    std::vector<std::string> names;
    for (const Kind& kind : the_catalogue().kinds()) names.push_back(kind.name);
    CHECK(std::set<std::string>(names.begin(), names.end()) ==
          std::set<std::string>(kNames.begin(), kNames.end()));
    CHECK(names.size() == kNames.size());
}

TEST_CASE("the catalogue is named by the hash of its bytes") {
    CHECK(the_catalogue().hash() == entry::sha256(schema::kinds_json()));
    CHECK(Catalogue::read(std::string(schema::kinds_json()) + "\n")->hash() != the_catalogue().hash());
}

TEST_CASE("a field carries what the data says of it") {
    const Field& reading = field_of("moisture", "reading_pct");
    CHECK(reading.type == FieldType::number);
    CHECK(reading.unit == "pct");
    CHECK(reading.range->least == Decimal::of(0));
    CHECK(reading.range->most == Decimal::of(60));
    CHECK(reading.usual->least == Decimal::of(7));
    CHECK(reading.usual->most == Decimal::of(28));
    CHECK(reading.required);
    CHECK(reading.may_skip);
    CHECK(field_of("leave_out", "why").shortest == 10);
    CHECK(field_of("site", "customer").personal);
    CHECK(field_of("level", "run").fallback == "1");
    CHECK(the_kind("level").key_fields == std::vector<std::string>{"run", "closing"});
    CHECK(the_kind("chase").place_required);
    CHECK(the_kind("use").part_required);
    CHECK(the_kind("finish").automatic);
}

TEST_CASE("the fields that work and tick share are the same ones") {
    CHECK(the_kind("work").fields.size() == the_kind("tick").fields.size());
    CHECK(field_of("work", "coat_end").line == field_of("tick", "coat_end").line);
    CHECK(field_of("tick", "cover_mm").may_skip);
}

TEST_CASE("names of people and what customers say are personal") {
    const std::vector<std::pair<std::string, std::string>> fields{{"site", "customer"},
                                                                  {"site", "address"},
                                                                  {"site", "phone"},
                                                                  {"site", "email"},
                                                                  {"look", "complaint"},
                                                                  {"sign", "customer"},
                                                                  {"supplement", "complaint"},
                                                                  {"supplement_sign", "customer"},
                                                                  {"sign", "strokes"},
                                                                  {"decide", "decider"},
                                                                  {"told", "whom"},
                                                                  {"leave_out", "agreed_by"},
                                                                  {"person", "name"},
                                                                  {"person", "initials"},
                                                                  {"person", "cards"}};
    for (const auto& [kind, field] : fields) CHECK(field_of(kind, field).personal);
}

TEST_CASE("every example of a reading or an event is taken as it stands") {
    int count = 0;
    for (const Kind& kind : the_catalogue().kinds()) {
        if (kind.automatic || kind.group == Group::office || kind.name == "photo") continue;
        INFO(kind.example);
        Input input = example_of(kind);
        if (kind.name == "correct") {
            for (const char* name : {"total", "reading_pct"}) {
                std::erase_if(input.typed, [&](const auto& pair) { return pair.first == name; });
            }
        }
        const auto checked = check(the_catalogue(), kind, input);
        if (!checked) FAIL(one_line(checked.fault()));
        CHECK(kind.example.find("undersheet ") == 0);
        ++count;
    }
    CHECK(count > 40);
}

TEST_CASE("an unknown kind is refused with the nearest, or with the list") {
    const Fault slip = unknown_kind(the_catalogue(), "moistur");
    CHECK(slip.code == Code::kind_unknown);
    CHECK(one_line(slip).starts_with(
        "'moistur' is nothing that can be recorded; did you mean moisture? there are site, day"));
    const Fault far = unknown_kind(the_catalogue(), "xylophone");
    CHECK(far.clears.starts_with("there are site, day"));
    CHECK(far.clears.find("finish") == std::string::npos); // nobody types it
    CHECK(the_catalogue().find("xylophone") == nullptr);
}
