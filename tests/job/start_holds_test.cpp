// What holds the beginning of a part, and what clears it: the people, the readings, what goes on beside it.
#include "tests/job/ready_site.h"

using namespace undersheet;
using test::all_held;
using test::make_ready;
using test::record_all;
using test::says;
using test::Site;

namespace {

// Ready, with free edges all round but for a wall at the back, and two sections.
Site ready_all_round() {
    Site site;
    make_ready(site);
    site.record("edge", "07:01", R"({"kind":"kerb"})", "BC");
    site.record("edge", "07:01", R"({"kind":"wall"})", "CD");
    site.record("edge", "07:01", R"({"kind":"kerb"})", "DA");
    record_all(site, "09:30", "09:30", "08:00");
    return site;
}

// As far as a bonded field, with the coat of the gutter edge put on by `by` and not joined yet.
Site with_open_coat(const std::string& by) {
    Site site = ready_all_round();
    for (const std::string event : {"begin", "finish", "sign"}) {
        site.record(event, "09:35", "{}", "", "field/1");
        site.record(event, "09:35", "{}", "", "plate/AB");
    }
    site.record("begin", "09:40", "{}", "", "band/AB", by);
    site.record("tick", "09:45", R"({"step":"coat","coat_end":"2026-06-11T09:45:00+01:00"})", "", "band/AB",
                by);
    return site;
}

} // namespace

TEST_CASE(
    "nobody begins before somebody says who is on the roof today, and only those who were named begin") {
    Site site;
    site.opened();
    const std::string nobody = "nobody is named on the roof today; record day people=…";
    CHECK(says(all_held(site.wish("begin", "deck", "08:10")), nobody));
    site.record("day", "08:05", R"({"date":"2026-06-11","briefing":"yes","plan":"yes"})");
    CHECK(says(all_held(site.wish("begin", "deck", "08:10")), nobody));
    site.record("day", "08:06", R"({"date":"2026-06-11","people":["wp"]})");
    CHECK(says(all_held(site.wish("begin", "deck", "08:10")),
               "Isolde Pell is not among the people on the roof today; record day people=…"));
    CHECK_FALSE(says(all_held(site.wish("begin", "deck", "08:10", "{}", "wp")), nobody));
}

TEST_CASE("what nobody said of the site's dangers, and today's briefing, hold the work by name") {
    Site site;
    site.opened();
    site.record("day", "08:05", R"({"date":"2026-06-11","people":["ip"],"briefing":"no"})");
    const auto held = all_held(site.wish("begin", "deck", "08:10"));
    CHECK(says(held, "nothing said of edge protection; record site edge_protection=…"));
    CHECK(says(held, "today's briefing is not ticked; record day briefing=yes"));
    CHECK(says(held, "today's plan is not ticked; record day plan=yes"));
}

TEST_CASE("a sheet is not laid out before a delivery was measured") {
    Site site;
    make_ready(site);
    site.record("reopen", "07:20", R"({"why":"sheet moved"})", "", "lay-out");
    const std::string none = "no sheet on record; measure it: record sheet width_m=… length_m=… batch=…";
    CHECK(all_held(site.wish("begin", "lay-out", "08:00")) == std::vector<std::string>{none});
    site.record("sheet", "07:30", R"({"label":"S0","batch":"SH-1"})");
    site.record("sheet", "07:30", R"({"label":"S1","width_m":3.05})");
    CHECK(all_held(site.wish("begin", "lay-out", "08:00")) == std::vector<std::string>{none});
    site.record("sheet", "07:31", R"({"label":"S1","length_m":3.6})");
    site.act("begin", "lay-out", "08:00");
}

TEST_CASE("bonding waits for an air reading that has the temperature of the deck") {
    Site site;
    make_ready(site);
    site.record("joint", "09:30", R"({"wipe":"clean"})");
    site.record("moisture", "08:00", R"({"label":"M1","reading_pct":12,"board_c":18,"setting":"2"})");
    CHECK(all_held(site.wish("begin", "field/1", "10:00")) ==
          std::vector<std::string>{"no air reading; record air air_c=… rh_pct=… surface_c=…"});
    for (const std::string air : {R"({"air_c":15,"rh_pct":50})", R"({"air_c":15,"surface_c":16})",
                                  R"({"rh_pct":50,"surface_c":16})"}) {
        site.record("air", "09:30", air);
        CHECK(says(all_held(site.wish("begin", "field/1", "10:00", R"({"tin":"F1"})")),
                   "the air reading lacks the deck surface temperature; record air with surface_c=…"));
    }
}

TEST_CASE("bonding waits for moisture that was read, not for a point that could not be reached") {
    Site site;
    make_ready(site);
    record_all(site, "09:30", "09:30", "08:00");
    site.record("moisture", "08:30", R"({"label":"M1","reading_pct":"cant_reach"})");
    CHECK(says(all_held(site.wish("begin", "field/1", "10:00")),
               "no moisture reading; record moisture at six points"));
}

