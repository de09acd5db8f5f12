#include "paper/look.h"

#include "paper/completion.h"
#include "paper/papers.h"
#include "paper/reminders.h"
#include "tests/paper/troubled_roof.h"

#include <algorithm>

using namespace undersheet;
using namespace undersheet::paper;

namespace {

constexpr const char* kCall = "2027-02-03T09:00:00+00:00";
constexpr const char* kLater = "2027-02-03T10:00:00+00:00";

// The troubled roof with a leak in its first winter, looked at and opened at corner D.
test::Site visited_roof() {
    auto site = test::troubled_roof();
    const auto opened = site.record("supplement", kCall, R"({"number":1,"why":"call"})").hash;
    site.go_on_in(opened);
    site.record(
        "look", "2027-02-03T09:10:00+00:00",
        R"({"weather_before":"two days of rain","seen":"tape lifted 40 mm","cause":"found",)"
        R"("cause_text":"lifted tape","whose":"workmanship","state_after":"dry under a weighted cover",)"
        R"("next_due":"2027-02-17"})",
        "D");
    site.record("moisture", "2027-02-03T09:15:00+00:00", R"({"reading_pct":23.5,"setting":"2"})",
                "0.20,1.90");
    site.record("reopen", "2027-02-03T09:20:00+00:00", R"({"why":"tape lifted"})", "", "patches/D");
    return site;
}

Document paper_of(const test::Site& site, const std::string& now) {
    const auto job = site.fold(now);
    return *look(job, job::judge(job, test::default_method(), test::default_kinds()), test::test_setting());
}

bool says(const Document& document, const std::string& words) {
    return test::words_of(document).find(words) != std::string::npos;
}

} // namespace

TEST_CASE("the paper of a visit says how the roof was left, why somebody came and what was seen") {
    const auto paper = paper_of(visited_roof(), kLater);
    CHECK(paper.head.name == "Supplement 1: the customer rang");
    CHECK(std::get<Verdict>(paper.blocks.front()).text.words() == "Left as: dry under a weighted cover");
    CHECK(says(paper, "two days of rain"));
    CHECK(says(paper, "found: lifted tape"));
    CHECK(says(paper, "workmanship"));
    CHECK(says(paper, "corner D"));
}

TEST_CASE("the paper of a visit holds what was measured on it and nothing that was measured before") {
    const auto paper = paper_of(visited_roof(), kLater);
    CHECK(says(paper, "23.5 %"));
    CHECK_FALSE(says(paper, "B2"));
}

TEST_CASE("what a visit opened stands struck on its paper and under what is still open") {
    const auto paper = paper_of(visited_roof(), kLater);
    CHECK(says(paper, "no longer stands: tape lifted"));
    CHECK(says(paper, "patch D: opened again"));
    CHECK(says(paper, "This supplement is not signed yet."));
}

TEST_CASE("the paper of a visit names what the visit used on a part, not what the first record used on it") {
    auto site = visited_roof();
    site.record("tin", "2027-02-03T09:22:00+00:00",
                R"({"label":"FT-9","product":"flashing_tape","batch":"FT-9","use_by":"2028-03-31"})");
    site.record("begin", "2027-02-03T09:25:00+00:00", R"({"tin":["FT-9"]})", "", "patches/D");
    const auto paper = paper_of(site, kLater);
    for (std::size_t i = 0; i + 1 < paper.blocks.size(); ++i) {
        const auto* heading = std::get_if<Heading>(&paper.blocks[i]);
        if (heading == nullptr || heading->text != "What was done") continue;
        const auto& rows = std::get<Table>(paper.blocks[i + 1]).rows;
        const auto patch = std::find_if(rows.begin(), rows.end(),
                                        [](const Row& row) { return row.cells[0].words() == "patch D"; });
        REQUIRE(patch != rows.end());
        CHECK(patch->cells[4].words() == "FT-9, flashing tape"); // FT-1 was the first day's
    }
}

TEST_CASE("the day of the next look goes into a calendar") {
    const auto paper = paper_of(visited_roof(), kLater);
    CHECK(says(paper, "The next look is due on 17 February 2027."));
    const auto ics = render_ics(paper, Words::english());
    REQUIRE(ics.ok());
    CHECK(ics->find("DTSTART;VALUE=DATE:20270217") != std::string::npos);
}

TEST_CASE("a signed visit names who signed for the customer and gives the receipt") {
    auto site = visited_roof();
    auto& entry = const_cast<entry::Entry&>(
        site.record("supplement_sign", "2027-02-03T09:50:00+00:00", R"({"customer":"kept apart"})"));
    entry.personal = {{"customer", "Mrs Ebba Lorn"}};
    const auto paper = paper_of(site, kLater);
    CHECK(says(paper, "Mrs Ebba Lorn"));
    CHECK(says(paper, "acknowledged"));
    CHECK(says(paper, "undersheet.receipt.1"));
    CHECK_FALSE(says(paper, "This supplement is not signed yet."));
}

TEST_CASE("the completion record stays as it was and says that somebody came back") {
    auto site = visited_roof();
    site.go_on_in({});
    const auto job = site.fold(kLater);
    const auto record =
        completion(job, job::judge(job, test::default_method(), test::default_kinds()), test::test_setting());
    CHECK(std::get<Verdict>(record.blocks.front()).text.words().find("It is finished and nothing is open.") !=
          std::string::npos);
    CHECK(says(record, "Supplement 1: the customer rang, begun 3 February 2027, 09:00, not signed yet"));
    CHECK_FALSE(says(record, "23.5"));
}

TEST_CASE("without a visit there is no such paper, and the refusal says how one begins") {
    const auto job = test::troubled_roof().fold(test::kHandedOver);
    const auto refused =
        look(job, job::judge(job, test::default_method(), test::default_kinds()), test::test_setting());
    REQUIRE(!refused.ok());
    CHECK(refused.fault().code == Code::record_too_thin);
    CHECK(refused.fault().clears.find("supplement open") != std::string::npos);
}
