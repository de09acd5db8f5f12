// The language a firm's papers are in when nobody asks for one.
#include "desk/language.h"
#include "tests/desk/desk_support.h"

using namespace undersheet;

namespace {

const std::string kClock = "2026-06-11T08:00:00+01:00";

bool is_said(const std::string& text, const char* words) { return text.find(words) != std::string::npos; }

std::string inspection_of(DeskTest& test, std::string_view language = {}) {
    return good(test.open().paper(DeskTest::by("IP"), "inspection", "txt", {}, language)).bytes;
}

std::string recall_of(DeskTest& test, const std::string& language = {}) {
    return good(test.open().recall(DeskTest::by("IP"), {.batch = "DA-77", .language = language}, "txt"));
}

} // namespace

TEST_CASE("the papers of a firm that chose German are German without being asked for") {
    DeskTest test(kClock, "de");
    CHECK(is_said(inspection_of(test), "Prüfung der Schalung"));
    CHECK(is_said(recall_of(test), "Charge DA-77"));
}

TEST_CASE("the language asked for goes before the firm's") {
    DeskTest test(kClock, "de");
    CHECK(is_said(inspection_of(test, "en"), "Deck inspection"));
    CHECK_FALSE(is_said(recall_of(test, "en"), "Charge DA-77"));
}

TEST_CASE("the papers of a firm that chose no language are English") {
    DeskTest test;
    CHECK(inspection_of(test) == inspection_of(test, "en"));
    CHECK(recall_of(test) == recall_of(test, "en"));
}

TEST_CASE("a firm cannot choose a language there are no words for, and no book is made") {
    DeskTest test;
    const std::string other = test.path() + ".other";
    const auto started =
        desk::Desk::start(other, {.name = "Pell & Daughter", .language = "tlh"}, test.world());
    REQUIRE_FALSE(started.ok());
    CHECK(started.fault().code == Code::choice_unknown);
    CHECK(is_said(one_line(started.fault()), "language"));
    CHECK_FALSE(desk::Desk::open(other, test.world()).ok());
}

TEST_CASE("a language that a later program recorded is refused in one line that says what to ask for") {
    CHECK(line_of(desk::words_for("", "tlh")) ==
          "the firm's language: there are no words for papers in 'tlh'; --language de, en");
    CHECK(line_of(desk::words_for("de", "tlh")) == "done");
}