TEST_CASE("rain asks again for points near edges and openings only, on a roof whose shape is known") {
    const auto held_with = [](const std::string& place) {
        Site site = ready_all_round();
        for (const auto& [pair, m] : std::vector<std::pair<std::string, std::string>>{
                 {"AB", "6"}, {"BC", "6"}, {"CD", "6"}, {"DA", "6"}, {"AC", "8.485"}, {"BD", "8.485"}})
            site.record("tape", "07:02", R"({"m":)" + m + "}", pair);
        site.record("opening", "07:03",
                    R"({"label":"R1","type":"rooflight","size_x_mm":800,"size_y_mm":800})", "3,4.2");
        site.record("moisture", "08:00", R"({"label":"M1","reading_pct":12,"board_c":18,"setting":"2"})",
                    place);
        site.record("air", "09:40",
                    R"({"air_c":15,"rh_pct":50,"surface_c":16,"rain_ended":"2026-06-11T08:30:00+01:00"})");
        return all_held(site.wish("begin", "field/1", "10:00"));
    };
    const std::vector<std::string> again{"rain at 08:30 since moisture was read at M1; read the points "
                                         "within 1 m of edges and openings again"};
    CHECK(held_with("0.9,3") == again); // near the edge
    CHECK(held_with("3,3.2") == again); // near the rooflight
    CHECK(held_with("3,1.8").empty());  // near neither
}

TEST_CASE("a point without a name is called by its place, and near an edge for all we know until the roof is "
          "taped") {
    Site site;
    make_ready(site);
    record_all(site, "09:30", "09:30", "09:00");
    site.record("moisture", "2026-06-10T09:00:00+01:00", R"({"reading_pct":12,"board_c":18,"setting":"2"})",
                "1,1");
    site.record("moisture", "08:00", R"({"label":"M2","reading_pct":12,"board_c":18,"setting":"2"})",
                "3,1.8");
    site.record("air", "09:40",
                R"({"air_c":15,"rh_pct":50,"surface_c":16,"rain_ended":"2026-06-11T08:30:00+01:00"})");
    CHECK(
        all_held(site.wish("begin", "field/1", "10:00")) ==
        std::vector<std::string>{"moisture at 1,1 is over 24 h old; read it again",
                                 "rain at 08:30 since moisture was read at M2; read the points within 1 m of "
                                 "edges and openings again"});
}

TEST_CASE("a deck that was never wiped, or was cut since, is wiped before adhesive comes on it") {
    Site site;
    make_ready(site);
    site.record("moisture", "08:00", R"({"label":"M1","reading_pct":12,"board_c":18,"setting":"2"})");
    site.record("air", "09:30", R"({"air_c":15,"rh_pct":50,"surface_c":16})");
    site.record("joint", "09:00", R"({"label":"J1","wipe":"dusty"})");
    CHECK(says(all_held(site.wish("begin", "field/1", "09:40")),
               "the deck was not wiped clean; blow it off, wipe it: record joint wipe=clean"));
    site.record("joint", "09:10", R"({"label":"J2","wipe":"clean"})");
    site.record("alter", "09:20", R"({"what":"cut","text":"board by the outlet"})");
    CHECK(says(
        all_held(site.wish("begin", "field/1", "09:40")),
        "the deck was worked on since it was wiped; blow it off, wipe it again: record joint wipe=clean"));
}

TEST_CASE("a tin stored below five degrees, and air or deck outside its range, are refused") {
    Site site = ready_all_round();
    site.record("tin", "08:00",
                R"({"label":"F2","product":"deck_adhesive","batch":"F2","stored":"below_5c"})");
    site.record("tin", "08:00",
                R"({"label":"F3","product":"deck_adhesive","batch":"F3","low_c":5,"high_c":15})");
    site.record("tin", "08:00",
                R"({"label":"F4","product":"deck_adhesive","batch":"F4","stored":"above_5c"})");
    CHECK(all_held(site.wish("begin", "field/1", "10:00", R"({"tin":"F2, F3"})")) ==
          std::vector<std::string>{"tin F2 was stored too cold; another tin; scrap this one",
                                   "16 °C is outside the range on tin F3, 5 to 15 °C; wait, or another tin"});
    site.act("begin", "field/1", "10:00", R"({"tin":["F4"]})");
}

TEST_CASE("a tin's range is not looked at where the part asks for no reading, nor where there is none") {
    Site site;
    make_ready(site);
    const auto held = all_held(site.wish("begin", "field/1", "10:00", R"({"tin":"F1"})"));
    CHECK(says(held, "no air reading; record air air_c=… rh_pct=… surface_c=…"));
    CHECK(std::none_of(held.begin(), held.end(),
                       [](const std::string& line) { return line.find("range") != std::string::npos; }));
}

