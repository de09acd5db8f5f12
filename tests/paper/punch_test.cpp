#include "paper/punch.h"

#include "tests/paper/approved.h"
#include "tests/paper/troubled_roof.h"

using namespace undersheet;
using namespace undersheet::paper;

namespace {

Document list_of(const test::Site& site, const std::string& now) {
    const auto job = site.fold(now);
    return punch(job, job::judge(job, test::default_method(), test::default_kinds()), test::test_setting());
}

std::vector<const Item*> items(const Document& document) {
    std::vector<const Item*> found;
    for (const Block& block : document.blocks)
        if (const auto* item = std::get_if<Item>(&block)) found.push_back(item);
    return found;
}

const Item& item_saying(const Document& document, const std::string& words) {
    for (const Item* item : items(document))
        if (item->what.words().find(words) != std::string::npos) return *item;
    throw std::logic_error("no item says " + words);
}

const Table& table_of(const Document& document) {
    for (const Block& block : document.blocks)
        if (const auto* table = std::get_if<Table>(&block)) return *table;
    throw std::logic_error("there is no table");
}

std::string fact(const Item& item, const std::string& name) {
    for (const Fact& fact : item.facts)
        if (fact.name == name) return fact.value.words();
    return "(none)";
}

} // namespace

TEST_CASE("what is open comes first, stops before what is to be put right") {
    const auto paper = list_of(test::roof_being_inspected(), test::kFirstMorning);
    const auto all = items(paper);
    REQUIRE(all.size() > 3);
    CHECK(all[0]->standing == "stop");
    CHECK(all[1]->standing == "put right");
    CHECK(std::get<Heading>(paper.blocks[1]).text == "Open");
}

TEST_CASE("an open row says what it has to be done before, and who raised it") {
    const auto paper = list_of(test::roof_being_inspected(), test::kFirstMorning);
    const Item& springy = item_saying(paper, "B2 is springy");
    CHECK(fact(springy, "To be done before").find("sign-off of deck") != std::string::npos);
    CHECK(fact(springy, "Raised by") == "Ada Harrow, 20 May 2026, 08:31");
    CHECK(fact(springy, "Cleared by") == "(none)");
}

TEST_CASE("two rows that were joined are shown once with what else it was raised as") {
    const auto paper = list_of(test::troubled_roof(), test::kHandedOver);
    const Item& blister = item_saying(paper, "a blister at the front edge");
    CHECK(blister.number == "1");
    CHECK(fact(blister, "Also raised as") == "2 front edge lifts a little");
    for (const Item* item : items(paper)) CHECK(item->what.words() != "front edge lifts a little");
}

TEST_CASE("a cleared row says who cleared it, what was done and who looked a second time") {
    const Item blister =
        item_saying(list_of(test::troubled_roof(), test::kHandedOver), "a blister at the front edge");
    CHECK(fact(blister, "Cleared by") == "Odo Finch, 21 May 2026, 09:35");
    CHECK(fact(blister, "What was done") == "lifted, dried, bonded again");
    CHECK(fact(blister, "Second look") == "Ada Harrow, 21 May 2026, 09:50");
}

TEST_CASE("a row without a second look says so") {
    const Item let_go = item_saying(list_of(test::troubled_roof(), test::kHandedOver), "chase 131 mm");
    CHECK(fact(let_go, "Second look") == "none yet");
}

TEST_CASE("findings that a new reading cleared stand together in one table") {
    const auto paper = list_of(test::troubled_roof(), test::kHandedOver);
    const auto& table = table_of(paper);
    const auto springy = std::find_if(table.rows.begin(), table.rows.end(), [](const Row& row) {
        return row.cells.front().words().find("B2 is springy") != std::string::npos;
    });
    REQUIRE(springy != table.rows.end());
    CHECK(springy->cells[1].words() == "B2");
    CHECK_FALSE(springy->cells[3].is_empty());
}

TEST_CASE("a limit that was let go is no longer open and names who let it go") {
    const auto paper = list_of(test::troubled_roof(), test::kHandedOver);
    CHECK(fact(item_saying(paper, "chase 131 mm"), "Let go").starts_with("Mrs Odile Ferring, customer, "));
}

TEST_CASE("photographs are told apart by before and after") {
    const Item blister =
        item_saying(list_of(test::troubled_roof(), test::kHandedOver), "a blister at the front edge");
    REQUIRE(blister.pictures.size() == 2);
    CHECK(blister.pictures[0].caption.starts_with("Before: a blister"));
    CHECK(blister.pictures[1].caption.starts_with("After: front edge, smoothed again"));
}

TEST_CASE("totals close the list and agree with its rows") {
    const auto paper = list_of(test::troubled_roof(), test::kHandedOver);
    const auto& totals = std::get<Facts>(paper.blocks.back());
    CHECK(totals.rows.front().value.words() == "0");
    CHECK(totals.rows.back().value.words() ==
          std::to_string(items(paper).size() + table_of(paper).rows.size()));
}

TEST_CASE("the punch list of a troubled roof is the approved one") {
    CHECK(test::differs_from_approved("punch.txt", test::words_of(test::settled(list_of(
                                                       test::troubled_roof(), test::kHandedOver)))) == "");
}
