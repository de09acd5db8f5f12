// Entries of a shape that no catalogue would take: a book from elsewhere may hold them, signed and all.
#include "job/day_work.h"
#include "job/punch.h"
#include "tests/job/takeoff_site.h"

#include <algorithm>

using namespace undersheet;
using test::Site;

TEST_CASE("a number on the punch list that can be none numbers no item, and the entry is a problem") {
    Site site;
    site.opened();
    site.record("punch_add", "09:00", R"({"number":1,"text":"scuff","severity":"note"})");
    site.record("punch_add", "09:01", R"({"number":999999999999999,"text":"great","severity":"note"})");
    site.record("punch_add", "09:02", R"({"number":-1,"text":"below","severity":"note"})");
    site.record("punch_clear", "09:03", R"({"number":999999999999999,"why":"gone"})");
    site.record("punch_join", "09:04", R"({"number":1,"with":-999999999999999})");
    const auto job = site.fold("10:00");
    REQUIRE(job.punch.size() == 1);
    CHECK(job.punch[0].number == 1);
    CHECK(job.punch[0].cleared == nullptr);
    CHECK(job.problems.size() == 4);
}

TEST_CASE("a rest that never ends is as long as the longest plan") {
    std::string text(schema::method_json());
    const std::string usual = "\"key\": \"rest_min\", \"value\": 30";
    REQUIRE(text.find(usual) != std::string::npos);
    const auto method = method::Method::read(
        text.replace(text.find(usual), usual.size(), "\"key\": \"rest_min\", \"value\": 999999999999999"));
    REQUIRE(method.ok());
    const auto row = job::work_left(test::ell().fold("18:00"), *method);
    REQUIRE(row.ok());
    int waits = 0;
    for (const auto& work : *row) waits = std::max(waits, work.wait_min);
    CHECK(waits == 60 * 24 * 60);
}

TEST_CASE("braces in what somebody wrote are not filled in") {
    Site site;
    site.opened();
    site.record(
        "tin", "09:00",
        R"({"product":"contact_adhesive","label":"{limit}{place}{part}","batch":"CA-8","use_by":"2026-06-10","size_l":5})");
    std::string says;
    for (const auto& finding : site.judge("10:00").findings) says += finding.says + "\n";
    INFO(says);
    CHECK(says.find("{limit}{place}{part}") != std::string::npos);
}

TEST_CASE("an entry that the catalogue would never have kept is a problem, and is not folded") {
    Site site;
    site.opened();
    site.record("edge", "09:00", R"({"kind":"gutter"})", "AB");
    site.record("edge", "09:01", R"({"kind":"cliff"})", "BC");
    site.record("edge", "09:01", R"({"kind":7})", "CD");
    site.record("tape", "09:02", R"({"m":60})", "AB");
    site.record("tape", "09:03", R"({"m":60.001})", "BC");
    site.record("board", "09:04", R"({"soft":"not_looked","thickness_mm":[18]})");
    site.record("day", "09:05", R"({"people":[1]})");
    const auto& chase = site.record("chase", "09:06", R"({"height_mm":165})", "AB+1.00");
    site.record("correct", "09:07",
                R"({"of":")" + entry::hash_text(chase.hash) + R"(","why":"slip","fields":[]})");
    const auto job = site.fold("10:00");
    REQUIRE(job.problems.size() == 6);
    CHECK(job.problems.front().starts_with("edge kind: \"cliff\" is nothing it can hold (entry "));
    CHECK(job.all("edge").size() == 1);
    CHECK(job.all("tape").size() == 1);
    CHECK(job.all("chase").size() == 1);
    (void)site.judge("10:00");
}

TEST_CASE("of a sheet for edges that nobody named nothing is said") {
    const auto says_size = [](Site& site) {
        site.record("sheet", "09:31", R"({"batch":"SH-1","width_m":3.05,"length_m":1})");
        const auto judged = site.judge("10:00");
        return std::any_of(judged.findings.begin(), judged.findings.end(),
                           [](const auto& finding) { return finding.rule == "sheet_short"; });
    };
    auto known = test::ell();
    CHECK(says_size(known));
    auto unknown = test::ell();
    unknown.record("edge", "09:30", "{}", "CD");
    CHECK_FALSE(says_size(unknown));
}
