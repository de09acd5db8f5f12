#include "method/stored.h"

#include "entry/json.h"
#include "tests/support/catalogue.h"

using namespace undersheet;
using namespace undersheet::method;

namespace {

std::string refusal(std::string_view kind, std::string_view data) {
    const auto read = entry::read_json(data);
    REQUIRE(read.ok());
    const auto done = check_stored(the_kind(kind), *read);
    return done ? "" : one_line(done.fault());
}

} // namespace

TEST_CASE("a number that is kept lies in its range: at the ends, one step within and one beyond") {
    for (const char* good : {"0", "0.1", "99.9", "100"})
        CHECK(refusal("air", std::string(R"({"rh_pct":)") + good + "}") == "");
    for (const char* bad : {"-0.1", "100.1", "999999999999999"})
        CHECK(refusal("air", std::string(R"({"rh_pct":)") + bad + "}") ==
              "air rh_pct: " + std::string(bad) + " is nothing it can hold");
}

TEST_CASE("a word that is kept is one of its choices, or says that nobody looked") {
    CHECK(refusal("edge", R"({"kind":"gutter"})") == "");
    CHECK(refusal("edge", R"({"kind":"cliff"})") == "edge kind: \"cliff\" is nothing it can hold");
    CHECK(refusal("site", R"({"asbestos":"not_looked"})") == "");
    CHECK(refusal("site", R"({"asbestos":"cant_reach"})") == "");
    CHECK(refusal("site", R"({"asbestos":"perhaps"})") != "");
    CHECK(refusal("day", R"({"briefing":"yes"})") == "");
    CHECK(refusal("day", R"({"briefing":true})") != "");
}

TEST_CASE("every type takes what is kept for it and nothing of another shape") {
    CHECK(refusal("day", R"({"people":["p0123456789"]})") == "");
    CHECK(refusal("day", R"({"people":"p0123456789"})") == "");
    CHECK(refusal("day", R"({"people":{"p":"p0123456789"}})") != "");
    CHECK(refusal("day", R"({"people":[1]})") != "");
    CHECK(refusal("tin", R"({"use_by":"2027-01-31"})") == "");
    CHECK(refusal("tin", R"({"use_by":"2027-01-32"})") != "");
    CHECK(refusal("tick", R"({"coat_end":"2026-06-11T11:20:00+01:00"})") == "");
    CHECK(refusal("tick", R"({"coat_end":"11:20"})") != "");
    CHECK(refusal("correct", R"({"fields":{"air_c":13}})") == "");
    CHECK(refusal("correct", R"({"fields":[]})") != "");
    CHECK(refusal("chase", R"({"note":["several"]})") != "");
    CHECK(refusal("chase", "[]") == "chase: holds no fields");
}

TEST_CASE("a field the kind does not have, and a personal one, are no breach") {
    CHECK(refusal("air", R"({"moon":"full"})") == "");
    CHECK(refusal("site", R"({"customer":{"cid":"x"},"address":"3 Quay Lane"})") == "");
}

TEST_CASE("what is typed and kept passes, field by field through the whole catalogue") {
    int passed = 0;
    for (const Kind& kind : the_catalogue().kinds()) {
        for (const Field& field : kind.fields) {
            for (const char* text : {"1", "yes", "B1", "a few words", "2026-06-11", "AB", "0,0 1,0 1,1"}) {
                const auto kept = check_typed(kind.name, {{field.name, entry::Value(text)}},
                                              kind.place_required ? "AB" : "");
                if (!kept.ok()) continue;
                INFO(kind.name << " " << field.name << " " << text);
                CHECK(check_stored(kind, kept->data).ok());
                ++passed;
            }
        }
    }
    CHECK(passed > 200);
}
