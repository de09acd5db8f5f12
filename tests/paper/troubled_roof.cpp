#include "tests/paper/troubled_roof.h"

#include "paper/text.h"

namespace undersheet::test {

namespace {

void record_all(Site& site, const std::string& kind, const std::string& now,
                const std::vector<std::pair<std::string, std::string>>& place_and_data) {
    for (const auto& [place, data] : place_and_data) site.record(kind, now, data, place);
}

// What the book still holds of the personal fields of the entry just recorded. The site hands its entries out read-only.
void know(Site& site, std::map<std::string, std::string> personal) {
    const_cast<entry::Entry&>(site.entries().back()).personal = std::move(personal);
}

void open_job(Site& site) {
    site.record("firm", "07:55",
                R"({"name":"Harrow & Finch","address":"4 Kiln Lane\nMarlow Wick","phone":"01632 960145"})");
    site.record("open", "07:56", R"({"ref":"HF-12","roof":"back extension"})");
    site.person("ip", "Ada Harrow", "AH", "07:57").person("of", "Odo Finch", "OF", "07:57");
}

void look_round(Site& site) {
    site.record(
        "site", "08:00",
        R"({"customer":"c","address":"c","height_m":2.7,"edge_protection":"scaffold_rail","fragile":"covered",)"
        R"("fragile_where":"rooflight R1","cable_within_3m":"no","asbestos":"not_looked","built_before_2000":"no",)"
        R"("building_control":"not_notifiable","building_control_reason":"under a quarter of the roofs renewed",)"
        R"("building_control_by":"the customer's surveyor","under_roof":"kitchen"})");
    know(site, {{"customer", "Mrs Odile Ferring"}, {"address", "9 Tanners Row\nMarlow Wick\nZZ3 4AB"}});
    site.record(
        "day", "08:05",
        R"({"date":"2026-05-20","people":["ip","of"],"briefing":"yes","plan":"yes","extinguisher":"yes","solvent_care":"yes","data_sheet":"yes"})");
    site.record(
        "structure", "08:10",
        R"({"roof_kind":"warm","joist_spacing_mm":400,"insulation":"foam board","insulation_mm":120,"insulation_place":"above_joists","vapour_layer":"not_seen","looked":"hole"})");
    record_all(site, "edge", "08:12",
               {{"AB", R"({"kind":"gutter"})"},
                {"BC", R"({"kind":"kerb"})"},
                {"CD", R"({"kind":"wall"})"},
                {"DA", R"({"kind":"kerb"})"}});
    record_all(site, "tape", "08:15",
               {{"AB", R"({"m":4.000})"},
                {"BC", R"({"m":3.001})"},
                {"CD", R"({"m":4.001})"},
                {"DA", R"({"m":3.000})"},
                {"AC", R"({"m":5.001})"},
                {"BD", R"({"m":4.999})"}});
    site.record(
        "abutment", "08:20",
        R"({"type":"brick","condition":"sound","above":"window","tray":"not_looked","chase":"new","chase_cut":"yes"})",
        "CD");
    record_all(site, "chase", "08:22",
               {{"CD+0.10", R"({"height_mm":152})"},
                {"CD+1.60", R"({"height_mm":149})"},
                {"CD+3.10", R"({"height_mm":131})"}});
    site.record(
        "gutter", "08:24",
        R"({"fascia":"timber","fascia_rot":"no","width_mm":112,"clear":"yes","downpipes":1,"drains_to":"soakaway"})",
        "AB");
    site.record(
        "opening", "08:26",
        R"({"label":"R1","type":"rooflight","size_x_mm":600,"size_y_mm":600,"upstand_mm":150,"fragile":"yes","covered":"yes","curb_fixed":"yes"})",
        "2.00,1.50");
}

void read_deck(Site& site) {
    site.record(
        "board", "08:30",
        R"({"label":"B1","material":"plywood3","stamp":"yes","thickness_mm":18,"support_mm":400,"gap_mm":3,"soft":"none"})");
    site.record(
        "board", "08:31",
        R"({"label":"B2","material":"osb3","stamp":"no","thickness_mm":18,"support_mm":400,"gap_mm":2,"soft":"springy","swollen_mm":2})");
    site.record(
        "heads", "08:35",
        R"({"total":300,"checked":60,"below":58,"flush":1,"proud":1,"worst_mm":0.8,"squares":6,"fixing":"nail","length_mm":65})");
    site.record("joint", "08:40", R"({"step_mm":0.5,"sanded":"yes","blown_off":"yes","wipe":"dusty"})",
                "B1|B2");
    record_all(site, "moisture", "08:45",
               {{"0.40,0.40", R"({"label":"M1","reading_pct":12.1,"board_c":13.5,"setting":"group 2"})"},
                {"3.60,0.40", R"({"label":"M2","reading_pct":12.4,"board_c":13.5,"setting":"group 2"})"},
                {"3.60,2.60", R"({"label":"M3","reading_pct":20.4,"board_c":13.5,"setting":"group 2"})"},
                {"0.40,2.60", R"({"label":"M4","reading_pct":17.4,"board_c":13.5,"setting":"group 2"})"},
                {"2.00,0.40", R"({"label":"M5","reading_pct":12.9,"board_c":13.5,"setting":"group 2"})"},
                {"2.00,2.60", R"({"label":"M6","reading_pct":"cant_reach","setting":"group 2"})"}});
    for (int row = 0; row < 3; ++row)
        for (int column = 0; column < 3; ++column)
            site.record("level", "08:50",
                        R"({"run":"1","on":"bare","z_mm":)" + std::to_string(row * 36 + column) + "}",
                        std::to_string(column * 2) + ".00," +
                            (row == 0   ? "0.00"
                             : row == 1 ? "1.50"
                                        : "3.00"));
    site.record("level", "08:55", R"({"run":"1","on":"bare","closing":"yes","z_mm":1})", "0.00,0.00");
}

void take_delivery(Site& site) {
    site.record(
        "sheet", "09:05",
        R"({"batch":"SH-77B","width_m":4.6,"length_m":3.9,"thickness_mm":1.2,"colour":"black","damage":"none","accepted":"yes"})");
    site.record(
        "crease", "09:06",
        R"({"label":"K1","length_m":1.2,"height_mm":4,"origin":"transport","warmed":"yes","warmed_mm":1})",
        "1.00,1.00>2.20,1.00");
    site.record(
        "tin", "09:10",
        R"({"label":"FA-2","product":"deck_adhesive","batch":"FA-2","use_by":"2027-03-31","size_l":10,"low_c":5,"high_c":25})");
    site.record(
        "tin", "09:10",
        R"({"label":"CA-8","product":"contact_adhesive","batch":"CA-8","use_by":"2026-06-10","size_l":5,"low_c":5,"high_c":25})");
    site.record("tin", "09:10",
                R"({"label":"FT-1","product":"flashing_tape","batch":"FT-1","use_by":"2027-03-31"})");
    site.record("photo", "09:12",
                R"({"sha256":")" + std::string(64, 'a') + R"(","shows":"a proud head","media":"png"})",
                "1.20,0.80");
    for (const std::string label : {"SH-77B", "FA-2", "CA-8", "FT-1"})
        site.record("photo", "09:13",
                    R"({"sha256":")" + entry::hash_text(entry::sha256(label)) + R"(","shows":"label of )" +
                        label + R"(","label_of":")" + label + R"(","media":"png"})");
    site.record("air", "09:20", R"({"air_c":14,"rh_pct":68,"surface_c":15.5,"wind_ms":2.7,"sky":"part"})");
}

void put_right(Site& site) {
    site.record(
        "heads", "10:30",
        R"({"total":300,"checked":300,"below":295,"flush":3,"proud":2,"worst_mm":1,"reset":5,"fixing":"nail","length_mm":65})");
    site.record(
        "board", "10:40",
        R"({"label":"B2","material":"osb3","stamp":"yes","thickness_mm":18,"support_mm":400,"gap_mm":3,"soft":"none"})");
    site.record("moisture", "11:00",
                R"({"label":"M3","reading_pct":14.2,"board_c":15.0,"setting":"group 2"})", "3.60,2.60");
    site.record("moisture", "11:01",
                R"({"label":"M6","reading_pct":13.1,"board_c":15.0,"setting":"group 2"})", "2.00,2.60");
    site.record("joint", "11:05", R"({"step_mm":0.5,"sanded":"yes","blown_off":"yes","wipe":"clean"})",
                "B1|B2");
    const auto judged = site.judge("11:06");
    for (const auto& finding : judged.findings) {
        if (finding.rule != "chase_low") continue;
        site.record(
            "decide", "11:10",
            R"({"finding":")" + finding.id +
                R"(","rule":"chase_low","decider":"c","role":"customer","why":"the window sill cannot be raised this year"})");
        know(site, {{"decider", "Mrs Odile Ferring"}});
    }
}

