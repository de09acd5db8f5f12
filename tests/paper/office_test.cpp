// The office file: all of it, traced to its entries.
#include "paper/office.h"

#include "base/text.h"
#include "paper/journal.h"
#include "tests/paper/troubled_roof.h"

#include <algorithm>

using namespace undersheet;
using namespace undersheet::paper;

namespace {

Document file_of(const test::Site& site, const std::string& now) {
    const auto job = site.fold(now);
    return office(job, job::judge(job, test::default_method(), test::default_kinds()), test::test_setting());
}

std::vector<std::string> headings(const Document& document, int level) {
    std::vector<std::string> found;
    for (const Block& block : document.blocks)
        if (const auto* heading = std::get_if<Heading>(&block); heading != nullptr && heading->level == level)
            found.push_back(heading->text);
    return found;
}

// The last table under that heading.
const Table& table_under(const Document& document, const std::string& heading) {
    bool is_there = false;
    for (const Block& block : document.blocks) {
        if (const auto* found = std::get_if<Heading>(&block)) is_there = found->text == heading;
        if (const auto* table = std::get_if<Table>(&block); table != nullptr && is_there) return *table;
    }
    throw std::logic_error("no table under " + heading);
}

std::vector<std::string> first_cells(const Table& table) {
    std::vector<std::string> cells;
    for (const Row& row : table.rows) cells.push_back(row.cells.front().words());
    return cells;
}

} // namespace

TEST_CASE("the office file holds the four papers of the job and then what they leave out") {
    const auto file = file_of(test::troubled_roof(), test::kHandedOver);
    CHECK(headings(file, 2) == std::vector<std::string>{"Deck inspection", "Stage sign-off sheet",
                                                        "Punch list", "Completion record",
                                                        "Which tin went where", "Planned and used",
                                                        "Days and hours", "Every reading as it was read",
                                                        "What was corrected", "The journal, entry by entry"});
}

TEST_CASE("every entry of the job stands in the journal by its short name, in order") {
    const auto site = test::troubled_roof();
    const auto file = file_of(site, test::kHandedOver);
    const auto job = site.fold(test::kHandedOver);
    std::vector<std::string> names;
    for (const auto& entry : *job.entries) names.push_back(entry::short_name(entry.hash));
    CHECK(first_cells(table_under(file, "The journal, entry by entry")) == names);
}

TEST_CASE("a corrected reading stands as it was read, and the correction beside it field by field") {
    test::Site site;
    site.opened();
    const auto read = site.record("chase", "08:20", R"({"height_mm":165})", "CD+0.10");
    const auto name = entry::hash_text(read.hash);
    site.record("correct", "08:30",
                R"({"of":")" + name + R"(","fields":{"height_mm":156},"why":"digits swapped"})");
    site.record("correct", "08:40",
                R"({"of":")" + name + R"(","fields":{"height_mm":155},"why":"taped again"})");
    const auto file = file_of(site, "09:00");
    const auto& raw = table_under(file, "Every reading as it was read");
    REQUIRE(raw.rows.size() == 1);
    CHECK(raw.rows[0].beneath.front().words().find("165 mm") != std::string::npos);
    const auto& corrected = table_under(file, "What was corrected");
    REQUIRE(corrected.rows.size() == 2);
    CHECK(corrected.rows[0].cells[2].words() == "165 mm");
    CHECK(corrected.rows[0].cells[3].words() == "156 mm");
    CHECK(corrected.rows[1].cells[2].words() == "156 mm");
    CHECK(corrected.rows[1].cells[3].words() == "155 mm");
    CHECK(corrected.rows[1].cells[4].words() == "taped again");
}

TEST_CASE("an entry of a kind this program does not know stands in the journal as that") {
    test::Site site;
    site.opened();
    site.record("drone_flight", "08:20", R"({"height_m":12})");
    const auto file = file_of(site, "09:00");
    const auto& journal = table_under(file, "The journal, entry by entry");
    CHECK(journal.rows.back().cells[1].words() == "drone_flight (not understood by this program)");
}

TEST_CASE("planned and used stand with two decimals, whatever the sum came to") {
    auto site = test::roof_being_inspected();
    site.record("use", "09:30", R"({"tin":"FA-2","amount_l":2.5})", "", "field/1");
    const auto file = file_of(site, "10:00");
    const auto& rows = table_under(file, "Planned and used").rows;
    REQUIRE(!rows.empty());
    for (const Row& row : rows)
        for (const std::size_t column : {1U, 2U}) {
            const std::string words = row.cells[column].words();
            INFO(words);
            CHECK(words.find('.') + 3 == words.find(' ')); // "4.80 l"
        }
}
