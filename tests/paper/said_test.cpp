#include "paper/said.h"

#include "tests/support/site.h"

using namespace undersheet;
using namespace undersheet::paper;

namespace {

// What is said of one field of a reading recorded as `data`, with what was typed for it.
std::string said(const std::string& kind, const std::string& data, const std::string& field,
                 const std::string& typed = {}) {
    test::Site site;
    site.opened();
    auto& entry = const_cast<entry::Entry&>(
        site.record(kind, "08:30", data)); // the site hands its entries out read-only
    if (!typed.empty()) entry.raw.set(field, typed);
    const auto job = site.fold("09:00");
    return Said(job, Words::english(), test::default_kinds()).value(*job.latest(kind), field);
}

std::string place(const std::string& written) {
    const auto job = test::Site().fold("09:00");
    return Said(job, Words::english(), test::default_kinds()).place(written);
}

} // namespace

TEST_CASE("a figure stands as it was typed, with its unit") {
    CHECK(said("air", R"({"air_c":12.5,"rh_pct":66})", "air_c") == "12.5 °C");
    CHECK(said("air", R"({"air_c":12.5,"rh_pct":66})", "rh_pct") == "66 %");
    CHECK(said("board", R"({"thickness_mm":18})", "thickness_mm") == "18 mm");
}

TEST_CASE(
    "a figure typed in another unit is rounded to its field's digits, and what was typed stands behind it") {
    CHECK(said("air", R"({"air_c":12,"rh_pct":66,"wind_ms":2.68224})", "wind_ms", "6 mph") ==
          "2.7 m/s (6 mph)");
    CHECK(said("air", R"({"air_c":12.5,"rh_pct":66})", "air_c", "12,5") == "12.5 °C");
}

TEST_CASE("a choice is said in the trade's words, by its field where a word means two things") {
    CHECK(said("structure", R"({"roof_kind":"warm"})", "roof_kind") ==
          "warm: insulation above the deck or joists");
    CHECK(said("board", R"({"soft":"none"})", "soft") == "firm");
    CHECK(said("board", R"({"contamination":"none"})", "contamination") == "none");
    CHECK(said("gutter", R"({"fascia":"timber"})", "fascia") == "timber");
}

TEST_CASE("not looked at and could not be reached are said") {
    CHECK(said("site", R"({"asbestos":"not_looked"})", "asbestos") == "not looked at");
    CHECK(said("abutment", R"({"tray":"cant_reach"})", "tray") == "could not be reached");
}

TEST_CASE("nothing is said of what nobody recorded") {
    CHECK(said("board", R"({"soft":"none"})", "rot") == "");
}

TEST_CASE("days, times and people are said as people say them") {
    CHECK(said("tin", R"({"label":"T","product":"primer","batch":"T","use_by":"2027-01-31"})", "use_by") ==
          "31 January 2027");
    CHECK(said("day", R"({"date":"2026-06-11","heat_end":"2026-06-11T13:10:00+01:00"})", "heat_end") ==
          "11 June 2026, 13:10");
    CHECK(said("day", R"({"date":"2026-06-11","people":["ip","wp"]})", "people") == "Isolde Pell, Wren Pell");
}

TEST_CASE("a place is said as one would say it on the roof") {
    CHECK(place("A") == "corner A");
    CHECK(place("AB") == "edge AB");
    CHECK(place("AB+1.2") == "edge AB, 1.20 m from A");
    CHECK(place("2.1,0.8") == "2.10 m along AB, 0.80 m up the roof");
    CHECK(place("B2|B3") == "joint of B2 and B3");
    CHECK(place("R1") == "R1");
    CHECK(place("2.75,0>2.75,4.6") == "from 2.75,0.00 to 2.75,4.60");
    CHECK(place("?!") == "?!");
}

TEST_CASE(
    "the facts of a reading are its fields in the order of the catalogue, personal ones not among them") {
    test::Site site;
    site.record("site", "08:00", R"({"height_m":2.6,"customer":"x","cable_within_3m":"no"})");
    const auto job = site.fold("09:00");
    const auto facts =
        Said(job, Words::english(), test::default_kinds()).facts(*job.latest("site"), {"height_m"});
    REQUIRE(facts.size() == 1);
    CHECK(facts[0].name == "Cable within 3 m");
}