void sign(Site& site, const std::string& part, const std::string& begun, const std::string& signed_at,
          const std::string& tin = {}, const std::string& by = "ip") {
    site.record("begin", begun, tin.empty() ? "{}" : R"({"tin":[")" + tin + R"("]})", "", part, by);
    for (const method::Step& step : site.method().stage(part.substr(0, part.find('/')))->steps)
        if (step.must && step.by_record.empty())
            site.record("tick", signed_at, R"({"step":")" + step.name + R"("})", "", part, by);
    site.record("sign", signed_at, "{}", "", part, by);
}

void lay(Site& site) {
    sign(site, "deck", "11:15", "11:20");
    sign(site, "plate/AB", "11:20", "11:40", "", "of");
    sign(site, "lay-out", "11:45", "12:30");
    site.record("air", "12:35", R"({"air_c":16,"rh_pct":60,"surface_c":18})");
    sign(site, "field/1", "12:40", "13:40", "FA-2");
    sign(site, "openings/R1", "13:45", "14:10", "CA-8");
    site.record("begin", "14:15", R"({"tin":["CA-8"]})", "", "band/AB", "of");
    site.record("pause", "14:25", R"({"why":"a shower","rain":"yes"})", "", "band/AB", "of");
    site.record("resume", "15:40", R"({"tin":["CA-8"]})", "", "band/AB", "of");
}

