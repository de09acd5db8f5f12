// What holds a tick and a signature, and what clears it.
#include "tests/job/ready_site.h"

using namespace undersheet;
using test::all_held;
using test::make_ready;
using test::record_all;
using test::says;
using test::Site;

namespace {

using Lines = std::vector<std::string>;

void finish(Site& site, const std::string& part) {
    site.record("begin", "07:20", "{}", "", part);
    site.record("finish", "07:20", "{}", "", part);
}
void sign(Site& site, const std::string& part) {
    finish(site, part);
    site.record("sign", "07:20", "{}", "", part);
}

void read_moisture(Site& site, const std::string& when, int pct = 12) {
    for (const std::string label : {"M1", "M2", "M3", "M4", "M5", "M6"}) {
        site.record("moisture", when,
                    R"({"label":")" + label + R"(","reading_pct":)" + std::to_string(pct) +
                        R"(,"board_c":18,"setting":"2"})");
    }
}

// The deck is done and may be signed once its guards agree.
Site deck_done() {
    Site site;
    site.opened("07:00");
    site.record("edge", "07:00", R"({"kind":"gutter"})", "AB");
    finish(site, "deck");
    return site;
}

// Everything before the final look is signed, and the final look is done.
Site final_done() {
    Site site;
    make_ready(site);
    record_all(site, "09:30", "09:30", "08:00");
    for (const std::string part : {"plate/AB", "field/1", "band/AB", "cover/AB", "trim-off"})
        sign(site, part);
    finish(site, "final");
    return site;
}

} // namespace

TEST_CASE("a step that the part does not have is refused with the steps it has") {
    Site site;
    make_ready(site);
    site.record("begin", "09:00", "{}", "", "field/1");
    CHECK(all_held(site.wish("tick", "field/1", "09:10", R"({"step":"polish"})")) ==
          Lines{"field section 1 has no step 'polish'; steps: lay, broom"});
}

TEST_CASE("a step waits for the one before it, and for the values it cannot do without") {
    Site site;
    make_ready(site);
    site.record("begin", "09:00", "{}", "", "field/1");
    CHECK(all_held(site.wish("tick", "field/1", "09:10", R"({"step":"broom","no_air":"yes"})")) ==
          Lines{"not done yet: adhesive on both faces, joined wet; tick field/1 lay"});
    site.act("tick", "field/1", "09:10", R"({"step":"lay"})");
    CHECK(all_held(site.wish("tick", "field/1", "09:20", R"({"step":"broom"})")) ==
          Lines{"'broom' needs no_air=…; tick field/1 broom no_air=…"});
}

TEST_CASE("faces are joined only after a finger test that was clean on both") {
    Site site;
    make_ready(site);
    site.record("begin", "09:00", "{}", "", "band/AB");
    site.act("tick", "band/AB", "09:10", R"({"step":"coat","coat_end":"2026-06-11T09:10:00+01:00"})");
    const std::string mate = R"({"step":"mate","mated_at":"2026-06-11T09:30:00+01:00"})";
    const Lines not_clean{"no clean finger test on both faces after the last coat; tick band/AB finger"};
    site.act("tick", "band/AB", "09:20",
             R"({"step":"finger","finger_deck":"clean","finger_sheet":"strings"})");
    CHECK(all_held(site.wish("tick", "band/AB", "09:30", mate)) == not_clean);
    site.act("tick", "band/AB", "09:25", R"({"step":"finger","finger_deck":"clean","finger_sheet":"clean"})");
    site.act("tick", "band/AB", "09:30", mate);
}

TEST_CASE("a deck is signed on moisture of the last 24 hours, and not a minute older") {
    const Lines none{"no moisture reading of the last 24 h; record moisture at six points"};
    for (const auto& [read_at, held] : std::vector<std::pair<std::string, Lines>>{
             {"", none}, {"2026-06-10T08:59:00+01:00", none}, {"2026-06-10T09:00:00+01:00", {}}}) {
        Site site = deck_done();
        if (!read_at.empty()) read_moisture(site, read_at);
        INFO(read_at);
        CHECK(all_held(site.wish("sign", "deck", "09:00")) == held);
    }
}