TEST_CASE("one person has one coat open at a time; somebody else may begin another edge") {
    Site site = with_open_coat("ip");
    CHECK(all_held(site.wish("begin", "band/BC", "09:50")) ==
          std::vector<std::string>{
              "the coat on band, edge AB is still open; join it first: one open coat a person"});
    site.act("begin", "band/BC", "09:50", "{}", "wp");
    const std::string coat = R"({"step":"coat","coat_end":"2026-06-11T09:55:00+01:00"})";
    CHECK(all_held(site.wish("tick", "band/BC", "09:55", coat)) ==
          std::vector<std::string>{
              "the coat on band, edge AB is still open; join it first: one open coat a person"});
    site.act("tick", "band/BC", "09:55", coat, "wp");
}

TEST_CASE(
    "a wall is not begun beside open adhesive on a band, whoever put it on, nor without heights and chase") {
    Site site = with_open_coat("ip");
    site.record("abutment", "07:05", R"({"type":"brick"})", "CD");
    site.record("chase", "07:06", R"({"on":"bare"})", "CD+0.10");
    CHECK(all_held(site.wish("begin", "wall/CD", "09:50", "{}", "wp")) ==
          std::vector<std::string>{"no height taken along CD; record chase height_mm=… --at CD+0.10",
                                   "the chase along CD is not cut; record abutment chase_cut=yes --at CD",
                                   "open adhesive on band, edge AB; join it first"});
    site.record("chase", "09:51", R"({"height_mm":165})", "CD+0.10");
    site.record("abutment", "09:51", R"({"chase_cut":"yes"})", "CD");
    CHECK(all_held(site.wish("begin", "wall/CD", "09:52", "{}", "wp")) ==
          std::vector<std::string>{"open adhesive on band, edge AB; join it first"});
}

TEST_CASE("a chase that was there before needs no cutting, and a wall that takes none is not asked") {
    for (const std::string abutment : {R"({"type":"brick","chase":"existing"})", R"({"type":"cladding"})"}) {
        Site site = ready_all_round();
        site.record("begin", "09:35", "{}", "", "field/1");
        site.record("finish", "09:35", "{}", "", "field/1");
        site.record("sign", "09:35", "{}", "", "field/1");
        site.record("abutment", "07:05", abutment, "CD");
        site.record("chase", "07:06", R"({"height_mm":165})", "CD+0.10");
        INFO(abutment);
        CHECK(all_held(site.wish("begin", "wall/CD", "09:50")).empty());
    }
}

TEST_CASE("one wall may be begun while another person's coat on another wall is open") {
    Site site = ready_all_round();
    site.record("edge", "07:02", R"({"kind":"wall"})", "BC");
    for (const std::string edge : {"BC", "CD"}) {
        site.record("abutment", "07:05", R"({"type":"cladding"})", edge);
        site.record("chase", "07:06", R"({"height_mm":165})", edge + "+0.10");
    }
    for (const std::string event : {"begin", "finish", "sign"})
        site.record(event, "09:35", "{}", "", "field/1");
    site.record("begin", "09:40", "{}", "", "wall/CD");
    site.record("tick", "09:45", R"({"step":"coat","coat_end":"2026-06-11T09:45:00+01:00"})", "", "wall/CD");
    CHECK(all_held(site.wish("begin", "wall/BC", "09:50", "{}", "wp")).empty());
}

TEST_CASE("no heat gun is used beside open solvent") {
    Site site = with_open_coat("ip");
    site.record("reopen", "09:46", R"({"why":"crease"})", "", "lay-out");
    site.record("begin", "09:47", "{}", "", "lay-out");
    CHECK(says(all_held(site.wish("tick", "lay-out", "09:50", R"({"step":"warm","warmed":"yes"})", "wp")),
               "no heat gun beside open solvent; join the open coat first"));
}

TEST_CASE("sections are laid in their order, and a field waits until all is laid out") {
    Site site = ready_all_round();
    site.record("section", "07:10", R"({"label":"1","edges":["AB"],"order":1})");
    site.record("section", "07:10", R"({"label":"2","edges":["CD"],"order":2})");
    const std::vector<std::string> not_signed{"field section 1 not signed; sign field/1"};
    CHECK(all_held(site.wish("begin", "field/2", "10:00")) == not_signed);
    site.record("begin", "09:31", "{}", "", "field/1");
    site.record("pause", "09:32", R"({"why":"tea"})", "", "field/1");
    CHECK(all_held(site.wish("begin", "field/2", "10:00")) == not_signed);
    site.record("resume", "09:33", "{}", "", "field/1");
    site.record("finish", "09:34", "{}", "", "field/1");
    site.record("sign", "09:35", "{}", "", "field/1");
    CHECK(all_held(site.wish("begin", "field/2", "10:00")).empty());
}

TEST_CASE("a field waits until the sheet that was taken up again is laid out") {
    Site site = ready_all_round();
    site.record("reopen", "09:36", R"({"why":"sheet moved"})", "", "lay-out");
    CHECK(says(all_held(site.wish("begin", "field/1", "10:00")), "lay out opened again; sign lay-out"));
}
