// Entries of a shape that no catalogue would take: a book from elsewhere may hold them, signed and all.
#include "job/day_work.h"
#include "job/punch.h"
#include "tests/job/takeoff_site.h"

using namespace undersheet;
using test::Site;

TEST_CASE("a number on the punch list that can be none is the number of no item") {
    Site site;
    site.opened();
    site.record("punch_add", "09:00", R"({"number":1,"text":"scuff","severity":"note"})");
    site.record("punch_add", "09:01", R"({"number":999999999999999,"text":"great","severity":"note"})");
    site.record("punch_add", "09:02", R"({"number":-1,"text":"below","severity":"note"})");
    site.record("punch_clear", "09:03", R"({"number":999999999999999,"why":"gone"})");
    site.record("punch_join", "09:04", R"({"number":1,"with":-999999999999999})");
    const auto job = site.fold("10:00");
    REQUIRE(job.punch.size() == 3);
    CHECK(job.punch[0].number == 1);
    CHECK(job.punch[0].cleared == nullptr);
    CHECK(job.punch[1].number == 0);
    CHECK(job.punch[2].number == 0);
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
