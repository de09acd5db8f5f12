#include "job/method_check.h"
#include "tests/support/site.h"

using namespace undersheet;

namespace {

std::string refusal(std::string_view what, std::string_view by) {
    std::string text(schema::method_json());
    const auto at = text.find(what);
    REQUIRE(at != std::string::npos);
    const auto own = method::Method::read(text.replace(at, what.size(), by));
    REQUIRE(own.ok());
    const auto fits = job::method_fits(*own, test::default_method(), test::default_kinds());
    return fits ? std::string() : one_line(fits.fault());
}

} // namespace

TEST_CASE("the usual method fits, and so does one with another figure") {
    CHECK(refusal("\"version\": \"1\"", "\"version\": \"1\"").empty());
    CHECK(refusal("\"key\": \"moisture_stop_pct\", \"value\": 20",
                  "\"key\": \"moisture_stop_pct\", \"value\": 19")
              .empty());
}

TEST_CASE("a guard that nobody knows is refused, with the one that was meant") {
    CHECK(refusal("\"start_guards\": [\"safety\"", "\"start_guards\": [\"safty\"") ==
          "method file: there is no guard 'safty'; did you mean 'safety'?");
}

TEST_CASE("a computation that nobody knows is refused") {
    CHECK(refusal("\"worked\": \"alone\"", "\"worked\": \"allone\"") ==
          "method file: rule 'alone': nothing works out 'allone'; use a computation of the usual method");
}

TEST_CASE("a limit that judging looks up by name cannot be left out") {
    CHECK(refusal("\"key\": \"reading_age_min\"", "\"key\": \"reading_age\"") ==
          "method file: the limit 'reading_age_min' is missing; give it, with its source");
}

TEST_CASE("a worked-out rule keeps its levels") {
    CHECK(refusal(
              "{\"severity\": \"stop\", \"holds\": [\"*:start\"]}, {\"severity\": \"note\", \"holds\": []}]",
              "{\"severity\": \"note\", \"holds\": []}]")
              .starts_with("method file: rule 'alone' lacks its level 'stop'"));
}

TEST_CASE("a rule about a field that is not in the catalogue is refused") {
    CHECK(refusal("\"fields\": [\"swollen_mm\"]", "\"fields\": [\"swolen_mm\"]") ==
          "method file: rule 'board_swollen': board has no field 'swolen_mm'; see kinds");
}

TEST_CASE("a doubt that could never be raised is refused") {
    CHECK(refusal(R"("field": "proud", "is": "over")", R"("field": "proud", "is": "under")") ==
          "method file: the doubt 'a proud head was found after the deck was signed' would never be raised; "
          "narrow it by "
          "one_of with words, or by over with a limit");
}

TEST_CASE("a limit of a thousand times the usual figure is believed, and nothing beyond") {
    CHECK(refusal("\"key\": \"rest_min\", \"value\": 30", "\"key\": \"rest_min\", \"value\": 29999").empty());
    CHECK(refusal("\"key\": \"rest_min\", \"value\": 30", "\"key\": \"rest_min\", \"value\": 30000").empty());
    CHECK(refusal("\"key\": \"rest_min\", \"value\": 30", "\"key\": \"rest_min\", \"value\": 30001") ==
          "method file: the limit 'rest_min' is 30001, usual is 30; at most 30000 is believed");
    CHECK(refusal("\"key\": \"rest_min\", \"value\": 30", "\"key\": \"rest_min\", \"value\": -30001")
              .starts_with("method file: the limit 'rest_min' is -30001"));
}
