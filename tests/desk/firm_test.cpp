// Whose book it is, and what is new about it.
#include "tests/desk/desk_support.h"

using namespace undersheet;

namespace {

bool stands_in(DeskTest& test, const std::string& words) {
    return good(test.open().paper(DeskTest::by("IP"), "inspection", "txt", {}, {})).bytes.find(words) !=
           std::string::npos;
}

} // namespace

TEST_CASE("a firm's new number stands on the papers of every open job from then on, and the rest as it was") {
    DeskTest test;
    const desk::Firm before = good(test.open().firm());
    CHECK_FALSE(stands_in(test, "01632 960 119"));
    const desk::Firm after = good(test.open().change_firm(DeskTest::by("IP"), {.phone = "01632 960 119"}));
    CHECK(after.name == before.name);
    CHECK(after.phone == "01632 960 119");
    CHECK(good(test.open().firm()).phone == "01632 960 119");
    CHECK(stands_in(test, "01632 960 119"));
    good(test.open().open_job(DeskTest::by("IP"), {"B-08", "garage", "", false, ""}));
    CHECK(stands_in(test, "01632 960 119"));
}

TEST_CASE("a change says only what is new, so that one said for an earlier day brings nothing old back") {
    DeskTest test;
    test.set_clock("2026-06-11T12:00:00+01:00");
    good(test.open().change_firm(DeskTest::by("IP", "10:00"), {.phone = "01632 960 119"}));
    good(test.open().change_firm(DeskTest::by("IP", "07:00"), {.address = "4 Ropewalk"}));
    const desk::Firm firm = good(test.open().firm());
    CHECK(firm.phone == "01632 960 119");
    CHECK(firm.address == "4 Ropewalk");
    good(test.open().open_job(DeskTest::by("IP", "11:00"), {"B-08", "garage", "", false, ""}));
    CHECK(stands_in(test, "01632 960 119"));
    CHECK(stands_in(test, "4 Ropewalk"));
}

TEST_CASE("a job that another firm handed over keeps that firm's number") {
    DeskTest test;
    const std::string theirs = test.path() + ".theirs", file = test.path() + ".hand";
    good(desk::Desk::start(theirs, {.name = "Marram & Quill", .phone = "01632 960 274"}, test.world()));
    auto other = good(desk::Desk::open(theirs, test.world()));
    good(other.add_person({}, {"Bryn Marram", "installer", "BM", "", "", ""}));
    good(other.open_job(DeskTest::by("BM"), {"K-12", "kitchen extension", "", false, ""}));
    good(other.hand({"K-12", false, file}));
    good(test.open().take(file));
    good(test.open().change_firm(DeskTest::by("IP"), {.phone = "01632 960 119"}));
    const auto paper_of = [&](const char* job) {
        desk::Asked asked = DeskTest::by("IP");
        asked.job = job;
        return good(test.open().paper(asked, "inspection", "txt", {}, {})).bytes;
    };
    CHECK(paper_of("K-12").find("01632 960 274") != std::string::npos);
    CHECK(paper_of("K-12").find("01632 960 119") == std::string::npos);
    CHECK(paper_of("A-07").find("01632 960 119") != std::string::npos);
}

TEST_CASE("a firm that chose no language can choose one later") {
    DeskTest test;
    good(test.open().change_firm(DeskTest::by("IP"), {.language = "de"}));
    CHECK(stands_in(test, "Prüfung der Schalung"));
}

TEST_CASE("the change of a firm stands in the journal under the name of whoever said it") {
    DeskTest test;
    const auto entries = good(test.open().history({})).lines.size();
    good(test.open().change_firm(DeskTest::by("WP"), {.email = "roofs@pell.example"}));
    const auto history = good(test.open().history({}));
    REQUIRE(history.lines.size() == entries + 1);
    CHECK(history.lines.back().kind == "firm");
    CHECK(history.lines.back().by == "Wren Pell");
}

TEST_CASE("a firm's change is refused where it changes nothing, nobody known says it, or there are no words "
          "for its language") {
    DeskTest test;
    const std::string name = good(test.open().firm()).name;
    const std::string rest = "; say what is new: --phone NUMBER, say";
    CHECK(line_of(test.open().change_firm(DeskTest::by("IP"), {})) == "firm: nothing was said" + rest);
    CHECK(line_of(test.open().change_firm(DeskTest::by("IP"), {.name = name})) ==
          "firm: that is what the book says already" + rest);
    CHECK_FALSE(test.open().change_firm(DeskTest::by("Oswin"), {.phone = "1"}).ok());
    CHECK_FALSE(test.open().change_firm(DeskTest::by("IP"), {.language = "tlh"}).ok());
}