TEST_CASE("rain after the last moisture reading holds the deck until moisture is read again") {
    Site site = deck_done();
    read_moisture(site, "08:00");
    site.record("air", "08:10", R"({"air_c":15,"rh_pct":50,"surface_c":16,"rain":"now"})");
    CHECK(all_held(site.wish("sign", "deck", "09:00")) ==
          Lines{"rain at 08:10 since moisture was read; read the points near edges and openings again"});
    read_moisture(site, "08:50", 13);
    CHECK(all_held(site.wish("sign", "deck", "09:00")).empty());
}

TEST_CASE("a bonded part is signed only with the tin that went into it") {
    Site site;
    make_ready(site);
    finish(site, "field/1");
    CHECK(all_held(site.wish("sign", "field/1", "09:00")) ==
          Lines{"no tin named for field section 1; record use tin=… --part field/1"});
    site.record("use", "08:59", R"({"tin":"F1"})", "", "field/1");
    site.act("sign", "field/1", "09:00");
}

TEST_CASE("a crease over the limit is measured again after warming before the sheet is signed as laid out") {
    for (const auto& [height_mm, warmed, held] : std::vector<std::tuple<std::string, std::string, bool>>{
             {"2", "", false}, {"2.1", "", true}, {"2.1", R"(,"warmed_mm":1)", false}}) {
        Site site = deck_done();
        site.record("sign", "07:25", "{}", "", "deck");
        finish(site, "lay-out");
        site.record("crease", "08:00", R"({"label":"K1","height_mm":)" + height_mm + warmed + "}", "AB");
        site.record("crease", "08:01", R"({"height_mm":9})",
                    "BC"); // whoever gave it no name asks for nothing
        INFO(height_mm << warmed);
        CHECK(
            says(all_held(site.wish("sign", "lay-out", "09:00")),
                 "crease K1 was not measured after warming; record crease label=K1 warmed=yes warmed_mm=…") ==
            held);
    }
}

TEST_CASE("the final look waits for what is still open, and a note does not hold it") {
    Site site = final_done();
    site.record("punch_add", "09:40", R"({"number":1,"text":"scuff on the trim","severity":"note"})", "AB");
    const auto before = all_held(site.wish("sign", "final", "10:00"));
    site.record("punch_add", "09:41", R"({"number":2,"text":"blister by the outlet","severity":"put_right"})",
                "AB");
    const auto after = all_held(site.wish("sign", "final", "10:00"));
    CHECK(after.size() == before.size() + 1);
    CHECK(std::any_of(after.begin(), after.end(), [](const std::string& line) {
        return line.find("blister by the outlet") != std::string::npos;
    }));
    for (const auto& line : after) CHECK(line.find("scuff") == std::string::npos);
}

TEST_CASE("the final look waits for parts in doubt and for parts that were opened again") {
    Site site = final_done();
    site.record("reopen", "09:45", R"({"why":"nails missing"})", "",
                "plate/AB"); // and the final look with it
    finish(site, "final");
    const auto held = all_held(site.wish("sign", "final", "10:00"));
    CHECK(says(held, "plate, edge AB is opened again; begin plate/AB"));
    CHECK(says(held, "band, edge AB is in doubt; confirm or reopen band/AB"));
    Site doubted = final_done();
    doubted.record("heads", "09:45",
                   R"({"total":100,"checked":100,"below":99,"flush":0,"proud":1,"worst_mm":2})");
    CHECK(says(all_held(doubted.wish("sign", "final", "10:00")), "deck is in doubt; confirm or reopen deck"));
}

TEST_CASE("a hand-over is signed by the customer, or says that they were not there") {
    const auto held = [](const std::string& data) {
        Site site = final_done();
        site.record("sign", "10:00", "{}", "", "final");
        finish(site, "hand-over");
        return all_held(site.wish("sign", "hand-over", "10:10", data));
    };
    const std::string none =
        "the customer has not signed; sign with customer=NAME, or not_present=\"sent on …\"";
    CHECK(says(held("{}"), none));
    CHECK_FALSE(says(held(R"({"customer":"Caspar Dunmoor"})"), none));
    CHECK_FALSE(says(held(R"({"not_present":"sent on 12 June"})"), none));
}
