#include "tests/desk/desk_support.h"

using namespace undersheet;

TEST_CASE("a job that is opened is the job worked on from then on") {
    DeskTest test;
    good(test.open().open_job(DeskTest::by("IP"), {"A-08", "porch", "", false, ""}));
    CHECK(good(test.open().stages({})).job.ref == "A-08");
    CHECK(good(test.open().stages({"A-07", "", ""})).job.ref == "A-07");
    CHECK(good(test.open().stages({"a-07", "", ""})).job.ref == "A-07");
}

TEST_CASE("a job nobody opened is refused with the nearest one") {
    DeskTest test;
    const auto refused = test.open().stages({"A-70", "", ""});
    REQUIRE(!refused.ok());
    CHECK(refused.fault().code == Code::job_unknown);
    CHECK(refused.fault().clears == "did you mean 'A-07'?");
}

TEST_CASE("a job's number cannot be given twice") {
    DeskTest test;
    CHECK(!test.open().open_job(DeskTest::by("IP"), {"a-07", "another", "", false, ""}).ok());
    CHECK(good(test.open().jobs()).size() == 1);
}

TEST_CASE("an old roof taken over from paper is closed and says so") {
    DeskTest test;
    const auto line =
        good(test.open().open_job(DeskTest::by("IP"), {"O-12", "old porch", "", true, "2019-08-30"}));
    CHECK(line.from_paper);
    CHECK(line.standing == "from paper, finished 2019-08-30");
    const auto refused = test.open().record({"O-12", "IP", ""}, {"tape", "AB", "", {"m=3.2"}});
    REQUIRE(!refused.ok());
    CHECK(refused.fault().code == Code::closed);
}

TEST_CASE("an old roof needs the day it was finished, a new one has none") {
    DeskTest test;
    CHECK(!test.open().open_job(DeskTest::by("IP"), {"O-12", "", "", true, ""}).ok());
    CHECK(!test.open().open_job(DeskTest::by("IP"), {"N-12", "", "", false, "2019-08-30"}).ok());
    CHECK(good(test.open().jobs()).size() == 1);
}

TEST_CASE("a method file that breaks its own rules opens no job") {
    DeskTest test;
    const auto refused = test.open().open_job(DeskTest::by("IP"), {"A-09", "", "{\"format\": 1}", false, ""});
    REQUIRE(!refused.ok());
    CHECK(refused.fault().code == Code::method_malformed);
    CHECK(good(test.open().jobs()).size() == 1);
}

TEST_CASE("work can be written down before the job was opened on this machine") {
    DeskTest test("2026-11-20T12:00:00+00:00");
    const auto kept = good(test.record("tape", {"m=3.2"}, "AB"));
    CHECK(kept.job.ref == "A-07");
    REQUIRE(kept.marks.size() == 1);
    CHECK(kept.marks[0].starts_with("written later"));
}

TEST_CASE("the jobs are listed with where each stands, and a star for the last") {
    DeskTest test;
    good(test.open().open_job(DeskTest::by("IP"), {"A-08", "porch", "", false, ""}));
    const auto jobs = good(test.open().jobs());
    REQUIRE(jobs.size() == 2);
    CHECK(jobs[0].job.ref == "A-07");
    CHECK(jobs[0].asked_by == "A-07"); // no other is called so
    CHECK(!jobs[0].current);
    CHECK(jobs[1].current);
    CHECK(jobs[1].standing == "nothing under way");
}
