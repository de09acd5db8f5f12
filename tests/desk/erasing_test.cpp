// A person's values taken away: gone from the file, the signatures good, and no older file brings them back.
#include "tests/desk/desk_support.h"

#include <algorithm>
#include <filesystem>

using namespace undersheet;

namespace {

const std::string kJpeg = std::string("\xFF\xD8\xFF\xE0", 4) + "the customer at the door";

struct WithCustomer {
    WithCustomer() {
        test.survey();
        good(test.record("site", {"customer=Caspar Dunmoor"}));
        good(test.record("site", {"address=2 Thimble Row", "phone=01632 960777"}));
    }
    [[nodiscard]] bool file_holds(const std::string& text) const {
        for (const auto& file : std::filesystem::recursive_directory_iterator(folder())) {
            if (file.is_regular_file() && file.path().extension() != ".hand" &&
                bytes_of_file(file.path().string()).find(text) != std::string::npos)
                return true;
        }
        return false;
    }
    [[nodiscard]] std::filesystem::path folder() const {
        return std::filesystem::path(test.path()).parent_path();
    }
    Result<desk::ErasedAll> erase(desk::Erase wanted) {
        return test.open().erase(DeskTest::by("IP", "12:00"), wanted);
    }

    DeskTest test;
};

std::size_t values_of(const desk::ErasedAll& erased) {
    std::size_t values = 0;
    for (const auto& line : erased.jobs) values += line.values;
    return values;
}

} // namespace

TEST_CASE("a customer's values are gone from every file of the book, and the record still verifies") {
    WithCustomer with;
    REQUIRE(with.file_holds("Caspar Dunmoor"));
    REQUIRE(with.file_holds("2 Thimble Row"));
    const auto erased = good(with.erase({"caspar dunmoor", "asked by letter", "", {}}));
    CHECK(values_of(erased) == 3);
    CHECK(erased.still_named.empty());
    CHECK_FALSE(with.file_holds("Caspar Dunmoor"));
    CHECK_FALSE(with.file_holds("2 Thimble Row"));
    CHECK_FALSE(with.file_holds("01632 960777"));
    CHECK(good(with.test.open().verify()).ok);
    CHECK(good(with.test.open().paper({}, "inspection", "txt")).bytes.find("(erased)") != std::string::npos);
}

TEST_CASE("an older file does not bring back what was erased, and a newer one erases it elsewhere") {
    WithCustomer with;
    const std::string old_file = (with.folder() / "old.hand").string();
    good(with.test.open().hand({"", true, old_file}));
    TempFolder other;
    good(desk::Desk::start_from({other.file("other.book"), "2026-06-11T08:00:00+01:00"}, old_file));
    REQUIRE(bytes_of_file(other.file("other.book")).find("Caspar Dunmoor") != std::string::npos);

    good(with.erase({"Caspar Dunmoor", "asked by letter", "", {}}));
    CHECK(good(with.test.open().take(old_file)).fresh == 0);
    CHECK_FALSE(with.file_holds("Caspar Dunmoor"));

    const std::string new_file = (with.folder() / "new.hand").string();
    good(with.test.open().hand({"A-07", false, new_file}));
    CHECK(bytes_of_file(new_file).find("Caspar Dunmoor") == std::string::npos);
    auto desk = good(desk::Desk::open({other.file("other.book"), "2026-06-11T08:00:00+01:00"}));
    CHECK_FALSE(good(desk.take(new_file)).remarks.empty());
    CHECK(bytes_of_file(other.file("other.book")).find("Caspar Dunmoor") == std::string::npos);
    CHECK(good(desk.verify()).ok);
}

