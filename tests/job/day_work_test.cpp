// What is left and how long it takes: the hours of the L-shaped roof that was taken off with a pencil, shared by a crew of two.
#include "job/day_work.h"

#include "job/day.h"
#include "tests/job/takeoff_site.h"

using namespace undersheet;
using job::Work;

namespace {

std::vector<Work> left(const test::Site& site, const std::string& now = "18:00") {
    auto row = job::work_left(site.fold(now), site.method());
    REQUIRE(row.ok());
    return *std::move(row);
}

const Work& work(const std::vector<Work>& row, const std::string& stage) {
    for (const Work& one : row)
        if (one.stage == stage) return one;
    throw std::logic_error("nothing is left of " + stage);
}

} // namespace

TEST_CASE("a roof that was only surveyed has all its stages left, in the order of work, with the take-off's "
          "hours") {
    const auto row = left(test::ell());
    std::vector<std::string> stages;
    for (const Work& one : row) stages.push_back(one.stage);
    CHECK(stages == std::vector<std::string>{"deck", "plate", "lay-out", "field", "band", "wall", "chase",
                                             "openings", "patches", "cover", "kerb", "corners", "trim-off",
                                             "final"});
    // By hand: set up 1.5 + 27 x 0.1; 0.5 + 27 x 0.03; 21.91 x 0.1; 12.6 x 0.06; 9.6 x 0.30; 9.6 x 0.25.
    CHECK(work(row, "deck").hours_h == Approx(4.2));
    CHECK(work(row, "lay-out").hours_h == Approx(1.31));
    CHECK(work(row, "field").hours_h == Approx(2.191));
    CHECK(work(row, "band").hours_h == Approx(0.756));
    CHECK(work(row, "band").part == "band/AB, BC, CD, FA");
    CHECK(work(row, "wall").hours_h == Approx(2.88));
    CHECK(work(row, "chase").hours_h == Approx(2.4));
    CHECK(work(row, "openings").hours_h == Approx(3.25));
    CHECK(work(row, "patches").hours_h == Approx(2.8));
    CHECK(work(row, "corners").hours_h == Approx(0.6));
    double all_h = 0;
    for (const Work& one : row) all_h += one.hours_h;
    CHECK(all_h == Approx(26.037 - 0.5)); // all but the hand-over
}

TEST_CASE(
    "a crew of two takes half the hours, up to the next quarter, and the sheet rests before it is bonded") {
    const auto row = left(test::ell());
    CHECK(work(row, "deck").minutes == 135);   // 4.2 h / 2 = 126 min
    CHECK(work(row, "lay-out").minutes == 45); // 39.3 min
    CHECK(work(row, "lay-out").wait_min == 30);
    CHECK(work(row, "final").minutes == 30); // 30 min exactly
    CHECK(work(row, "final").wait_min == 0);
}

TEST_CASE("each section of the field is a piece of work of its own, with its share") {
    auto site = test::ell();
    site.record("section", "09:15", R"({"label":"1","order":1,"edges":["AB"]})");
    site.record("section", "09:15", R"({"label":"2","order":2,"edges":["EF"]})");
    const auto row = left(site);
    int sections = 0;
    double all_h = 0;
    for (const Work& one : row) {
        if (one.stage != "field") continue;
        ++sections;
        all_h += one.hours_h;
    }
    CHECK(sections == 2);
    CHECK(all_h == Approx(2.191));
}

TEST_CASE("what is left out is not left to do") {
    auto site = test::ell();
    site.act("leave_out", "chase/EF", "10:00",
             R"({"why":"the customer's mason does it","agreed_by":"Mr X","whose":"the customer"})");
    const auto row = left(site);
    CHECK(work(row, "chase").part == "chase/DE");
    CHECK(work(row, "chase").hours_h == Approx(3.6 * 0.25));
}

TEST_CASE("a roof that was not taped says what is missing") {
    test::Site site;
    site.opened();
    CHECK(job::work_left(site.fold("18:00"), site.method()).fault().code == Code::record_too_thin);
}
