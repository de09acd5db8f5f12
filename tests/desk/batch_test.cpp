#include "tests/desk/desk_support.h"

#include <algorithm>

using namespace undersheet;

namespace {

std::string line(const std::string& kind, const std::string& place, const std::string& data,
                 const std::string& time = "08:10") {
    return R"({"kind":")" + kind + R"(","place":")" + place + R"(","by":"IP","when":"2026-06-11T)" + time +
           R"(:00+01:00","data":)" + data + "}\n";
}

} // namespace

TEST_CASE("lines are kept together, numbers and words as JSON has them") {
    DeskTest test;
    const auto kept = good(test.open().record_lines(
        {}, line("tape", "AB", R"({"m":3.2})") + "\n" + line("tape", "BC", R"({"m":2.1})") +
                line("moisture", "0.3,0.3", R"({"reading_pct":12.1,"board_c":15.5,"setting":"2"})")));
    CHECK(kept.bad.empty());
    CHECK(kept.kept == 3);
    CHECK(good(test.open().history({})).lines.size() == 7);
}

TEST_CASE("every bad line is named by its number, and none of the good ones is kept") {
    DeskTest test;
    const auto refused = good(
        test.open().record_lines({}, line("tape", "AB", R"({"m":3.2})") + line("tape", "BC", R"({"m":-2})") +
                                         line("tap", "CD", R"({"m":2})") + "{\"kind\":\n"));
    REQUIRE(refused.bad.size() == 3);
    CHECK(refused.bad[0].line == 2);
    CHECK(refused.bad[0].fault.code == Code::field_out_of_range);
    CHECK(refused.bad[1].line == 3);
    CHECK(refused.bad[1].fault.code == Code::kind_unknown);
    CHECK(refused.bad[2].line == 4);
    CHECK(refused.kept == 0);
    CHECK(good(test.open().history({})).lines.size() == 4);
    CHECK(good(test.open().verify()).ok);
}

TEST_CASE("a later line stands on an earlier one of the same file") {
    DeskTest test;
    const std::string lines =
        line("edge", "AB", R"({"kind":"gutter"})") + line("edge", "BC", R"({"kind":"kerb"})") +
        line("edge", "CD", R"({"kind":"wall"})") + line("edge", "DA", R"({"kind":"kerb"})") +
        line("chase", "CE+0.10", R"({"height_mm":165})");
    const auto refused = good(test.open().record_lines({}, lines));
    REQUIRE(refused.bad.size() == 1);
    CHECK(refused.bad[0].line == 5);
    CHECK(refused.bad[0].fault.code == Code::place_not_on_roof);
}

TEST_CASE("a decision in a file may be about a finding of the same file") {
    DeskTest test;
    test.survey();
    const std::string low = line("chase", "CD+0.10", R"({"height_mm":130})");
    good(test.open().record_lines({}, low));
    const auto findings = good(test.open().findings({}));
    const auto chase =
        std::find_if(findings.open.begin(), findings.open.end(), [](const desk::FindingLine& finding) {
            return finding.entries.size() > 0 && finding.value.find("130") != std::string::npos;
        });
    REQUIRE(chase != findings.open.end());
    DeskTest fresh;
    fresh.survey();
    const std::string decide =
        line("decide", "",
             R"({"finding":")" + chase->id +
                 R"(","decider":"Caspar Dunmoor","role":"customer","why":"the door cannot be raised"})");
    const auto kept = good(fresh.open().record_lines({}, low + decide));
    CHECK(kept.bad.empty());
    CHECK(good(fresh.open().findings({})).let_go.size() == 1);
}

TEST_CASE("a member that a line does not have is named with those it has") {
    DeskTest test;
    const auto refused = good(test.open().record_lines({}, R"({"kind":"tape","where":"AB","data":{"m":3}})"));
    REQUIRE(refused.bad.size() == 1);
    CHECK(refused.bad[0].fault.where == "where");
}

TEST_CASE("what a line leaves out is taken from the command") {
    DeskTest test;
    CHECK(good(test.open().record_lines(DeskTest::by("WP", "08:10"),
                                        R"({"kind":"tape","place":"AB","data":{"m":3}})"))
              .kept == 1);
    const auto lines = good(test.open().history({})).lines;
    CHECK(lines.back().by == "Wren Pell");
}

TEST_CASE("a line without a time is refused") {
    DeskTest test;
    const auto refused =
        good(test.open().record_lines({"", "IP", ""}, R"({"kind":"tape","place":"AB","data":{"m":3}})"));
    REQUIRE(refused.bad.size() == 1);
    CHECK(refused.bad[0].fault.where == "when");
}

TEST_CASE("a held move in a file names what holds it") {
    DeskTest test;
    const auto refused = good(test.open().record_lines(
        {}, R"({"kind":"begin","part":"lay-out","by":"IP","when":"2026-06-11T08:10:00+01:00","data":{}})"));
    REQUIRE(!refused.bad.empty());
    CHECK(refused.bad[0].fault.code == Code::held);
}