void finish_and_hand_over(Site& site) {
    for (const method::Step& step : site.method().stage("band")->steps)
        site.record("tick", "16:10", R"({"step":")" + step.name + R"("})", "", "band/AB", "of");
    site.record("sign", "16:15", "{}", "", "band/AB", "of");
    const std::string blistered(64, 'd'), smoothed(64, 'c');
    site.record("photo", "16:20",
                R"({"sha256":")" + blistered + R"(","shows":"a blister at the front edge","media":"png"})",
                "AB+1.20");
    site.record("punch_add", "16:20",
                R"({"number":1,"text":"a blister at the front edge","severity":"put_right","photo":")" +
                    blistered + "\"}",
                "AB+1.20", "band/AB", "of");
    site.record("punch_add", "16:21",
                R"({"number":2,"text":"front edge lifts a little","severity":"put_right"})", "AB+1.20",
                "band/AB", "ip");
    site.record("punch_join", "16:22", R"({"number":1,"with":2})");
    site.move_to("2026-05-21");
    site.record(
        "day", "08:00",
        R"({"date":"2026-05-21","people":["ip","of"],"briefing":"yes","plan":"yes","extinguisher":"yes","solvent_care":"yes","data_sheet":"yes","heat_end":"2026-05-21T13:10:00+01:00","fire_look":"2026-05-21T14:15:00+01:00"})");
    site.record("air", "08:30", R"({"air_c":13,"rh_pct":62,"surface_c":15})");
    site.record("reopen", "08:40", R"({"why":"blister at AB+1.20"})", "AB+1.20", "band/AB");
    sign(site, "band/AB", "08:45", "09:30", "CA-8", "of");
    site.record("photo", "09:32",
                R"({"sha256":")" + smoothed + R"(","shows":"front edge, smoothed again","media":"png"})",
                "AB+1.20");
    site.record("punch_clear", "09:35",
                R"({"number":1,"why":"lifted, dried, bonded again","photo":")" + smoothed + "\"}", "", "",
                "of");
    site.record("punch_look", "09:50", R"({"number":1})");
    for (const std::string part : {"band/BC", "band/DA", "wall/CD"})
        sign(site, part, "09:55", "10:40", "CA-8");
    site.record("leave_out", "10:45",
                R"({"why":"the builder points it with his own wall","agreed_by":"c","whose":"the builder"})",
                "", "chase/CD");
    know(site, {{"agreed_by", "Mrs Odile Ferring"}});
    for (const job::Part& part : site.fold("10:50").parts)
        if (part.stage == "patches") sign(site, part.name, "11:00", "11:30", "FT-1");
    for (const std::string part : {"cover/AB", "kerb/BC", "kerb/DA", "corners/A", "corners/B", "trim-off"})
        sign(site, part, "12:00", "13:00", "", "of");
    sign(site, "final", "13:30", "14:30");
    site.record("begin", "15:00", "{}", "", "hand-over");
    site.record(
        "tick", "15:05",
        R"({"step":"terms","guarantee_from":"2026-05-21","guarantee_years":10,"guarantee_terms":"workmanship and material; ends when others cut the sheet"})",
        "", "hand-over");
    site.record("tick", "15:05", R"({"step":"care","care_version":"1"})", "", "hand-over");
    site.record("sign", "15:10", R"({"customer":"c"})", "", "hand-over");
    know(site, {{"customer", "Odile Ferring"}});
}

} // namespace

