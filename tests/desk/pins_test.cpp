// Sign-offs that need a person's PIN, from the desk.
#include "tests/desk/desk_support.h"

#include "base/text.h"
#include "tests/support/tamper.h"

#include <algorithm>
#include <filesystem>

using namespace undersheet;

namespace {

desk::Asked with_pin(const std::string& pin, const std::string& who = "IP") {
    desk::Asked asked = DeskTest::by(who, "08:40");
    asked.pin = pin;
    return asked;
}

desk::PersonLine set_pin(DeskTest& test, const desk::PinChange& change) {
    return good(test.open().set_pin(DeskTest::by("IP", "08:30"), change));
}

// Something a person answers for, and that can be said at once: a part is left out.
Result<desk::Kept> leave_out(DeskTest& test, const desk::Asked& asked, const std::string& part = "wall/CD") {
    return test.open().move(
        asked, {"leave_out", part, "", {"why=the wall is the mason's work", "agreed_by=Caspar Dunmoor"}});
}

std::size_t entries_of(DeskTest& test) { return good(test.open().history({})).lines.size(); }

std::vector<std::string> doubts_of(DeskTest& test) {
    std::vector<std::string> doubts;
    for (const auto& doubt : good(test.open().verify()).doubts) doubts.push_back(doubt.what);
    return doubts;
}

void forget_pin_files(DeskTest& test) {
    std::vector<std::filesystem::path> files;
    for (const auto& file :
         std::filesystem::directory_iterator(std::filesystem::path(test.path()).parent_path()))
        if (file.path().extension() == ".pin") files.push_back(file.path());
    REQUIRE(files.size() == 1);
    std::filesystem::remove(files[0]);
}

} // namespace

TEST_CASE("who has set a PIN signs with it and with nothing else; nobody else is asked") {
    DeskTest test;
    test.survey();
    CHECK(set_pin(test, {"402913", "", ""}).has_pin);
    const auto people = good(test.open().people());
    CHECK(people[0].has_pin);
    CHECK(!people[1].has_pin);

    const auto before = entries_of(test);
    const auto without = leave_out(test, with_pin(""));
    REQUIRE(!without.ok());
    CHECK(without.fault().code == Code::pin_needed);
    const auto wrong = leave_out(test, with_pin("402914"));
    REQUIRE(!wrong.ok());
    CHECK(wrong.fault().code == Code::pin_wrong);
    CHECK(entries_of(test) == before);

    REQUIRE(good(leave_out(test, with_pin("402913"))).is_kept());
    good(test.record("chase", {"height_mm=165"}, "CD+0.10")); // what is only read needs none
    CHECK(entries_of(test) == before + 2);
    REQUIRE(good(test.open().move(with_pin("", "WP"),
                                  {"take_back", "wall/CD", "", {"why=the mason is not coming"}}))
                .is_kept());
    CHECK(good(test.open().verify()).ok);
    CHECK(doubts_of(test).empty());
}

TEST_CASE("a PIN is changed only with the old one, and the key behind it stays") {
    DeskTest test;
    test.survey();
    set_pin(test, {"402913", "", ""});
    const auto refused = test.open().set_pin(DeskTest::by("IP", "08:35"), {"771122", "000000", ""});
    REQUIRE(!refused.ok());
    CHECK(refused.fault().code == Code::pin_wrong);
    const auto not_given = test.open().set_pin(DeskTest::by("IP", "08:35"), {"771122", "", ""});
    REQUIRE(!not_given.ok());
    CHECK(not_given.fault().code == Code::pin_needed); // so that it is asked for
    set_pin(test, {"771122", "402913", ""});
    CHECK(!leave_out(test, with_pin("402913")).ok());
    CHECK(good(leave_out(test, with_pin("771122"))).is_kept());
    CHECK(doubts_of(test).empty());
    CHECK(!test.open().set_pin(DeskTest::by("IP", "08:36"), {"77112", "771122", ""}).ok());
}

TEST_CASE("a forgotten PIN makes a new key with its reason, and what the old one signed still holds") {
    DeskTest test;
    test.survey();
    set_pin(test, {"402913", "", ""});
    REQUIRE(good(leave_out(test, with_pin("402913"))).is_kept());
    set_pin(test, {"771122", "", "forgotten over the winter"});
    REQUIRE(good(test.open().move(with_pin("771122"),
                                  {"take_back", "wall/CD", "", {"why=the mason is not coming"}}))
                .is_kept());
    REQUIRE(good(leave_out(test, with_pin("771122"))).is_kept());
    CHECK(good(test.open().verify()).ok);
    CHECK(doubts_of(test).empty());
}

TEST_CASE("a sign-off without the PIN of a person who has one on that device raises a doubt") {
    DeskTest test;
    test.survey();
    set_pin(test, {"402913", "", ""});
    forget_pin_files(test);
    REQUIRE(good(leave_out(test, with_pin(""))).is_kept());
    CHECK(good(test.open().verify()).ok);
    const auto doubts = doubts_of(test);
    REQUIRE(doubts.size() == 1);
    CHECK(doubts[0] == "signed without the PIN that this person has on this device");
}
TEST_CASE("a key of which nobody wrote down whose it is raises a doubt") {
    DeskTest test;
    test.survey();
    set_pin(test, {"402913", "", ""});
    // What a program of somebody's own would do: a key of its own making, and nothing in the firm's journal.
    forget_pin_files(test);
    auto book = test.path();
    set_pin(test, {"771122", "", ""});
    REQUIRE(good(leave_out(test, with_pin("771122"))).is_kept());
    CHECK(doubts_of(test).empty()); // written down when it was set
    tamper(book, "DELETE FROM entry WHERE CAST(body AS TEXT) LIKE '%\"own_key\"%'");
    const auto doubts = doubts_of(test);
    CHECK(std::count(doubts.begin(), doubts.end(),
                     "signed with a key of which nobody wrote down that it is this person's") == 1);
}
