// Acceptance: a clean small dormer from the first look to the hand-over, in one day, entry by entry with its verdicts.
// Firm, people, places, batches and figures are invented; the limits are the default method's.
#include "job/heads_sample.h"
#include "job/levels.h"
#include "job/weather.h"
#include "tests/support/site.h"

#include "trade/moisture.h"

using namespace undersheet;
using test::Site;

namespace {

std::string only_reason(const job::Refusal& refusal) {
    REQUIRE(refusal.held_by.size() == 1);
    return refusal.held_by.front().why;
}

std::string state_of(const Site& site, const std::string& part, const std::string& now) {
    return std::string(job::state_word(site.fold(now).part(part)->state));
}

void inspect(Site& site) {
    site.record(
        "site", "08:05",
        R"({"edge_protection":"scaffold_rail","height_m":2.6,"fragile":"none","cable_within_3m":"no","asbestos":"none_seen","building_control":"not_notifiable","building_control_reason":"small area","building_control_by":"the customer's architect"})");
    site.record(
        "day", "08:05",
        R"({"date":"2026-06-11","people":["ip","wp"],"briefing":"yes","plan":"yes","extinguisher":"yes","solvent_care":"yes","data_sheet":"yes"})");
    const std::vector<std::pair<std::string, std::string>> edges{
        {"AB", "gutter"}, {"BC", "kerb"}, {"CD", "wall"}, {"DA", "kerb"}};
    for (const auto& [edge, kind] : edges)
        site.record("edge", "08:10", R"({"kind":")" + kind + R"("})", edge);
    const std::vector<std::pair<std::string, std::string>> tapes{
        {"AB", "3.2"}, {"BC", "2.1"}, {"CD", "3.199"}, {"DA", "2.101"}, {"AC", "3.828"}, {"BD", "3.827"}};
    for (const auto& [pair, m] : tapes) site.record("tape", "08:10", R"({"m":)" + m + "}", pair);
    site.record("abutment", "08:12", R"({"type":"pitched_roof"})", "CD");
    const std::vector<std::pair<std::string, std::string>> heights{
        {"CD+0.10", "165"}, {"CD+1.60", "168"}, {"CD+3.10", "166"}};
    for (const auto& [at, mm] : heights) site.record("chase", "08:12", R"({"height_mm":)" + mm + "}", at);
    site.record("board", "08:15",
                R"({"material":"plywood3","thickness_mm":18,"support_mm":400,"gap_mm":3,"soft":"none"})");
    site.record(
        "structure", "08:20",
        R"({"roof_kind":"warm","insulation_mm":120,"insulation_place":"above_joists","vapour_layer":"seen"})");
    site.record(
        "heads", "08:25",
        R"({"total":170,"checked":50,"below":50,"flush":0,"proud":0,"squares":5,"fixing":"nail","length_mm":65})");
    const std::vector<std::string> readings{"12.1", "12.6", "11.9", "12.4", "12.8", "12.2"};
    for (std::size_t i = 0; i < readings.size(); ++i) {
        site.record("moisture", "08:35",
                    R"({"label":"M)" + std::to_string(i + 1) + R"(","reading_pct":)" + readings[i] +
                        R"(,"board_c":15.5,"setting":"group 2"})");
    }
    const std::vector<std::vector<int>> levels{{0, 1, 0}, {16, 17, 16}, {32, 33, 32}, {48, 49, 48}};
    const std::vector<std::string> xs{"0", "1.6", "3.2"};
    const std::vector<std::string> ys{"0", "0.7", "1.4", "2.1"};
    for (std::size_t row = 0; row < ys.size(); ++row) {
        for (std::size_t column = 0; column < xs.size(); ++column) {
            site.record("level", "08:45",
                        R"({"z_mm":)" + std::to_string(levels[row][column]) + R"(,"run":"1"})",
                        xs[column] + "," + ys[row]);
        }
    }
    site.record("level", "08:45", R"({"z_mm":0,"run":"1","closing":"yes"})", "0,0");
}

void take_delivery(Site& site) {
    site.record("sheet", "08:50", R"({"batch":"SH-41A","width_m":3.05,"length_m":3.6,"thickness_mm":1.2})");
    site.record(
        "tin", "08:55",
        R"({"label":"FA-9","product":"deck_adhesive","batch":"FA-9","use_by":"2027-01-31","size_l":5,"low_c":5,"high_c":25})");
    site.record(
        "tin", "08:55",
        R"({"label":"CA-3","product":"contact_adhesive","batch":"CA-3","use_by":"2026-11-30","size_l":1,"count":2,"low_c":5,"high_c":25})");
    site.record("tin", "08:56",
                R"({"label":"PR-2","product":"primer","batch":"PR-2","use_by":"2027-01-31"})");
    site.record("tin", "08:56",
                R"({"label":"FT-7","product":"flashing_tape","batch":"FT-7","use_by":"2027-01-31"})");
    site.record("tin", "08:56",
                R"({"label":"LS-5","product":"lap_sealant","batch":"LS-5","use_by":"2027-01-31"})");
    for (const std::string label : {"SH-41A", "FA-9", "CA-3", "PR-2", "FT-7", "LS-5"}) {
        site.record("photo", "08:56", R"({"sha256":"00","label_of":")" + label + R"("})");
    }
}

void open_the_day(Site& site) {
    site.opened();
    inspect(site);
    take_delivery(site);
    site.record("air", "09:00",
                R"({"air_c":13,"rh_pct":66,"surface_c":14.0,"wind_ms":2.68224,"gust_ms":4.4704})");
}

void sign_the_deck(Site& site) {
    site.record("joint", "09:05", R"({"wipe":"clean"})");
    site.act("begin", "deck", "09:05");
    site.act("sign", "deck", "09:05");
}

void lay_out(Site& site) {
    site.act("begin", "plate/AB", "09:10", "{}", "wp");
    site.act("begin", "lay-out", "09:10", "{}", "wp");
    site.act("tick", "lay-out", "09:10", R"({"step":"unroll","rest_start":"2026-06-11T09:10:00+01:00"})",
             "wp");
    site.act(
        "tick", "plate/AB", "09:30",
        R"({"step":"fix","plate_1_mm":1.5,"plate_2_mm":1.0,"plate_3_mm":2.0,"holes":24,"nails":24,"pieces":"2.500 + 0.697"})",
        "wp");
    site.act("sign", "plate/AB", "09:30", "{}", "wp");
    site.act("tick", "lay-out", "09:45", R"({"step":"rest","rest_end":"2026-06-11T09:45:00+01:00"})", "wp");
    site.act("tick", "lay-out", "09:45", R"({"step":"mark","mark_deck":"yes","mark_sheet":"yes"})", "wp");
    site.act("sign", "lay-out", "09:45", "{}", "wp");
}

void lay_field(Site& site) {
    site.act("begin", "field/1", "09:52", R"({"tin":"FA-9"})");
    site.act("tick", "field/1", "10:20", R"({"step":"lay"})");
    site.act("tick", "field/1", "10:25", R"({"step":"broom","no_air":"yes"})");
    site.act("sign", "field/1", "10:25");
}

std::string at(const std::string& field, const std::string& clock) {
    return R"(")" + field + R"(":"2026-06-11T)" + clock + R"(:00+01:00")";
}

// Coat, finger test, mate: the way every contact-adhesive strip goes.
void bond(Site& site, const std::string& part, const std::string& begun, const std::string& coat,
          const std::string& finger, const std::string& mated, const std::string& by) {
    site.act("begin", part, begun, R"({"tin":"CA-3"})", by);
    site.act("tick", part, coat, R"({"step":"coat",)" + at("coat_end", coat) + "}", by);
    site.act("tick", part, finger, R"({"step":"finger","finger_deck":"clean","finger_sheet":"clean"})", by);
    site.act("tick", part, mated, R"({"step":"mate",)" + at("mated_at", mated) + "}", by);
}

void band_the_free_edges(Site& site) {
    site.record("air", "11:02", R"({"air_c":16,"rh_pct":55,"surface_c":19.0})");
    site.act("begin", "band/AB", "11:05", R"({"tin":"CA-3"})", "wp");
    site.act("tick", "band/AB", "11:20", R"({"step":"coat",)" + at("coat_end", "11:20") + "}", "wp");
    CHECK(only_reason(site.wish("tick", "band/AB", "11:28",
                                R"({"step":"mate",)" + at("mated_at", "11:28") + "}", "wp")) ==
          "no clean finger test on both faces after the last coat");
    site.act("tick", "band/AB", "11:41", R"({"step":"finger","finger_deck":"clean","finger_sheet":"clean"})",
             "wp");
    site.act("tick", "band/AB", "11:43", R"({"step":"mate",)" + at("mated_at", "11:43") + "}", "wp");
    site.act("tick", "band/AB", "11:45", R"({"step":"smooth","hand_smoothed":"yes"})", "wp");
    site.act("sign", "band/AB", "11:46", "{}", "wp");
    bond(site, "band/BC", "11:48", "11:55", "12:05", "12:06", "wp");
    site.act("tick", "band/BC", "12:08", R"({"step":"smooth","hand_smoothed":"yes"})", "wp");
    site.act("sign", "band/BC", "12:10", "{}", "wp");
    bond(site, "band/DA", "12:12", "12:18", "12:29", "12:30", "wp");
    site.act("tick", "band/DA", "12:32", R"({"step":"smooth","hand_smoothed":"yes"})", "wp");
    site.act("sign", "band/DA", "12:35", "{}", "wp");
}

void bond_the_wall(Site& site) {
    CHECK(only_reason(site.wish("begin", "wall/CD", "12:40")) ==
          "the air reading of 11:02 is 98 min old, over 90 min");
    site.record("air", "12:42", R"({"air_c":15,"rh_pct":60,"surface_c":17.0})");
    bond(site, "wall/CD", "12:43", "12:55", "13:12", "13:14", "ip");
    site.act("tick", "wall/CD", "13:18", R"({"step":"press","no_bridging":"yes"})");
    site.act("tick", "wall/CD", "13:22", R"({"step":"trim","cover_mm":165})");
    site.act("sign", "wall/CD", "13:25");
}

void finish(Site& site) {
    for (const std::string patch : {"patches/C", "patches/D"}) {
        site.act("begin", patch, "13:50", R"({"tin":"FT-7,PR-2"})");
        site.act("tick", patch, "14:00", R"({"step":"prime","primer_past_mm":8,"primer_dry_min":8})");
        site.act("tick", patch, "14:05", R"({"step":"roll","rolled":"yes"})");
        site.act("tick", patch, "14:08", R"({"step":"bead","bead":"unbroken"})");
        site.act("sign", patch, "14:10");
    }
    site.act("begin", "cover/AB", "14:15", "{}", "wp");
    site.act("tick", "cover/AB", "14:30", R"({"step":"fit","holes":32,"nails":32})", "wp");
    site.act("sign", "cover/AB", "14:40", "{}", "wp");
    for (const std::string kerb : {"kerb/BC", "kerb/DA"}) {
        site.act("begin", kerb, "14:20", "{}", "wp");
        site.act("tick", kerb, "14:30", R"({"step":"foam","foam_free_mm":20,"foam_left_mm":6})", "wp");
        site.act("tick", kerb, "14:35", R"({"step":"fit","holes":11,"nails":11})", "wp");
        site.act("sign", kerb, "14:40", "{}", "wp");
    }
    for (const std::string corner : {"corners/A", "corners/B"}) {
        site.act("begin", corner, "14:45", "{}", "wp");
        site.act("tick", corner, "14:48", R"({"step":"fit","legs_glued":1})", "wp");
        site.act("sign", corner, "14:50", "{}", "wp");
    }
    site.act("begin", "trim-off", "14:52", "{}", "wp");
    site.act("tick", "trim-off", "15:00", R"({"step":"trim","fascia_unmarked":"yes"})", "wp");
    site.act("tick", "trim-off", "15:02", R"({"step":"clear","waste_away":"yes"})", "wp");
    site.act("sign", "trim-off", "15:05", "{}", "wp");
}

void look_over_and_hand_over(Site& site) {
    for (int view = 1; view <= 4; ++view)
        site.record("photo", "15:06", R"({"sha256":"0)" + std::to_string(view) + R"(","shows":"view"})", "",
                    "final");
    site.act("begin", "final", "15:07");
    site.act("tick", "final", "15:10", R"({"step":"look","whole_look":"yes"})");
    site.act("tick", "final", "15:11", R"({"step":"outlets","outlets_clear":"yes"})");
    site.act("sign", "final", "15:12");
    site.act("begin", "hand-over", "15:18");
    site.act("tick", "hand-over", "15:18",
             R"({"step":"terms","guarantee_from":"2026-06-11","guarantee_years":10})");
    site.act("tick", "hand-over", "15:18", R"({"step":"care","care_version":"1"})");
    site.act("sign", "hand-over", "15:20", R"({"customer":"signed"})");
}

} // namespace

TEST_CASE("a clean small dormer is inspected with one note and nothing to put right") {
    Site site;
    open_the_day(site);
    const auto judged = site.judge("09:00");
    CHECK(test::spoken(judged) == std::vector<std::string>{"design_fall note"});
    CHECK(judged.findings.front().says == "the deck falls 1:43.8, flatter than the design fall 1:40");
}

TEST_CASE("the tapes of the dormer close within a millimetre and give its area") {
    Site site;
    open_the_day(site);
    const auto job = site.fold("09:00");
    REQUIRE(job.roof.outline.has_value());
    CHECK(job.roof.outline->area_m2 == Approx(6.72).margin(0.005));
    CHECK(*job.roof.outline->misclosure_mm < 1.0);
    for (const auto& tape : job.roof.outline->tapes) {
        if (tape.from + tape.to == "BD") CHECK(*tape.from_others_m == Approx(3.8268).margin(0.00005));
    }
}

TEST_CASE("moisture of the dormer is corrected by 0.675 points for boards at 15.5 degrees, and the worse of "
          "the two is judged") {
    const std::vector<std::pair<double, std::string>> points{{12.1, "12.8"}, {12.6, "13.3"}, {11.9, "12.6"},
                                                             {12.4, "13.1"}, {12.8, "13.5"}, {12.2, "12.9"}};
    for (const auto& [raw, corrected] : points) {
        const auto result = trade::moisture({.reading_pct = raw, .board_c = 15.5});
        REQUIRE(result.ok());
        CHECK(*result->corrected_pct == Approx(raw + 0.675));
        CHECK(fixed(*result->corrected_pct, 1) == corrected);
        CHECK(result->judged_corrected);
    }
}

TEST_CASE("fifty good heads of 170 could still hide eight") {
    Site site;
    open_the_day(site);
    const auto sample = job::judge_heads(site.fold("09:00"), site.method());
    REQUIRE(sample.has_value());
    CHECK(sample->line.text == "0 of 50; could be up to 8 of 170 (4.7 %)");
}

TEST_CASE("the air of the dormer's three readings leaves 7.2, 12.0 and 9.7 K above the dew point") {
    Site site;
    open_the_day(site);
    site.record("air", "11:02", R"({"air_c":16,"rh_pct":55,"surface_c":19.0})");
    site.record("air", "12:42", R"({"air_c":15,"rh_pct":60,"surface_c":17.0})");
    CHECK(site.judge("09:00").bond_now->line ==
          "13 °C, 66 %, deck 14 °C: dew point 6.8 °C, margin 7.2 K: yes, bond");
    CHECK(site.judge("11:02").bond_now->line ==
          "16 °C, 55 %, deck 19 °C: dew point 7.0 °C, margin 12.0 K: yes, bond");
    CHECK(site.judge("12:42").bond_now->line ==
          "15 °C, 60 %, deck 17 °C: dew point 7.3 °C, margin 9.7 K: yes, bond");
}

TEST_CASE("the whole dormer goes from first look to hand-over with the refusals of the day and no others") {
    Site site;
    open_the_day(site);
    CHECK(only_reason(site.wish("begin", "lay-out", "09:02")) == "deck not signed");
    sign_the_deck(site);
    lay_out(site);
    const auto early = site.wish("begin", "band/AB", "09:50", R"({"tin":"CA-3"})", "wp");
    CHECK(only_reason(early) == "field section 1 not signed");
    lay_field(site);
    CHECK(only_reason(site.wish("begin", "band/AB", "11:00", R"({"tin":"CA-3"})", "wp")) ==
          "the air reading of 09:00 is 120 min old, over 90 min");
    band_the_free_edges(site);
    bond_the_wall(site);
    CHECK(state_of(site, "chase/CD", "13:25") == "not_needed");
    finish(site);
    CHECK(site.fold("15:05").part("patches/A") == nullptr);
    look_over_and_hand_over(site);

    const auto job = site.fold("15:20");
    const auto judged = site.judge("15:20");
    CHECK_FALSE(job.part("final")->signature()->own_check);
    CHECK(job.problems.empty());
    REQUIRE(job.handed_over != nullptr);
    CHECK(judged.count(method::Severity::stop) == 0);
    CHECK(judged.count(method::Severity::put_right) == 0);
    CHECK(judged.count(method::Severity::note) == 1);
    for (const auto& part : job.parts) {
        INFO(part.name);
        CHECK((part.state == job::State::closed || part.state == job::State::not_needed));
    }
    const auto after = site.wish("reopen", "deck", "16:00", R"({"why":"moisture point 3 was 11.0"})");
    CHECK_FALSE(after.exists);
    CHECK(after.held_by.front().clears == "handed over: only a numbered supplement can say more");
}
