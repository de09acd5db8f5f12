#include "paper/stages.h"

#include "tests/paper/approved.h"
#include "tests/paper/troubled_roof.h"

using namespace undersheet;
using namespace undersheet::paper;

namespace {

Document sheet_of(const test::Site& site, const std::string& now) {
    const auto job = site.fold(now);
    return stages(job, job::judge(job, test::default_method(), test::default_kinds()), test::test_setting());
}

const Row& row_of(const Document& document, const std::string& part) {
    for (const Block& block : document.blocks)
        if (const auto* table = std::get_if<Table>(&block))
            for (const Row& row : table->rows)
                if (row.cells.front().words() == part) return row;
    throw std::logic_error("no row for " + part);
}

bool says(const Document& document, const std::string& words) {
    return test::words_of(document).find(words) != std::string::npos;
}

} // namespace

TEST_CASE("there is one line for every part of the roof, in the order of work") {
    const auto site = test::troubled_roof();
    const auto job = site.fold(test::kHandedOver);
    const auto paper = sheet_of(site, test::kHandedOver);
    const auto& table = std::get<Table>(paper.blocks[3]);
    REQUIRE(table.rows.size() == job.parts.size());
    for (std::size_t i = 0; i < job.parts.size(); ++i)
        CHECK(table.rows[i].cells.front().words() == job::part_words(job.parts[i].name));
}

TEST_CASE("a signed part names who, when, its tin and the reading it was begun under") {
    const auto paper = sheet_of(test::troubled_roof(), test::kHandedOver);
    const Row& field = row_of(paper, "field section 1");
    CHECK(field.cells[1].words() == "signed");
    CHECK(field.cells[2].words() == "Ada Harrow");
    CHECK(field.cells[3].words() == "20 May 2026, 13:40");
    CHECK(field.cells[4].words() == "FA-2, deck adhesive");
    CHECK(field.cells[5].words() == "20 May 2026, 12:35: air 16 °C, 60 %, deck 18 °C");
}

TEST_CASE("a part that does not ask for a reading shows none") {
    CHECK(row_of(sheet_of(test::troubled_roof(), test::kHandedOver), "trim off").cells[5].is_empty());
}

TEST_CASE("a signature that a reopening took back stands struck beneath its part, with the reason") {
    const auto paper = sheet_of(test::troubled_roof(), test::kHandedOver);
    const Row& band = row_of(paper, "band, edge AB");
    REQUIRE(band.beneath.size() == 1);
    CHECK(band.beneath[0].runs[0].weight == Weight::struck);
    CHECK(band.beneath[0].words() ==
          "Signed by Odo Finch, 20 May 2026, 16:15 no longer stands: blister at AB+1.20");
}

TEST_CASE("a signature that was looked at again stands, with the confirmation beneath") {
    auto site = test::roof_being_inspected();
    for (const char* event : {"begin", "sign"}) site.record(event, "10:00", "{}", "", "deck");
    site.record("alter", "10:30", R"({"what":"planed"})", "2.00,1.00");
    site.record("confirm", "10:40", R"({"why":"levels read again, all well"})", "", "deck");
    const auto paper = sheet_of(site, "2026-05-20T11:00:00+01:00");
    CHECK(row_of(paper, "deck").cells[1].words() == "signed");
    REQUIRE(row_of(paper, "deck").beneath.size() == 1);
    CHECK(row_of(paper, "deck").beneath[0].words() ==
          "Looked at again and confirmed by Ada Harrow, 20 May 2026, 10:40: levels read again, all well");
}

TEST_CASE("a part sent back before it was signed says by whom and why") {
    auto site = test::roof_being_inspected();
    for (const char* event : {"begin", "finish"}) site.record(event, "10:00", "{}", "", "deck");
    site.record("send_back", "10:20", R"({"why":"two heads still proud at B2"})", "", "deck");
    const auto paper = sheet_of(site, "2026-05-20T11:00:00+01:00");
    REQUIRE(row_of(paper, "deck").beneath.size() == 1);
    CHECK(row_of(paper, "deck").beneath[0].words() ==
          "Sent back by Ada Harrow, 20 May 2026, 10:20: two heads still proud at B2");
}

TEST_CASE("a pause has its reason and its length, and rain is named") {
    const auto paper = sheet_of(test::troubled_roof(), test::kHandedOver);
    CHECK(says(paper, "     75  a shower"));
    CHECK(says(paper, "    Rain."));
}

TEST_CASE("what was left out has its reason and who agreed") {
    const auto paper = sheet_of(test::troubled_roof(), test::kHandedOver);
    CHECK(row_of(paper, "chase, edge CD").cells[1].words() == "left out");
    CHECK(says(paper, "the builder points it"));
    CHECK(says(paper, "Mrs Odile"));
}

TEST_CASE("a roof nobody has begun has every part waiting and nothing to settle") {
    const auto paper = sheet_of(test::roof_being_inspected(), test::kFirstMorning);
    CHECK(row_of(paper, "field section 1").cells[1].words() == "waiting");
    CHECK(says(paper, "The work was not paused."));
    CHECK(says(paper, "Nothing was left out."));
    CHECK(says(paper, "Nothing is left to settle."));
}

TEST_CASE("the stage sheet of a troubled roof is the approved one") {
    CHECK(test::differs_from_approved("stages.txt", test::words_of(test::settled(sheet_of(
                                                        test::troubled_roof(), test::kHandedOver)))) == "");
}
