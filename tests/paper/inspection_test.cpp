#include "paper/inspection.h"

#include "tests/paper/approved.h"
#include "tests/paper/troubled_roof.h"

using namespace undersheet;
using namespace undersheet::paper;
using test::Site;

namespace {

Document inspected(const Site& site, const std::string& now) {
    const auto job = site.fold(now);
    return inspection(job, job::judge(job, test::default_method(), test::default_kinds()),
                      test::test_setting());
}

std::vector<std::string> headings(const Document& document) {
    std::vector<std::string> found;
    for (const Block& block : document.blocks)
        if (const auto* heading = std::get_if<Heading>(&block); heading != nullptr && heading->level == 2)
            found.push_back(heading->text);
    return found;
}

std::string verdict(const Document& document) {
    return std::get<Verdict>(document.blocks.front()).text.words();
}

// The row of the table with that header whose first cell is `name`, its cells joined with '|'.
std::string row_of(const Document& document, const std::string& header, const std::string& name) {
    for (const Block& block : document.blocks) {
        const auto* table = std::get_if<Table>(&block);
        if (table == nullptr || table->headers.front().text != header) continue;
        for (const Row& row : table->rows) {
            if (row.cells.front().words() != name) continue;
            std::string cells;
            for (const Text& cell : row.cells) cells += cell.words() + "|";
            return cells;
        }
    }
    return {};
}

bool says(const Document& document, const std::string& words) {
    return test::words_of(document).find(words) != std::string::npos;
}

// A deck on which everything that has to be read was read, and nothing is amiss with it.
Site with_deck_read() {
    Site site;
    site.opened();
    site.record(
        "board", "08:10",
        R"({"scope":"all","material":"plywood3","stamp":"yes","thickness_mm":18,"support_mm":400,"soft":"none"})");
    site.record(
        "heads", "08:15",
        R"({"total":100,"checked":100,"below":100,"flush":0,"proud":0,"squares":10,"fixing":"nail","length_mm":65})");
    for (const auto& [place, z] : {std::pair{"0,0", "0"}, {"3,0", "1"}, {"0,1.50", "40"}, {"3,1.50", "42"}})
        site.record("level", "08:20", R"({"run":"1","z_mm":)" + std::string(z) + "}", place);
    for (int i = 1; i <= 6; ++i)
        site.record("moisture", "08:30",
                    R"({"label":"M)" + std::to_string(i) + R"(","reading_pct":12.)" + std::to_string(i) +
                        R"(,"board_c":15.5,"setting":"group 2"})",
                    "0." + std::to_string(i) + "0,0.50");
    return site;
}

} // namespace

TEST_CASE("an inspection has its sections in the order of the trade, each of them always") {
    const std::vector<std::string> order{"To put right before the sheet goes down",
                                         "Who, when and the weather",
                                         "Safety and access",
                                         "Under the deck",
                                         "Boards",
                                         "Fixing heads",
                                         "Joints and dust",
                                         "Moisture",
                                         "Levels and falls",
                                         "Outline",
                                         "Walls and heights",
                                         "Gutter, outlets and overflow",
                                         "Openings",
                                         "Sheet and creases",
                                         "Tins, tape and sealant",
                                         "What was not looked at",
                                         "Decided by others",
                                         "Photographs",
                                         "Signature"};
    auto found = headings(inspected(test::roof_being_inspected(), test::kFirstMorning));
    std::erase(found, "Worth noting");
    CHECK(found == order);
    CHECK(headings(inspected(Site().opened(), "09:00")) == order);
}

TEST_CASE("a deck with a wet point is not fit, and the point says which finding") {
    const auto paper = inspected(test::roof_being_inspected(), test::kFirstMorning);
    CHECK(verdict(paper) == "The deck is not fit to bond a sheet to: 1 thing stops it.");
    CHECK(row_of(paper, "Point", "M3").starts_with("M3|20.4|13.5|group 2|21.4|stop, see 1|"));
    CHECK(row_of(paper, "Point", "M1").starts_with("M1|12.1|13.5|group 2|13.1|dry enough|"));
}

