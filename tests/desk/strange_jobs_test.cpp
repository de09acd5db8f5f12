// Two jobs of one number, one that cannot be judged here, and a phone that somebody reported lost.
#include "tests/desk/desk_support.h"

#include "tests/support/tamper.h"

#include <algorithm>

using namespace undersheet;

namespace {

// Two firms that each opened a job A-07; the first takes in the second's.
struct TwoOfOneNumber {
    TwoOfOneNumber() {
        first.survey();
        const std::string file = folder.file("theirs.hand");
        good(desk::Desk::start(folder.file("theirs.book"), {"Bray Roofing", "", "", "", ""}, world()));
        const auto second = [&] { return good(desk::Desk::open(folder.file("theirs.book"), world())); };
        good(second().add_person({}, {"Oswin Bray", "installer", "OB", "", "", ""}));
        good(second().open_job(DeskTest::by("OB"), {"A-07", "porch", "", false, ""}));
        good(second().hand({"A-07", false, file}));
        taken = good(first.open().take(file));
    }
    std::unique_ptr<entry::World> world() { return std::make_unique<FixedWorld>(1000 + ++starts); }

    DeskTest first;
    std::uint64_t starts = 0;
    TempFolder folder = {};
    desk::TakenIn taken = {};
};

desk::Asked in_job(const std::string& job) { return {job, "IP", "2026-06-11T09:00:00+01:00"}; }

} // namespace

TEST_CASE("of two jobs with one number neither is meant, and each is named by its id") {
    TwoOfOneNumber two;
    REQUIRE(two.taken.remarks.size() == 1);
    CHECK(two.taken.remarks[0].starts_with("there are now 2 jobs called A-07"));
    const desk::Record chase = {"chase", "CD+0.10", {}, {"height_mm=160"}};
    const std::string line = line_of(two.first.open().record(in_job("A-07"), chase));
    CHECK(line.find("2 jobs are called 'A-07'; name the one that is meant: --job ") != std::string::npos);
    const auto jobs = good(two.first.open().jobs());
    REQUIRE(jobs.size() == 2);
    for (const auto& job : jobs) {
        INFO(job.id);
        CHECK(job.asked_by == job.id.substr(0, 8)); // no shorter, see below
        CHECK(line.find("--job " + job.id.substr(0, 8)) != std::string::npos);
        CHECK(good(two.first.open().history(in_job(job.id))).lines.size() >= 1);
        CHECK(good(two.first.open().history(in_job(job.id.substr(0, 8)))).lines.size() >= 1);
    }
    CHECK_FALSE(two.first.open().history(in_job(jobs[0].id.substr(0, 7))).ok());
}

TEST_CASE("the job worked on last goes on without being named") {
    TwoOfOneNumber two;
    good(two.first.open().record({"", "IP", "2026-06-11T09:00:00+01:00"},
                                 {"chase", "CD+0.10", {}, {"height_mm=160"}}));
    CHECK(good(two.first.open().findings({})).job.ref == "A-07");
}

TEST_CASE("a job that cannot be judged here keeps nobody from the others") {
    DeskTest test;
    test.survey();
    const std::string method = [&] {
        std::string text = bytes_of_file(std::string(UNDERSHEET_SOURCE_DIR) + "/schema/method.json");
        return text.replace(text.find("\"value\": 600"), 12, "\"value\": 601");
    }();
    desk::NewJob own_limits = {"A-08", "porch", "", false, ""};
    own_limits.method = method;
    good(test.open().open_job(DeskTest::by("IP"), own_limits));
    tamper(test.path(), "DELETE FROM text WHERE CAST(body AS TEXT) LIKE '%601%'");
    const auto jobs = good(test.open().jobs());
    REQUIRE(jobs.size() == 2);
    CHECK(std::count_if(jobs.begin(), jobs.end(), [](const auto& job) {
              return job.standing.starts_with("cannot be read here: ");
          }) == 1);
    good(test.open().add_person(DeskTest::by("IP"), {"Oswin Bray", "helper", "OB", "", "", ""}));
    CHECK_FALSE(good(test.open().verify()).ok);
}

TEST_CASE(
    "what a phone writes that was reported lost is said not to count, until it is settled that it does") {
    DeskTest test;
    test.survey();
    const std::string all = test.path() + ".hand", job = test.path() + ".job.hand",
                      other = test.path() + ".other";
    good(test.open().hand({"", true, all}));
    good(desk::Desk::start_from({other, "2026-06-11T09:00:00+01:00"}, all));
    const auto second = [&] { return good(desk::Desk::open({other, "2026-06-11T09:00:00+01:00"})); };
    const std::string lost = good(test.open().devices()).front().device;
    good(second().revoke(in_job("A-07"), lost, "left on the train"));
    good(second().hand({"A-07", false, job}));
    good(test.record("chase", {"height_mm=160"}, "CD+0.10", "08:50")); // nobody here knows of it
    good(test.open().take(job));

    const auto after = good(test.record("chase", {"height_mm=161"}, "CD+0.20", "09:10"));
    const auto open = good(test.open().to_settle({}));
    REQUIRE(open.items.size() == 1);
    const std::string item = open.items[0].id;
    CHECK(std::count(after.marks.begin(), after.marks.end(),
                     "does not count: this device was reported lost; undersheet settle " + item) == 1);
    CHECK(open.items[0].sides.size() ==
          3); // the report, and what it wrote before and after it had heard of it

    const auto kept = open.items[0].sides.back().entry;
    good(test.open().settle(DeskTest::by("IP", "09:15"), {item, kept, "it was in the van"}));
    const auto settled = good(test.open().to_settle({}));
    REQUIRE(settled.items.size() == 1);
    CHECK(settled.items[0].id == item);
    CHECK_FALSE(settled.items[0].open);
    for (const auto& mark : good(test.record("chase", {"height_mm=162"}, "CD+0.30", "09:20")).marks)
        CHECK_FALSE(mark.starts_with("does not count"));
}
