#include "paper/completion.h"

#include "paper/html.h"
#include "tests/paper/approved.h"
#include "tests/paper/troubled_roof.h"

using namespace undersheet;
using namespace undersheet::paper;

namespace {

Document record_of(const test::Site& site, const std::string& now) {
    const auto job = site.fold(now);
    return completion(job, job::judge(job, test::default_method(), test::default_kinds()),
                      test::test_setting());
}

std::string verdict(const Document& document) {
    return std::get<Verdict>(document.blocks.front()).text.words();
}

bool says(const Document& document, const std::string& words) {
    return test::words_of(document).find(words) != std::string::npos;
}

Document handed_over() { return record_of(test::troubled_roof(), test::kHandedOver); }

} // namespace

TEST_CASE("a finished roof says so in two sentences, with where, when and by whom") {
    CHECK(verdict(handed_over()) ==
          "Your roof at 9 Tanners Row, Marlow Wick, ZZ3 4AB was covered on 20 May 2026 by Harrow & "
          "Finch. It is finished and nothing is open.");
}

TEST_CASE("a roof that is not covered yet is not called finished, and every part that is missing is named") {
    const auto paper = record_of(test::roof_being_inspected(), test::kFirstMorning);
    CHECK(verdict(paper) == "Your roof at 9 Tanners Row, Marlow Wick, ZZ3 4AB is not covered yet.");
    CHECK(says(paper, "not finished: deck, plate, edge AB"));
}

TEST_CASE("a covered roof with its final look outstanding is not finished") {
    const auto paper = record_of(test::troubled_roof(), "2026-05-21T12:30:00+01:00");
    CHECK(verdict(paper).find("It is not finished yet") != std::string::npos);
    CHECK(says(paper, "Still open"));
}

TEST_CASE("the guarantee runs to the day before its anniversary") {
    CHECK(says(handed_over(), "10 years, from 21 May 2026 to 20 May 2036"));
    CHECK(says(record_of(test::roof_being_inspected(), test::kFirstMorning),
               "no guarantee is written down yet"));
}

TEST_CASE("the first page says who to ring and the five lines of care") {
    const auto paper = handed_over();
    CHECK(says(paper, "Who to ring  Harrow & Finch, 01632 960145"));
    std::size_t points = 0;
    for (std::size_t i = 0; i + 1 < paper.blocks.size(); ++i)
        if (const auto* heading = std::get_if<Heading>(&paper.blocks[i]);
            heading != nullptr && heading->text == "Looking after it")
            points = std::get<Listing>(paper.blocks[i + 1]).points.size();
    CHECK(points == 5);
}

TEST_CASE("what the customer decided is told to them in plain words") {
    CHECK(says(handed_over(), "You decided to leave this as it is: chase 131 mm above the deck at edge"));
}

TEST_CASE("the second page says how dry the deck was, and in what weather it was bonded") {
    const auto paper = handed_over();
    CHECK(says(paper, "6 places, 13.1 to 18.4 %; bonding stops at 20 %"));
    CHECK(says(paper, "Air        13 to 16 °C"));
    CHECK(says(paper, "1:41.7 on the whole"));
    CHECK(says(paper, "not measured"));
}

TEST_CASE("the height of a chase and the sheet bonded up the wall stand apart, each named for what it is") {
    const auto cells = [](const test::Site& site) {
        const auto paper = record_of(site, test::kHandedOver);
        for (std::size_t i = 0; i + 1 < paper.blocks.size(); ++i)
            if (const auto* heading = std::get_if<Heading>(&paper.blocks[i]);
                heading != nullptr && heading->text == "Heights at the walls")
                return std::get<Table>(paper.blocks[i + 1]);
        return Table{};
    };
    const Table unmeasured = cells(test::troubled_roof());
    REQUIRE(unmeasured.rows.size() == 1);
    CHECK(unmeasured.headers[2].text == "Deck to underside of the chase, mm");
    CHECK(unmeasured.headers[3].text == "Sheet bonded up the wall, mm");
    CHECK(unmeasured.rows[0].cells[2].words() == "131 to 152");
    CHECK(unmeasured.rows[0].cells[3].words() == "not recorded"); // never the height of the chase
    auto site = test::roof_being_inspected();
    site.record("chase", "09:30", R"({"height_mm":158,"on":"finished"})", "CD+3.50");
    site.record("begin", "09:40", "{}", "", "wall/CD");
    site.record("tick", "09:50", R"({"step":"trim","cover_mm":95})", "", "wall/CD");
    site.record("tick", "09:55", R"({"step":"trim","cover_mm":120})", "", "wall/CD");
    const Table measured = cells(site);
    CHECK(measured.rows[0].cells[2].words() == "131 to 152; 158 (finished roof)");
    CHECK(measured.rows[0].cells[3].words() == "120");
}

TEST_CASE("batches are named with where each went") {
    const auto paper = handed_over();
    CHECK(says(paper, "SH-77B  the whole roof"));
    CHECK(says(paper, "FA-2    field section 1"));
}

TEST_CASE("what was not looked at, left out or let go stands on the customer's paper too") {
    const auto paper = handed_over();
    CHECK(says(paper, "Asbestos, not looked at"));
    CHECK(says(paper, "chase, edge CD: left out, agreed with Mrs Odile Ferring"));
    CHECK(says(paper, "(customer) decided to leave it so"));
}

TEST_CASE("the customer's page carries no entry names, no rule names and no word of blame") {
    const std::string words = test::words_of(handed_over());
    for (const char* bad :
         {"chase_low", "fault", "blame", "negligen", "asset", "submit", "form ", "entry "}) {
        CAPTURE(bad);
        CHECK(words.find(bad) == std::string::npos);
    }
}

TEST_CASE("building control is answered in one line, whatever was recorded") {
    CHECK(says(handed_over(), "Building control did not have to be told: under a quarter"));
    CHECK(says(record_of(test::Site().opened(), "09:00"), "Nothing is recorded about building control."));
}

TEST_CASE("a roof taken over from paper says what this record does not know") {
    test::Site site;
    site.record("open", "08:00",
                R"({"ref":"OLD-1","roof":"garage","from_paper":"yes","finished":"2019-06-30"})");
    CHECK(verdict(record_of(site, "09:00")) == "Your roof at (no address recorded) was finished on 30 June "
                                               "2019. This record was taken over from older papers: what "
                                               "they do not say is not known here.");
}

TEST_CASE("the completion record of a troubled roof is the approved one, in text and as a page") {
    CHECK(test::differs_from_approved("completion.txt", test::words_of(test::settled(handed_over()))) == "");
    CHECK(test::differs_from_approved("completion.html",
                                      render_html(test::settled(handed_over()), Words::english())) == "");
}
