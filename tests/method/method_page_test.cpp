// docs/method.md against the files it explains: what a firm may write has to stand on the page.
#include "entry/json.h"
#include "method/method.h"
#include "schema/embedded.h"

#include <catch2/catch.hpp>

#include <fstream>
#include <iterator>
#include <set>

using namespace undersheet;
using entry::Value;

namespace {

using Words = std::set<std::string>;

const std::string& page() {
    static const std::string text = [] {
        std::ifstream in(UNDERSHEET_SOURCE_DIR "/docs/method.md", std::ios::binary);
        return std::string(std::istreambuf_iterator<char>(in), {});
    }();
    return text;
}

// In backticks, or as the heading of its section.
bool is_explained(const std::string& word) {
    return page().find("`" + word + "`") != std::string::npos ||
           page().find("\n## " + word + "\n") != std::string::npos;
}

// Every member and every word of a choice, wherever they stand in a schema.
void gather(const Value& schema, Words& words) {
    if (const auto* items = schema.list()) {
        for (const Value& item : *items) gather(item, words);
    }
    if (schema.map() == nullptr) return;
    for (const auto& [name, value] : *schema.map()) {
        if (name == "properties") {
            for (const auto& member : *value.map()) words.insert(member.key);
        }
        if (name == "enum") {
            for (const Value& word : *value.list()) words.insert(*word.text());
        }
        gather(value, words);
    }
}

const method::Method& own_method() {
    static const auto read = method::Method::read(schema::method_json());
    return *read;
}

// The rows of the table under a heading: their first word between backticks.
Words first_words(const std::string& heading) {
    Words words;
    auto at = page().find("\n" + heading + "\n");
    if (at == std::string::npos) return words;
    const auto end = page().find("\n#", at + 1);
    while ((at = page().find("\n| `", at)) < end) {
        at += 4;
        words.insert(page().substr(at, page().find('`', at) - at));
    }
    words.erase("worked"); // the head of a table
    return words;
}

} // namespace

TEST_CASE("the page on the method file explains every member and every word its schema knows") {
    const auto schema = entry::read_json(schema::method_schema_json());
    REQUIRE(schema.ok());
    Words words;
    gather(*schema, words);
    REQUIRE(words.size() > 60);
    for (const std::string& word : words) {
        INFO(word);
        CHECK(is_explained(word));
    }
}

TEST_CASE("the page on the method file lists the computations there are, and no others") {
    Words worked;
    for (const auto& rule : own_method().rules()) {
        if (!rule.worked.empty()) worked.insert(rule.worked);
    }
    CHECK(first_words("### Computations") == worked);
}

TEST_CASE("the page on the method file lists the guards there are, and no others") {
    Words start, sign;
    for (const auto& stage : own_method().stages()) {
        start.insert(stage.start_guards.begin(), stage.start_guards.end());
        sign.insert(stage.sign_guards.begin(), stage.sign_guards.end());
    }
    CHECK(first_words("### Guards before the start") == start);
    CHECK(first_words("### Guards before the signature") == sign);
}

TEST_CASE("the page on the method file lists the tests and the severities of the schema") {
    const auto schema = entry::read_json(schema::method_schema_json());
    for (const auto& [definition, heading] :
         {std::pair{"test", "### Tests"}, std::pair{"severity", "### Severities"}}) {
        Words known;
        for (const Value& word : schema->find("$defs")->find(definition)->list_of("enum"))
            known.insert(*word.text());
        CHECK(first_words(heading) == known);
    }
}
