// Every language says what English says, and nothing on a paper is said past the words file but what somebody typed.
#include "paper/papers.h"
#include "schema/embedded.h"
#include "tests/paper/approved.h"
#include "tests/paper/marked_words.h"
#include "tests/paper/troubled_roof.h"

#include "base/text.h"
#include "entry/json.h"
#include "paper/completion.h"
#include "paper/text.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <set>

using namespace undersheet;
using namespace undersheet::paper;

namespace {

using Places = std::multiset<std::string>;

Places places_in(const std::string& phrase) {
    const std::regex place(R"(\{[a-z_0-9]+\})");
    Places found;
    for (std::sregex_iterator at(phrase.begin(), phrase.end(), place), end; at != end; ++at)
        found.insert(at->str());
    return found;
}

entry::Value file_of(std::string_view language) {
    const auto text = schema::find("words_" + std::string(language) + ".json");
    REQUIRE(text.has_value());
    return entry::read_json(*text).value();
}

const entry::Map& member_of(const entry::Value& file, std::string_view name) {
    const entry::Value* member = file.find(name);
    REQUIRE(member != nullptr);
    REQUIRE(member->map() != nullptr);
    return *member->map();
}

std::vector<std::string> others() {
    auto all = Words::languages();
    std::erase(all, "en");
    return all;
}

const Words& german() { return **Words::of("de"); }

bool says_choice(const Words& words, const std::string& field, const std::string& word) {
    return words.has("choice." + field + "." + word) || words.has("choice." + word) ||
           words.find_text(field + "." + word) != nullptr || words.find_text(word) != nullptr;
}

// Every text in the sources of that room that has places to fill in.
std::set<std::string> forms_of(const std::string& room) {
    const std::regex form(R"re("((?:[^"\\\n]|\\.)*\{[a-z_]+\}(?:[^"\\\n]|\\.)*)")re");
    std::set<std::string> forms;
    for (const auto& item : std::filesystem::directory_iterator(UNDERSHEET_SOURCE_DIR "/lib/" + room)) {
        if (item.path().extension() != ".cpp") continue;
        std::ifstream in(item.path(), std::ios::binary);
        const std::string source((std::istreambuf_iterator<char>(in)), {});
        for (std::sregex_iterator at(source.begin(), source.end(), form), end; at != end; ++at)
            forms.insert(replaced((*at)[1].str(), R"(\")", "\""));
    }
    return forms;
}

std::string german_text(std::string_view name, const test::Site& site, const std::string& now) {
    const auto job = site.fold(now);
    const auto judged = job::judge(job, test::default_method(), test::default_kinds());
    const auto made = make_paper(name, job, judged, test::test_setting(german()));
    REQUIRE(made.ok());
    return render_text(test::settled(*made), german());
}

} // namespace

TEST_CASE("every language has the phrases of the English file, with the same places to fill in") {
    const auto english_file = file_of("en");
    CHECK_FALSE(others().empty());
    for (const std::string& language : others()) {
        const auto file = file_of(language);
        CHECK(Words::of(language).value()->keys() == Words::english().keys());
        for (const entry::Member& phrase : member_of(english_file, "phrases")) {
            CAPTURE(language, phrase.key);
            const std::string said = file.find("phrases")->text_of(phrase.key);
            CHECK_FALSE(said.empty());
            CHECK(places_in(said) == places_in(*phrase.value.text()));
        }
    }
}

TEST_CASE("every translated text has the places of its English") {
    for (const std::string& language : others()) {
        const auto file = file_of(language);
        for (const entry::Member& text : member_of(file, "texts")) {
            CAPTURE(language, text.key);
            CHECK(places_in(*text.value.text()) == places_in(text.key));
        }
    }
}

TEST_CASE("every rule, remedy, source and doubt of the method is there in every language") {
    for (const std::string& language : others()) {
        const Words& words = **Words::of(language);
        const auto has = [&](const std::string& english) {
            CAPTURE(language, english);
            CHECK((english.empty() || words.find_text(english) != nullptr));
        };
        for (const method::Rule& rule : test::default_method().rules()) {
            has(rule.text);
            has(rule.clears);
            for (const method::Level& level : rule.levels) {
                has(level.clears);
                if (const auto* limit = test::default_method().find_limit(level.limit)) has(limit->source);
            }
        }
        for (const method::Doubt& doubt : test::default_method().doubts()) has(doubt.says);
        for (const method::Stage& stage : test::default_method().stages()) has(job::part_words(stage.name));
    }
}

TEST_CASE("every kind, field and choice of the catalogue is there in every language") {
    for (const std::string& language : others()) {
        const Words& words = **Words::of(language);
        for (const method::Kind& kind : test::default_kinds().kinds()) {
            CAPTURE(language, kind.name);
            CHECK(words.find_text(kind.heading) != nullptr);
            for (const method::Field& field : kind.fields) {
                CAPTURE(field.name);
                CHECK((words.has("field." + field.name) ||
                       words.has("field." + kind.name + "." + field.name) ||
                       words.find_text(field.prompt) != nullptr));
                for (const std::string& choice : field.choices) {
                    CAPTURE(choice);
                    CHECK(says_choice(words, field.name, choice));
                }
            }
        }
    }
}

