#include "tests/desk/desk_support.h"

#include <filesystem>

using namespace undersheet;

namespace {

// The smallest things that begin as a JPEG and a PNG do; nothing here looks further than that.
const std::string kJpeg = std::string("\xFF\xD8\xFF\xE0", 4) + "first picture" + std::string("\xFF\xD9", 2);
const std::string kOther = std::string("\xFF\xD8\xFF\xE0", 4) + "second picture" + std::string("\xFF\xD9", 2);

} // namespace

TEST_CASE("a photograph is kept byte for byte, named by its content") {
    DeskTest test;
    test.survey();
    const auto kept = good(test.open().keep_photo(DeskTest::by("IP", "08:30"),
                                                  {kJpeg, "wall.jpg", "CD", "tape at the chase", ""}));
    CHECK(kept.place == "CD");
    std::size_t files = 0;
    for (const auto& file : std::filesystem::directory_iterator(test.path() + ".photos")) {
        CHECK(bytes_of_file(file.path().string()) == kJpeg);
        ++files;
    }
    CHECK(files == 1);
}

TEST_CASE("a photograph may be of a part, of a place or of an entry") {
    DeskTest test;
    test.survey();
    const auto tape = good(test.record("tape", {"m=3.2"}, "AB"));
    CHECK(
        good(test.open().keep_photo(DeskTest::by("IP", "08:30"), {kJpeg, "a.jpg", "band/AB", "", ""})).part ==
        "band/AB");
    CHECK(good(test.open().keep_photo(DeskTest::by("IP", "08:30"), {kOther, "b.jpg", tape.name, "", ""}))
              .place == "AB");
}

TEST_CASE(
    "a photograph from a messenger whose name holds what nobody sees is kept under the name that is seen") {
    DeskTest test;
    test.survey();
    good(test.open().keep_photo(DeskTest::by("IP", "08:30"),
                                {kJpeg, "\u200EIMG-20260611.jpg", "CD", "tape at the chase", ""}));
    const auto lines = good(test.open().history({})).lines;
    CHECK(lines.back().says.find("\u200E") == std::string::npos);
    CHECK(lines.back().says.find("IMG-20260611.jpg") != std::string::npos);
}

TEST_CASE("what is no photograph is not kept") {
    DeskTest test;
    const auto refused =
        test.open().keep_photo(DeskTest::by("IP", "08:30"), {"%PDF-1.7", "plan.pdf", "A", "", ""});
    REQUIRE(!refused.ok());
    CHECK(refused.fault().code == Code::photo_unreadable);
    CHECK(good(test.open().history({})).lines.size() == 4);
}

TEST_CASE("a punch row cleared with a photograph keeps both or neither") {
    DeskTest test;
    good(test.open().punch_add(DeskTest::by("WP", "08:30"), {"scuff on the kerb trim", "", "", "put_right"}));
    const std::size_t before = good(test.open().history({})).lines.size();
    CHECK(!test.open()
               .punch_clear(DeskTest::by("WP", "08:40"), {"7", "", {kJpeg, "after.jpg", "", "", ""}})
               .ok());
    CHECK(good(test.open().history({})).lines.size() == before);
    good(test.open().punch_clear(DeskTest::by("WP", "08:40"), {"1", "", {kJpeg, "after.jpg", "", "", ""}}));
    CHECK(good(test.open().history({})).lines.size() == before + 2);
}
