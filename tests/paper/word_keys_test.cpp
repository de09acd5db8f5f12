// The words file and the sources agree: no key without a phrase, no phrase without a use.
#include "paper/words.h"

#include "job/parts.h"
#include "tests/job/takeoff_site.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <set>

using namespace undersheet;
using namespace undersheet::paper;

namespace {

using Keys = std::set<std::string>;

std::string all_sources() {
    std::string all;
    for (const auto& item : std::filesystem::directory_iterator(UNDERSHEET_SOURCE_DIR "/lib/paper")) {
        if (item.path().extension() != ".cpp") continue;
        std::ifstream in(item.path(), std::ios::binary);
        all.append(std::istreambuf_iterator<char>(in), {});
    }
    return all;
}

Keys every(const std::string& text, const char* pattern) {
    const std::regex expression(pattern);
    Keys found;
    for (std::sregex_iterator at(text.begin(), text.end(), expression), end; at != end; ++at)
        found.insert((*at)[1]);
    return found;
}

// Keys as they stand in the sources: "who.by"; and the headers of tables, which are keys under "column.".
Keys keys_said() {
    const std::string sources = all_sources();
    Keys keys = every(sources, R"re("([a-z][a-z0-9_]*(?:\.[a-z0-9_]+)+)")re");
    for (const std::string& list : every(sources, R"re(making\.table\([^;]*?\{("[a-z0-9_#", \n]+")\})re"))
        for (const std::string& header : every(list, R"re("([a-z0-9_]+)#?")re"))
            keys.insert("column." + header);
    return keys;
}

// Keys that are put together while running, from what the method and the catalogue can say.
Keys keys_put_together() {
    Keys keys{"inspection.of.board",
              "inspection.of.heads",
              "inspection.of.moisture",
              "inspection.of.level",
              "mark.G",
              "mark.M",
              "choice.not_looked",
              "choice.cant_reach",
              "choice.yes",
              "choice.no",
              "money.GBP",
              "money.EUR",
              "unit.m2",
              "unit.cartridge"};
    for (const auto& made : {test::taken_off(test::ell())})
        for (const auto& line : made.lines) keys.insert("item." + line.name);
    for (int state = 0; state < job::kStates; ++state)
        keys.insert("state." + std::string(job::state_word(static_cast<job::State>(state))));
    for (const method::Kind& kind : test::default_kinds().kinds())
        for (const method::Field& field : kind.fields) {
            keys.insert(
                {"field." + field.name, "field." + kind.name + "." + field.name, "unit." + field.unit});
            for (const std::string& word : field.choices)
                keys.insert({"choice." + word, "choice." + field.name + "." + word});
        }
    return keys;
}

bool is_said(const std::string& key, const Keys& keys) {
    const std::string stem = key.substr(0, key.rfind('.'));
    const bool counts = key.ends_with(".one") || key.ends_with(".many");
    return keys.count(key) == 1 || (counts && keys.count(stem) == 1);
}

} // namespace

TEST_CASE("every key the papers say is in the words file") {
    const Words& words = Words::english();
    const Keys said = keys_said();
    CHECK(said.size() > 200);
    for (const std::string& key : said) {
        CAPTURE(key);
        CHECK((words.has(key) || (words.has(key + ".one") && words.has(key + ".many"))));
    }
}

TEST_CASE("every state of a part, every mark of a source and every unit of the catalogue has its words") {
    for (const std::string& key : keys_put_together()) {
        if (!key.starts_with("state.") && !key.starts_with("mark.")) continue;
        CAPTURE(key);
        CHECK(Words::english().has(key));
    }
    for (const method::Kind& kind : test::default_kinds().kinds())
        for (const method::Field& field : kind.fields) {
            CAPTURE(kind.name, field.name);
            CHECK((field.unit.empty() || Words::english().has("unit." + field.unit)));
        }
}

TEST_CASE("every field that stands on an inspection by its name has a label of its own") {
    for (const char* name : {"site", "structure", "abutment", "gutter", "opening", "sheet"})
        for (const method::Field& field : test::default_kinds().find(name)->fields) {
            if (field.personal || field.name == "label" || field.unit == "deg" || field.name == "above")
                continue;
            CAPTURE(name, field.name);
            CHECK((Words::english().has("field." + field.name) ||
                   Words::english().has("field." + std::string(name) + "." + field.name)));
        }
}

TEST_CASE("every phrase of the words file is said somewhere") {
    Keys keys = keys_said();
    keys.merge(keys_put_together());
    keys.insert({"nothing_recorded", "by", "span", "m2", "m", "mm", "date", "listed"});
    for (const std::string& key : Words::english().keys()) {
        CAPTURE(key);
        CHECK(is_said(key, keys));
    }
}

TEST_CASE("no paper has to name a field of a reading by the question that asks for it") {
    constexpr std::size_t kMostLabel = 30; // bytes; a question runs on
    for (const method::Kind& kind : test::default_kinds().kinds()) {
        if (kind.group != method::Group::reading) continue;
        for (const method::Field& field : kind.fields) {
            if (field.personal) continue;
            CAPTURE(kind.name, field.name);
            const auto& words = Words::english();
            const std::string own = "field." + kind.name + "." + field.name, shared = "field." + field.name;
            REQUIRE((words.has(own) || words.has(shared)));
            CHECK(words.say(words.has(own) ? own : shared).size() <= kMostLabel);
        }
    }
}