TEST_CASE("every sentence made of parts below the papers is there in every language") {
    std::set<std::string> forms = forms_of("base"); // where there are none today
    CHECK(forms_of("trade").size() > 15);
    CHECK(forms_of("job").size() > 60);
    for (const char* room : {"trade", "job"}) forms.merge(forms_of(room));
    for (const std::string& language : others())
        for (const std::string& form : forms) {
            CAPTURE(language, form);
            CHECK((*Words::of(language))->find_text(form) != nullptr);
        }
}

TEST_CASE("a language is found by its tag, or by that of its larger family; there is no other") {
    CHECK(Words::of("DE").value()->language() == "de");
    CHECK(Words::of("de-AT").value()->language() == "de");
    CHECK(Words::of("en-GB").value()->language() == "en");
    for (const char* tag : {"tlh", "", "d", "german"}) {
        const auto words = Words::of(tag);
        REQUIRE_FALSE(words.ok());
        CHECK(words.fault().code == Code::no_such_words);
        CHECK(words.fault().clears == "de, en");
    }
}

TEST_CASE("a firm can choose each language there are words for, and no other") {
    auto choices = test::default_kinds().find("firm")->field("language")->choices;
    std::sort(choices.begin(), choices.end());
    auto languages = Words::languages();
    std::sort(languages.begin(), languages.end());
    CHECK(choices == languages);
}

TEST_CASE("figures and places are written as the language writes them, and for programs with a point") {
    CHECK(german().number(1234.5, 1) == "1234,5");
    CHECK(german().number(12345.5, 1) == "12.345,5");
    CHECK(german().number(-1234567, 0) == "-1.234.567");
    CHECK(german().number(*Decimal::parse("22.1")) == "22,1");
    CHECK(german().figures("2.90,1.80") == "2,90/1,80");
    CHECK(german().for_programs().number(12345.5, 1) == "12345.5");
    CHECK(german().for_programs().figures("2.90,1.80") == "2.90,1.80");
    CHECK(Words::english().number(12345.5, 1) == "12345.5");
    CHECK(german().date({2026, 6, 11}) == "11. Juni 2026");
    CHECK(german().listed({"A", "B", "C"}) == "A, B und C");
}

TEST_CASE("what was erased is called so in the language of the paper, and no other name is touched") {
    CHECK(german().held("(erased)") == "(gelöscht)");
    CHECK(german().held("Deck") == "Deck");
    CHECK(german().held("deck") == "deck");
    CHECK(Words::english().held("(erased)") == "(erased)");
}

TEST_CASE("JSON and CSV keep the point in every language") {
    const auto job = test::troubled_roof().fold(test::kHandedOver);
    const auto judged = job::judge(job, test::default_method(), test::default_kinds());
    for (const char* format : {"json", "csv"}) {
        const auto made = write_paper("inspection", format, job, judged, test::test_setting(german()));
        REQUIRE(made.ok());
        CHECK(made->find("Holzfeuchte") != std::string::npos);
        CHECK(made->find("12.1") != std::string::npos);
        CHECK(made->find("12,1") == std::string::npos);
    }
}

TEST_CASE("what is on a paper and was not typed by anybody comes from the words file") {
    const auto marked = test::marked_words("de");
    for (const auto& [site, now] : {std::pair{test::troubled_roof(), test::kHandedOver},
                                    {test::roof_being_inspected(), test::kFirstMorning}}) {
        const auto job = site.fold(now);
        const auto judged = job::judge(job, test::default_method(), test::default_kinds());
        for (const char* name : {"inspection", "stages", "punch", "completion", "care", "office"}) {
            const auto made = make_paper(name, job, judged, test::test_setting(marked));
            REQUIRE(made.ok());
            CAPTURE(name, now);
            CHECK(test::said_past_the_words(*made, job) == std::vector<std::string>());
        }
    }
}

TEST_CASE("a word that is said past the words file is found") {
    const auto job = test::troubled_roof().fold(test::kHandedOver);
    Document paper;
    paper.paragraph("signed by nobody in particular");
    CHECK(test::said_past_the_words(paper, job) ==
          std::vector<std::string>{"signed", "by", "nobody", "in", "particular"});
}

TEST_CASE("the German papers are the approved ones") {
    CHECK(test::differs_from_approved("completion_de.txt", german_text("completion", test::troubled_roof(),
                                                                       test::kHandedOver)) == "");
    CHECK(test::differs_from_approved(
              "inspection_de.txt",
              german_text("inspection", test::roof_being_inspected(), test::kFirstMorning)) == "");
}
