#include "job/queries.h"

#include "tests/support/site.h"

using namespace undersheet;
using test::Site;

namespace {

const method::Method& method_used() { return test::default_method(); }

Site rectangle() {
    Site site;
    site.opened();
    const std::pair<const char*, const char*> edges[] = {
        {"AB", "gutter"}, {"BC", "kerb"}, {"CD", "wall"}, {"DA", "kerb"}};
    for (const auto& [edge, kind] : edges)
        site.record("edge", "08:01", R"({"kind":")" + std::string(kind) + R"("})", edge);
    const std::pair<const char*, const char*> tapes[] = {{"AB", "4"}, {"BC", "3"}, {"CD", "4"},
                                                         {"DA", "3"}, {"AC", "5"}, {"BD", "5"}};
    for (const auto& [pair, m] : tapes) site.record("tape", "08:02", R"({"m":)" + std::string(m) + "}", pair);
    return site;
}

// Four levels that rise `rise_mm` over the 3 m up the roof, measured on that surface.
void take_levels(Site& site, const std::string& run, const std::string& on, int rise_mm) {
    for (const char* place : {"0,0", "4,0"})
        site.record("level", "08:10", R"({"run":")" + run + R"(","on":")" + on + R"(","z_mm":0})", place);
    for (const char* place : {"0,3", "4,3"})
        site.record("level", "08:11",
                    R"({"run":")" + run + R"(","on":")" + on + R"(","z_mm":)" + std::to_string(rise_mm) + "}",
                    place);
}

} // namespace

TEST_CASE("a wood reading is corrected by the method's own rule, and the worse of the two counts") {
    Site site;
    site.record("moisture", "08:30", R"({"label":"M1","reading_pct":12.1,"board_c":15.5,"setting":"2"})");
    site.record("moisture", "08:31", R"({"label":"M2","reading_pct":12.1,"board_c":24,"setting":"2"})");
    site.record("moisture", "08:32", R"({"label":"M3","reading_pct":12.1,"setting":"2"})");
    site.record("moisture", "08:33", R"({"label":"M4","reading_pct":"cant_reach","setting":"2"})");
    const auto job = site.fold("09:00");
    const auto points = job.all("moisture");
    CHECK(*job::moisture_of(*points[0], method_used())->corrected_pct == Approx(12.775)); // 12.1 + 4.5 x 0.15
    CHECK(job::moisture_of(*points[1], method_used())->judged_pct ==
          Approx(12.1)); // 11.5 corrected: the raw one is worse
    CHECK_FALSE(job::moisture_of(*points[2], method_used())->corrected_pct.has_value());
    CHECK_FALSE(job::moisture_of(*points[3], method_used()).has_value());
}

TEST_CASE("the fall before covering and the finished fall are told apart") {
    Site site = rectangle();
    take_levels(site, "1", "bare", 60);
    take_levels(site, "2", "finished", 75);
    const auto job = site.fold("09:00");
    CHECK(*job::fall_of(job, method_used(), job::Surface::before_covering)->falls.plane.fall_1_in ==
          Approx(50));
    CHECK(*job::fall_of(job, method_used(), job::Surface::finished)->falls.plane.fall_1_in == Approx(40));
}

TEST_CASE("a roof without levels has no fall to speak of") {
    const Site site = rectangle();
    CHECK_FALSE(job::fall_of(site.fold("09:00"), method_used(), job::Surface::finished).has_value());
}

TEST_CASE("the readings parts were bonded under are each named once, in order") {
    Site site = rectangle();
    site.record("air", "09:00", R"({"air_c":13,"rh_pct":66})");
    site.record("begin", "09:10", "{}", "", "lay-out");
    site.record("begin", "09:20", "{}", "", "field/1");
    site.record("air", "11:00", R"({"air_c":16,"rh_pct":55})");
    const auto job = site.fold("12:00");
    const auto found = job::bonding_readings(job, method_used());
    REQUIRE(found.size() == 1); // laying out asks for none, and nothing was begun under the second
    CHECK(found.front()->word("air_c") == "13");
}

TEST_CASE("heights belong to the edge they were read along, whichever way it was named") {
    Site site = rectangle();
    site.record("chase", "08:20", R"({"height_mm":165})", "CD+0.10");
    site.record("chase", "08:20", R"({"height_mm":168})", "DC+0.10");
    site.record("chase", "08:20", R"({"height_mm":"not_looked"})", "CD+2.00");
    const auto job = site.fold("09:00");
    CHECK(job::heights_at(job, *job.roof.edge("CD")).size() == 2);
    CHECK(job::heights_at(job, *job.roof.edge("AB")).empty());
}

TEST_CASE("what was not looked at is named field by field, and kinds nobody recorded as a whole") {
    Site site = rectangle();
    site.record("abutment", "08:20", R"({"type":"brick","tray":"not_looked"})", "CD");
    const auto job = site.fold("09:00");
    bool tray = false, boards = false, tapes = false;
    for (const job::NotLooked& one : job::not_looked(job, method_used(), test::default_kinds())) {
        tray = tray || (one.kind->name == "abutment" && one.field == "tray");
        boards = boards || (one.kind->name == "board" && one.reading == nullptr);
        tapes = tapes || one.kind->name == "tape";
    }
    CHECK(tray);
    CHECK(boards);
    CHECK_FALSE(tapes);
}

TEST_CASE("the list of what was not looked at is as long as the judgement's own") {
    Site site = rectangle();
    site.record("moisture", "08:30", R"({"label":"M1","reading_pct":"cant_reach","setting":"2"})");
    const auto job = site.fold("09:00");
    CHECK(job::not_looked(job, method_used(), test::default_kinds()).size() ==
          site.judge("09:00").not_looked.size());
}

TEST_CASE("the firm is the one the job was opened under, and a later word replaces a field of it") {
    Site site;
    site.record("firm", "07:00", R"({"name":"Harrow & Finch","phone":"1"})");
    site.record("firm", "07:30", R"({"phone":"2"})");
    CHECK(job::firm_said(site.fold("08:00"), "name") == "Harrow & Finch");
    CHECK(job::firm_said(site.fold("08:00"), "phone") == "2");
    CHECK(job::firm_said(site.fold("07:10"), "phone") == "1");
    CHECK(job::firm_said(site.fold("08:00"), "address") == "");
}

TEST_CASE("a photograph shows the finding whose entry or place it names") {
    Site site = rectangle();
    const std::string hash = entry::hash_text(
        site.record("board", "08:20", R"({"label":"B1","material":"osb3","stamp":"no"})").hash);
    site.record("photo", "08:21", R"({"sha256":"aa","of":")" + hash + R"("})");
    site.record("photo", "08:22", R"({"sha256":"bb"})", "B1");
    site.record("photo", "08:23", R"({"sha256":"cc"})", "B2");
    const auto judged = site.judge("09:00");
    const auto* stamp = judged.finding("board_stamp@B1");
    REQUIRE(stamp != nullptr);
    const auto job = site.fold("09:00");
    std::vector<std::string> shown;
    for (const auto* photo : job::photos_of(job, *stamp)) shown.push_back(photo->word("sha256"));
    CHECK(shown == std::vector<std::string>{"aa", "bb"});
    CHECK(job::photo_named(job, "cc")->word("sha256") == "cc");
    CHECK(job::photo_named(job, "dd") == nullptr);
}
