#include "method/field_rules.h"

#include "base/text.h"
#include "entry/json.h"
#include "tests/support/catalogue.h"

using namespace undersheet;
using namespace undersheet::method;

namespace {

Result<std::vector<std::string>> rules_of(std::string_view kind, std::string_view data) {
    const auto held = *entry::read_json(data);
    return hold_rules(the_kind(kind), [&](const std::string& name) { return held.find(name); });
}

std::string first_question(std::string_view kind, std::string_view data) {
    const auto questions = rules_of(kind, data);
    return !questions ? one_line(questions.fault()) : questions->empty() ? "" : questions->front();
}

} // namespace

TEST_CASE("heads below, flush and proud make the checked ones") {
    CHECK(rules_of("heads", R"({"total":420,"checked":50,"below":48,"flush":1,"proud":1})").ok());
    CHECK(rules_of("heads", R"({"total":420,"checked":50,"below":50})").ok());
    CHECK(first_question("heads", R"({"total":420,"checked":50,"below":48,"flush":1,"proud":2})") ==
          "heads checked: below 48 + flush 1 + proud 2 makes 51, not 50");
    CHECK(first_question("heads", R"({"total":420,"checked":50,"below":49})") ==
          "heads checked: below 49 + flush 0 + proud 0 makes 49, not 50");
    CHECK(rules_of("heads", R"({"checked":50,"below":49})").fault().code == Code::field_out_of_range);
}

TEST_CASE("no more heads are checked, put right or loose than there are") {
    CHECK(rules_of("heads", R"({"total":50,"checked":50,"below":50})").ok());
    CHECK(first_question("heads", R"({"total":49,"checked":50,"below":50})") ==
          "heads checked: 50 is more than total 49");
    CHECK(rules_of("heads", R"({"checked":50,"below":50,"reset":50,"loose":50})").ok());
    CHECK(first_question("heads", R"({"checked":50,"below":50,"reset":51})") ==
          "heads reset: 51 is more than checked 50");
    CHECK(first_question("heads", R"({"checked":50,"below":50,"loose":51})") ==
          "heads loose: 51 is more than checked 50");
}

TEST_CASE("what was not looked at breaks no rule") {
    CHECK(first_question("heads", R"({"total":10,"checked":"not_looked","below":"not_looked"})").empty());
    CHECK(first_question("heads", R"({"total":"not_looked","checked":50,"below":"cant_reach"})").empty());
}

TEST_CASE("times of one step run forwards, whatever their offsets") {
    CHECK(
        rules_of("tick", R"({"coat_end":"2026-06-11T11:20:00+01:00","mated_at":"2026-06-11T11:20:00+01:00"})")
            .ok());
    CHECK(rules_of("tick", R"({"coat_end":"2026-06-11T11:20:00+01:00","mated_at":"2026-06-11T10:43:00Z"})")
              .ok());
    CHECK(first_question(
              "tick", R"({"coat_end":"2026-06-11T11:20:00+01:00","mated_at":"2026-06-11T11:19:59+01:00"})") ==
          "tick coat_end: 2026-06-11T11:20:00+01:00 is after mated_at 2026-06-11T11:19:59+01:00");
    CHECK_FALSE(
        rules_of("work", R"({"rest_start":"2026-06-11T10:00:00Z","rest_end":"2026-06-11T09:30:00Z"})").ok());
}

TEST_CASE("a rule that only asks becomes a question") {
    CHECK(first_question("air", R"({"wind_ms":5,"gust_ms":5})").empty());
    CHECK(first_question("air", R"({"wind_ms":5.1,"gust_ms":5})") ==
          "air wind_ms: 5.1 is more than gust_ms 5");
    CHECK(first_question("tin", R"({"opened_on":"2026-12-01","use_by":"2026-11-30"})") ==
          "tin opened_on: 2026-12-01 is after use_by 2026-11-30");
}

TEST_CASE("other says what, and a notice has its number: else it is asked for") {
    CHECK(first_question("board", R"({"material":"other"})") ==
          "board material: other was typed, but no material_text");
    CHECK(first_question("board", R"({"material":"other","material_text":"old matchboard"})").empty());
    CHECK(first_question("board", R"({"material":"osb3"})").empty());
    CHECK(first_question("board", R"({"material":"not_looked"})").empty());
    CHECK(first_question("use", R"({"ended":"yes","why":"gone off"})") ==
          "use ended: yes was typed, but no ended_at");
    CHECK(first_question("use", R"({"ended":"no"})").empty());
}