Site roof_being_inspected() {
    Site site("2026-05-20");
    open_job(site);
    look_round(site);
    read_deck(site);
    take_delivery(site);
    return site;
}

Site troubled_roof() {
    Site site = roof_being_inspected();
    put_right(site);
    lay(site);
    finish_and_hand_over(site);
    return site;
}

Site taped_roof() {
    Site site;
    site.opened();
    for (const auto& [edge, kind] :
         {std::pair{"AB", "gutter"}, {"BC", "kerb"}, {"CD", "wall"}, {"DA", "kerb"}})
        site.record("edge", "08:05", std::string(R"({"kind":")") + kind + "\"}", edge);
    for (const auto& [line, m] :
         {std::pair{"AB", "4"}, {"BC", "3"}, {"CD", "4"}, {"DA", "3"}, {"AC", "5"}, {"BD", "5"}})
        site.record("tape", "08:10", std::string(R"({"m":)") + m + "}", line);
    return site;
}

paper::Setting test_setting() {
    return {.words = paper::Words::english(),
            .method = default_method(),
            .kinds = default_kinds(),
            .number = "1",
            .issue = "1",
            .program = "undersheet test",
            .picture = {}};
}

paper::Setting test_setting(const paper::Words& words) {
    const paper::Setting english = test_setting();
    return {.words = words,
            .method = english.method,
            .kinds = english.kinds,
            .number = english.number,
            .issue = english.issue,
            .program = english.program};
}

std::string words_of(const paper::Document& document) {
    return render_text(document, paper::Words::english());
}

paper::Document settled(paper::Document document) {
    document.foot.made_with = "(program and method)";
    document.foot.check_value = "(check value)";
    return document;
}

} // namespace undersheet::test