TEST_CASE("a deck cannot be called fit while boards, heads, moisture or levels were not read") {
    CHECK(verdict(inspected(Site().opened(), "09:00")) ==
          "The deck cannot be called fit yet: nothing is recorded of the boards, the fixing heads, the "
          "moisture and the levels.");
    CHECK(verdict(inspected(with_deck_read(), "08:16")) ==
          "The deck cannot be called fit yet: nothing is recorded of the moisture and the levels.");
    CHECK(verdict(inspected(with_deck_read(), "09:00")) == "The deck is fit to bond a sheet to.");
}

TEST_CASE("what only has to be done before the hand-over is listed but does not make a deck unfit") {
    const auto paper = inspected(with_deck_read(), "09:00");
    CHECK(says(paper, "put right: nothing said about building control"));
    CHECK(says(paper, "To be done before  sign-off of hand over"));
    CHECK(verdict(paper) == "The deck is fit to bond a sheet to.");
}

TEST_CASE("the weather of an hour is listed but does not make a deck unfit") {
    Site site = with_deck_read();
    site.record("air", "08:50", R"({"air_c":2,"rh_pct":95,"surface_c":2})");
    const auto paper = inspected(site, "09:00");
    CHECK(verdict(paper) == "The deck is fit to bond a sheet to.");
    CHECK(says(paper, "stop: humidity 95 %"));
}

TEST_CASE("a point that could not be reached says so in its row and in the list of what was not looked at") {
    const auto paper = inspected(test::roof_being_inspected(), test::kFirstMorning);
    CHECK(row_of(paper, "Point", "M6").starts_with("M6|could not be reached|"));
    CHECK(says(paper, "- Moisture, M6: "));
    CHECK(says(paper, "asbestos, not looked at") == false);
    CHECK(says(paper, "Asbestos, not looked at"));
}

TEST_CASE("heads say how many were checked and what it could be on the whole roof") {
    CHECK(says(inspected(test::roof_being_inspected(), test::kFirstMorning),
               "Of 300 heads 60 were checked: 2 not below the face (3.3 %)."));
}

TEST_CASE("a wall names each height, the least of them and what was found") {
    const auto paper = inspected(test::roof_being_inspected(), test::kFirstMorning);
    CHECK(row_of(paper, "Edge", "CD").starts_with("CD|brick|window|152, 149, 131|131|"));
}

TEST_CASE("every numbered finding carries where its limit comes from") {
    const auto paper = inspected(test::roof_being_inspected(), test::kFirstMorning);
    CHECK(says(paper, "BS 6229:2018 (published guidance)"));
    CHECK(says(paper, "ranges 16 to 22 %"));
}

TEST_CASE("a limit that was let go stands among the decisions with who, role and reason") {
    const auto paper = inspected(test::troubled_roof(), test::kHandedOver);
    CHECK(says(paper, "let go: chase 131 mm"));
    CHECK(says(paper, "Mrs Odile Ferring, customer"));
    CHECK(says(paper, "the window sill cannot be raised this year"));
}

TEST_CASE("an unsigned inspection waits for a pen, a signed one names who and when") {
    CHECK(says(inspected(test::roof_being_inspected(), test::kFirstMorning), "Not signed yet."));
    CHECK(says(inspected(test::troubled_roof(), test::kHandedOver),
               "Deck inspected and signed: Ada Harrow, installer, 20 May 2026, 11:20"));
}

TEST_CASE("the inspection of a troubled roof is the approved one") {
    const auto paper = inspected(test::roof_being_inspected(), test::kFirstMorning);
    CHECK(test::differs_from_approved("inspection.txt", test::words_of(test::settled(paper))) == "");
}

TEST_CASE("a section of which nothing was recorded says so once") {
    Site site;
    site.opened();
    site.record("site", "08:05", R"({"customer":"c"})"); // personal, so there is nothing to print of it here
    const Document paper = inspected(site, "09:00");
    std::size_t said = 0;
    bool is_safety = false;
    for (const Block& block : paper.blocks) {
        if (const auto* heading = std::get_if<Heading>(&block))
            is_safety = heading->text == "Safety and access";
        const auto* sentence = std::get_if<Paragraph>(&block);
        if (is_safety && sentence != nullptr) ++said;
    }
    CHECK(said == 1);
}
