#include "tests/desk/desk_support.h"

#include <algorithm>

using namespace undersheet;

namespace {

// A chase at 130 mm: under 150, over 100.
desk::FindingLine low_chase(DeskTest& test) {
    test.survey();
    good(test.record("chase", {"height_mm=130"}, "CD+0.10"));
    for (const auto& finding : good(test.open().findings({})).open) {
        if (finding.value.find("130") != std::string::npos) return finding;
    }
    throw std::logic_error("a chase of 130 mm is no finding");
}

} // namespace

TEST_CASE("a finding carries value, limit, source, what clears it and the entries it stands on") {
    DeskTest test;
    const auto finding = low_chase(test);
    CHECK(finding.severity == "put_right");
    CHECK(finding.place == "CD+0.10");
    CHECK(finding.limit.find("150") != std::string::npos);
    CHECK_FALSE(finding.source.empty());
    CHECK_FALSE(finding.clears.empty());
    CHECK(finding.entries.size() == 1);
}

TEST_CASE("a named decision lets a limit go, and is shown for ever") {
    DeskTest test;
    const auto finding = low_chase(test);
    good(test.open().decide(DeskTest::by("IP", "08:30"),
                            {finding.id, "Caspar Dunmoor", "customer", "the door cannot be raised"}));
    const auto after = good(test.open().findings({}));
    REQUIRE(after.let_go.size() == 1);
    CHECK(after.let_go[0].id == finding.id);
    CHECK(after.let_go[0].decided.find("Caspar Dunmoor, customer: the door cannot be raised") == 0);
}

TEST_CASE("a decision needs a reason of ten characters, not nine") {
    DeskTest test;
    const auto finding = low_chase(test);
    CHECK(!test.open()
               .decide(DeskTest::by("IP", "08:30"), {finding.id, "Caspar Dunmoor", "customer", "123456789"})
               .ok());
    CHECK(test.open()
              .decide(DeskTest::by("IP", "08:30"), {finding.id, "Caspar Dunmoor", "customer", "1234567890"})
              .ok());
}

TEST_CASE("nobody can let fragile places go that nobody covered") {
    DeskTest test;
    good(test.record("site", {"fragile=uncovered", "fragile_where=rooflight"}));
    const auto findings = good(test.open().findings({})).open;
    const auto fixed = std::find_if(findings.begin(), findings.end(),
                                    [](const desk::FindingLine& f) { return !f.decidable; });
    REQUIRE(fixed != findings.end());
    const auto refused = test.open().decide(DeskTest::by("IP", "08:30"),
                                            {fixed->id, "Caspar Dunmoor", "customer", "we will be careful"});
    REQUIRE(!refused.ok());
    CHECK(refused.fault().code == Code::not_decidable);
}

TEST_CASE("a finding that is not there is refused with the nearest one") {
    DeskTest test;
    std::string wrong = low_chase(test).id;
    wrong.back() = '9';
    const auto refused = test.open().give_reason(DeskTest::by("IP", "08:30"), {wrong, "because"});
    REQUIRE(!refused.ok());
    CHECK(refused.fault().code == Code::no_such_finding);
    CHECK(refused.fault().clears.starts_with("did you mean"));
}

TEST_CASE("a reason and who was told stand beside the finding") {
    DeskTest test;
    const auto finding = low_chase(test);
    good(
        test.open().give_reason(DeskTest::by("IP", "08:30"), {finding.id, "step to be raised by the mason"}));
    good(test.open().note_told(DeskTest::by("IP", "08:31"), {finding.id, "Caspar Dunmoor"}));
    for (const auto& line : good(test.open().findings({})).open) {
        if (line.id != finding.id) continue;
        CHECK(line.reason.find("step to be raised by the mason") == 0);
        CHECK(line.told.find("Caspar Dunmoor") == 0);
        return;
    }
    FAIL("the finding is gone");
}

TEST_CASE("why shows the chain from what was recorded to the limit and its source") {
    DeskTest test;
    const auto finding = low_chase(test);
    const auto why = good(test.open().why({}, finding.id));
    std::vector<std::string> headings;
    for (const auto& step : why.steps) headings.push_back(step.heading);
    CHECK(std::count(headings.begin(), headings.end(), "What was recorded") == 1);
    CHECK(std::count(headings.begin(), headings.end(), "Limit") == 1);
    CHECK(std::count(headings.begin(), headings.end(), "Source") == 1);
    CHECK(why.steps[0].lines[0].find("height 130 mm") != std::string::npos);
}

