#include "tests/desk/desk_support.h"

using namespace undersheet;

namespace {

Result<desk::Kept> move(DeskTest& test, const std::string& event, const std::string& part,
                        desk::Fields fields, const std::string& when) {
    return test.open().move(DeskTest::by("IP", when), {event, part, "", std::move(fields)});
}

std::string state_of(DeskTest& test, const std::string& part) {
    for (const auto& line : good(test.open().stages({})).parts) {
        if (line.part == part) return line.state;
    }
    return "no such part";
}

} // namespace

TEST_CASE("a part that is held says what holds it and what clears it, and nothing is written") {
    DeskTest test;
    test.survey();
    const std::size_t before = good(test.open().history({})).lines.size();
    const auto held = good(move(test, "begin", "lay-out", {}, "09:02"));
    CHECK(!held.is_kept());
    REQUIRE(!held.held_by.empty());
    for (const auto& line : held.held_by) {
        CHECK(!line.why.empty());
        CHECK(!line.clears.empty());
    }
    CHECK(good(test.open().history({})).lines.size() == before);
    CHECK(state_of(test, "lay-out") == "waiting");
}

TEST_CASE("a part nothing holds is begun, and says where it stands") {
    DeskTest test;
    test.survey();
    test.open_the_day();
    const auto kept = good(move(test, "begin", "deck", {}, "08:20"));
    REQUIRE(kept.is_kept());
    CHECK(kept.now.starts_with("deck is under way; still to do: heads"));
    CHECK(state_of(test, "deck") == "under_way");
}

TEST_CASE("there is no move that the part's state does not know") {
    DeskTest test;
    test.survey();
    test.open_the_day();
    const auto held = good(move(test, "resume", "deck", {}, "08:20"));
    REQUIRE(!held.is_kept());
    CHECK(held.held_by[0].why.find("deck") != std::string::npos);
}

TEST_CASE("a part this roof does not have is refused with those it has") {
    DeskTest test;
    test.survey();
    const auto refused = move(test, "begin", "band/CD", {}, "08:20");
    REQUIRE(!refused.ok());
    CHECK(refused.fault().code == Code::no_such_part);
    CHECK(refused.fault().clears.find("band/AB") != std::string::npos);
}

TEST_CASE("band/BA is band/AB, and a stage with one part needs no second half") {
    DeskTest test;
    test.survey();
    CHECK(good(move(test, "begin", "band/BA", {}, "08:20")).part == "band/AB");
    CHECK(good(move(test, "begin", "wall", {}, "08:20")).part == "wall/CD");
}

TEST_CASE("a move is not slipped in before the part's last one") {
    DeskTest test;
    test.survey();
    test.open_the_day();
    REQUIRE(good(move(test, "begin", "deck", {}, "08:30")).is_kept());
    CHECK(!good(move(test, "begin", "deck", {}, "08:20")).is_kept());
}

TEST_CASE("recording work and ticking write the same fact") {
    DeskTest test;
    test.survey();
    test.open_the_day();
    const auto ticked =
        move(test, "tick", "plate/AB",
             {"step=fix", "plate_1_mm=1.5", "plate_2_mm=1", "plate_3_mm=2", "holes=24", "nails=24"}, "08:30");
    const auto worked = test.open().record(
        DeskTest::by("IP", "08:30"),
        {"work",
         "",
         "plate/AB",
         {"step=fix", "plate_1_mm=1.5", "plate_2_mm=1", "plate_3_mm=2", "holes=24", "nails=24"}});
    REQUIRE(ticked.ok());
    REQUIRE(worked.ok());
    CHECK(ticked->held_by.size() ==
          worked->held_by.size()); // both are held by the same: the plate is not begun
    CHECK(!ticked->held_by.empty());
}

TEST_CASE("who is not on the job moves nothing") {
    DeskTest test;
    const auto refused = test.open().move(DeskTest::by("Oswin", "08:20"), {"begin", "deck", "", {}});
    REQUIRE(!refused.ok());
    CHECK(refused.fault().code == Code::person_unknown);
}

TEST_CASE("every part that waits says why") {
    DeskTest test;
    test.survey();
    std::size_t waiting = 0;
    for (const auto& part : good(test.open().stages({})).parts) {
        if (part.state != "waiting") continue;
        ++waiting;
        CHECK_FALSE(part.held_by.empty());
    }
    CHECK(waiting > 5);
}
