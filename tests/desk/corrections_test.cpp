#include "tests/desk/desk_support.h"

using namespace undersheet;

namespace {

const desk::Fields kMoisture = {"reading_pct=12.1", "board_c=15.5", "setting=2"};

Result<desk::Kept> withdraw(DeskTest& test, const std::string& entry, const std::string& by,
                            const std::string& when) {
    return test.open().withdraw(DeskTest::by(by, when), {entry, "a mis-tap"});
}

std::string begin_deck(DeskTest& test, const std::string& when) {
    test.survey();
    test.open_the_day();
    const auto kept = good(test.open().move(DeskTest::by("IP", when), {"begin", "deck", "", {}}));
    if (!kept.is_kept()) throw std::logic_error(kept.held_by[0].why);
    return kept.name;
}

} // namespace

TEST_CASE("a correction stands in the old value's place, and the history shows both") {
    DeskTest test;
    const auto first = good(test.record("moisture", kMoisture, "0.3,0.3", "08:35"));
    good(test.open().correct(DeskTest::by("IP", "08:40"),
                             {first.name, {"reading_pct=21"}, "read the wrong line"}));
    const auto lines = good(test.open().history({}, first.name)).lines;
    REQUIRE(lines.size() == 2);
    REQUIRE(lines[1].changes.size() == 1);
    CHECK(lines[1].changes[0] == "reading 12.1 % -> 21");
    CHECK(lines[0].says.find("12.1") != std::string::npos);
    CHECK(lines[0].marks.back().find("corrected by") == 0);
}

TEST_CASE("a second correction shows what the first one made of it") {
    DeskTest test;
    const auto first = good(test.record("moisture", kMoisture, "0.3,0.3", "08:35"));
    good(test.open().correct(DeskTest::by("IP", "08:40"), {first.name, {"reading_pct=13"}, "wrong line"}));
    good(test.open().correct(DeskTest::by("IP", "08:41"), {first.name, {"reading_pct=14"}, "wrong again"}));
    CHECK(good(test.open().history({}, first.name)).lines.back().changes[0] == "reading 13 % -> 14");
}

TEST_CASE("a correction is held to the range of the field it corrects") {
    DeskTest test;
    const auto first = good(test.record("moisture", kMoisture, "0.3,0.3", "08:35"));
    for (const std::string value : {"60.1", "-0.1"}) {
        const auto refused = test.open().correct(DeskTest::by("IP", "08:40"),
                                                 {first.name, {"reading_pct=" + value}, "typed wrong"});
        REQUIRE(!refused.ok());
        CHECK(refused.fault().code == Code::field_out_of_range);
    }
    CHECK(test.open()
              .correct(DeskTest::by("IP", "08:40"), {first.name, {"reading_pct=60"}, "typed wrong"})
              .ok());
}

TEST_CASE("a correction needs something to correct, an entry there is, and a reason") {
    DeskTest test;
    const auto first = good(test.record("moisture", kMoisture, "0.3,0.3", "08:35"));
    CHECK(test.open().correct(DeskTest::by("IP"), {first.name, {}, "why not"}).fault().code ==
          Code::field_missing);
    CHECK(test.open().correct(DeskTest::by("IP"), {"0000aaaa", {"reading_pct=1"}, "why not"}).fault().code ==
          Code::entry_unknown);
    CHECK(!test.open().correct(DeskTest::by("IP"), {first.name, {"reading_pct=1"}, ""}).ok());
}

TEST_CASE("a reading can be withdrawn hours later, by somebody else, and stays in the history") {
    DeskTest test("2026-06-11T15:00:00+01:00");
    const auto first = good(test.record("moisture", kMoisture, "0.3,0.3", "08:35"));
    good(withdraw(test, first.name, "WP", "15:00"));
    CHECK(good(test.open().history({}, first.name)).lines.size() == 2);
    CHECK(!withdraw(test, first.name, "WP", "15:00").ok());
}

TEST_CASE("a mis-tap is taken back at ten minutes, not at eleven") {
    DeskTest test;
    CHECK(withdraw(test, begin_deck(test, "08:20"), "IP", "08:30").ok());
    DeskTest late;
    const auto refused = withdraw(late, begin_deck(late, "08:20"), "IP", "08:31");
    REQUIRE(!refused.ok());
    CHECK(refused.fault().code == Code::too_late_to_undo);
}

TEST_CASE("only who tapped it takes a mis-tap back") {
    DeskTest test;
    const auto refused = withdraw(test, begin_deck(test, "08:20"), "WP", "08:21");
    REQUIRE(!refused.ok());
    CHECK(refused.fault().code == Code::too_late_to_undo);
}

TEST_CASE("a mis-tap that something is built on is not taken back") {
    DeskTest test;
    const std::string begun = begin_deck(test, "08:20");
    REQUIRE(
        good(test.open().move(DeskTest::by("IP", "08:22"), {"pause", "deck", "", {"why=shower"}})).is_kept());
    const auto refused = withdraw(test, begun, "IP", "08:23");
    REQUIRE(!refused.ok());
    CHECK(refused.fault().code == Code::too_late_to_undo);
}

TEST_CASE("a begin is no reading and cannot be corrected") {
    DeskTest test;
    const auto refused = test.open().correct(DeskTest::by("IP", "08:21"),
                                             {begin_deck(test, "08:20"), {"note=x"}, "typed wrong"});
    REQUIRE(!refused.ok());
    CHECK(refused.fault().code == Code::not_from_here);
}

TEST_CASE("a personal value is never put into a correction") {
    DeskTest test;
    const auto first = good(test.record("site", {"customer=Caspar Dunmoor", "height_m=2.6"}));
    const auto refused =
        test.open().correct(DeskTest::by("IP"), {first.name, {"customer=Casper Dunmoor"}, "spelling"});
    REQUIRE(!refused.ok());
    CHECK(refused.fault().where == "site customer");
}