TEST_CASE("a step that holds a part can be let go by name, and then stands with the departures") {
    DeskTest test;
    test.survey();
    test.open_the_day();
    REQUIRE(good(test.open().move(DeskTest::by("IP", "08:20"), {"begin", "deck", "", {}})).held_by.empty());
    const auto decide = [&](const std::string& step) {
        return test.open().decide(DeskTest::by("IP", "08:30"),
                                  {step, "Odo Fennick", "surveyor", "string lines instead of levels"});
    };
    REQUIRE(decide("step@deck:levels").ok());
    const auto let_go = good(test.open().findings({})).let_go;
    REQUIRE(let_go.size() == 1);
    CHECK(let_go[0].says.starts_with("deck: not done: "));
    REQUIRE(decide("step@deck:levels").ok()); // said twice, it stands once
    CHECK(good(test.open().findings({})).let_go.size() == 1);
    CHECK(decide("step@deck:paint").fault().code == Code::no_such_finding);
    CHECK(decide("step@band/AB:finger").fault().code ==
          Code::no_such_finding); // not begun: holds nothing yet
}

TEST_CASE("why answers for a stage and for a part, and for nothing else") {
    DeskTest test;
    test.survey();
    CHECK(good(test.open().why({}, "band")).verdict == "0 of 3 parts settled");
    CHECK(good(test.open().why({}, "band/AB")).steps[0].heading.find("held by") != std::string::npos);
    CHECK(test.open().why({}, "bnad").fault().clears == "did you mean 'band'?");
}

TEST_CASE("a row put on the punch list by hand is cleared by a photograph or a reason") {
    DeskTest test;
    test.survey();
    good(test.open().punch_add(DeskTest::by("WP", "08:30"),
                               {"scuff on the kerb trim", "BC", "", "put_right"}));
    CHECK(test.open().punch_clear(DeskTest::by("WP", "08:40"), {"1", "", {}}).fault().code ==
          Code::reason_needed);
    CHECK(test.open().punch_look(DeskTest::by("IP", "08:40"), "1").fault().code == Code::not_from_here);
    good(test.open().punch_clear(DeskTest::by("WP", "08:40"), {"1", "rubbed out, camera was wet", {}}));
    good(test.open().punch_look(DeskTest::by("IP", "08:50"), "1", "sits well"));
    for (const auto& row : good(test.open().punch({})).rows) {
        if (row.number != "1") continue;
        CHECK(!row.open);
        CHECK(row.looked_by == "Isolde Pell");
        return;
    }
    FAIL("the row is gone");
}

TEST_CASE("a note on the punch list needs no photograph to be cleared") {
    DeskTest test;
    good(test.open().punch_add(DeskTest::by("WP", "08:30"), {"sweep the path", "", "", "note"}));
    CHECK(test.open().punch_clear(DeskTest::by("WP", "08:40"), {"1", "", {}}).ok());
    CHECK(test.open().punch_clear(DeskTest::by("WP", "08:40"), {"1", "", {}}).fault().code ==
          Code::not_from_here);
}

TEST_CASE("two rows are joined into one, a row not into itself") {
    DeskTest test;
    good(test.open().punch_add(DeskTest::by("WP", "08:30"), {"scuff on the trim", "", "", ""}));
    good(test.open().punch_add(DeskTest::by("WP", "08:30"), {"trim scratched", "", "", ""}));
    CHECK(!test.open().punch_join(DeskTest::by("WP", "08:40"), "1", "1").ok());
    CHECK(!test.open().punch_join(DeskTest::by("WP", "08:40"), "1", "3").ok());
    good(test.open().punch_join(DeskTest::by("WP", "08:40"), "1", "2"));
    const auto rows = good(test.open().punch({})).rows;
    CHECK(std::count_if(rows.begin(), rows.end(),
                        [](const desk::PunchLine& row) { return row.number == "2"; }) == 0);
}