TEST_CASE(
    "a value recorded again by who did not know that it was erased is pointed out, until it is erased too") {
    WithCustomer with;
    const std::string old_file = (with.folder() / "old.hand").string(),
                      back = (with.folder() / "back.hand").string();
    good(with.test.open().hand({"", true, old_file}));
    TempFolder folder;
    good(desk::Desk::start_from({folder.file("other.book"), "2026-06-11T08:00:00+01:00"}, old_file));
    auto other = good(desk::Desk::open({folder.file("other.book"), "2026-06-11T08:00:00+01:00"}));
    good(with.erase({"Caspar Dunmoor", "asked by letter", "", {}}));
    good(other.record(DeskTest::by("IP", "12:30"), {"site", {}, {}, {"customer=Caspar Dunmoor"}}));
    good(other.hand({"", true, back}));

    const auto taken = good(with.test.open().take(back));
    REQUIRE(taken.remarks.size() == 1);
    CHECK(
        taken.remarks.front().find("its customer was recorded by who did not know that such a value had been "
                                   "erased") != std::string::npos);
    CHECK(good(with.test.open().verify()).doubts.size() == 1);
    good(with.erase({"Caspar Dunmoor", "asked by letter, again", "", {}}));
    CHECK(good(with.test.open().verify()).doubts.empty());
    // Who knew of it and records it again means it.
    good(with.test.record("site", {"customer=Caspar Dunmoor"}));
    CHECK(good(with.test.open().verify()).doubts.empty());
}

TEST_CASE("a photograph that shows somebody is erased by the name of its entry") {
    WithCustomer with;
    const auto photo =
        good(with.test.open().keep_photo(DeskTest::by("IP", "08:30"), {kJpeg, "door.jpg", "CD", "", ""}));
    REQUIRE(with.file_holds("the customer at the door"));
    CHECK(line_of(with.erase({"Caspar Dunmoor", "asked by letter", "", {"00000000"}}))
              .find("there is no photograph") != std::string::npos);
    CHECK(with.file_holds("Caspar Dunmoor"));
    good(with.erase({"Caspar Dunmoor", "asked by letter", "", {photo.name}}));
    CHECK_FALSE(with.file_holds("the customer at the door"));
    CHECK(good(with.test.open().verify()).ok);
}

TEST_CASE("free text that names the person is listed, since it is signed and stays") {
    WithCustomer with;
    good(with.test.record("chase", {"height_mm=165", "note=Caspar Dunmoor held the tape"}, "CD+0.10",
                          "08:40"));
    const auto erased = good(with.erase({"Caspar Dunmoor", "asked by letter", "", {}}));
    REQUIRE(erased.still_named.size() == 1);
    CHECK(erased.still_named[0].find("chase note") != std::string::npos);
}

TEST_CASE("a person of the book is erased from the firm's journal and from every job") {
    WithCustomer with;
    const auto erased =
        good(with.test.open().erase(DeskTest::by("IP", "12:00"), {"WP", "has left and asks", "", {}}));
    CHECK(erased.jobs.size() == 2);
    CHECK_FALSE(with.file_holds("Wren Pell"));
    CHECK(good(with.test.open().verify()).ok);
}

TEST_CASE("nobody's values are erased before the time for which they are kept, without a reason") {
    WithCustomer with;
    CHECK(with.test.open().keep_for(DeskTest::by("IP", "11:00"), "12", "guarantee and claims").ok());
    const auto refused = with.erase({"Caspar Dunmoor", "asked by letter", "", {}});
    REQUIRE_FALSE(refused.ok());
    CHECK(refused.fault().code == Code::held);
    CHECK(refused.fault().detail.find("guarantee and claims") != std::string::npos);
    CHECK(with.file_holds("Caspar Dunmoor"));
    good(with.erase({"Caspar Dunmoor", "asked by letter", "was never a customer", {}}));
    CHECK_FALSE(with.file_holds("Caspar Dunmoor"));
}

TEST_CASE("who is not in the book cannot be erased, and a reason is wanted") {
    WithCustomer with;
    CHECK(line_of(with.erase({"Nobody Here", "asked", "", {}})).find("holds nothing personal") !=
          std::string::npos);
    CHECK_FALSE(with.erase({"Caspar Dunmoor", "", "", {}}).ok());
    CHECK(with.file_holds("Caspar Dunmoor"));
}
