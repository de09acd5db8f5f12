#include "paper/deck_sections.h"

#include "base/text.h"
#include "job/heads_sample.h"
#include "job/levels.h"
#include "job/queries.h"
#include "paper/finding_items.h"
#include "paper/plan.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <set>
#include <tuple>

namespace undersheet::paper {

namespace {

using job::Finding;
using job::Reading;

// What was found on some readings: the numbers the findings carry on the inspection, worst first, each once.
struct Amiss {
    std::map<method::Severity, std::vector<std::string>, std::greater<>> numbers;
    bool let_go = false, doubted = false;
};

Amiss amiss_on(const Making& making, const std::vector<const Reading*>& readings) {
    Amiss amiss;
    std::set<const Finding*> about;
    for (const Reading* reading : readings) {
        amiss.doubted = amiss.doubted || reading->doubted;
        for (const Finding* finding : job::findings_on(making.judgement, *reading)) about.insert(finding);
    }
    std::size_t number = 0;
    for (const Finding* finding : numbered(making)) {
        ++number;
        if (about.count(finding) == 1) amiss.numbers[finding->severity].push_back(std::to_string(number));
    }
    amiss.let_go =
        std::any_of(about.begin(), about.end(), [](const Finding* f) { return f->decided != nullptr; });
    return amiss;
}

// Words about a reading that say something is amiss, so that a clean row stays short.
bool says_nothing_amiss(const std::string& word) {
    constexpr std::array<std::string_view, 4> kFine{"", "none", "no", "one"};
    return std::find(kFine.begin(), kFine.end(), word) != kFine.end();
}

Text amiss_on_board(const Making& making, const Reading& board) {
    std::vector<std::string> pieces;
    for (const char* field : {"rot", "delamination", "swollen_mm", "contamination", "removed", "removed_how",
                              "sharp_edge", "edges_supported", "stamp"}) {
        const bool fine_when_yes =
            std::string_view(field) == "edges_supported" || std::string_view(field) == "stamp";
        const std::string word = board.word(field);
        if (fine_when_yes ? word.empty() || word == "yes" : says_nothing_amiss(word)) continue;
        pieces.push_back(making.said.label("board", field) + ": " + making.said.value(board, field));
    }
    return joined(pieces, "; ");
}

Row board_row(const Making& making, const Reading& board) {
    const auto says = [&](const char* field) { return making.said.value(board, field); };
    const std::string name = board.word("scope") == "all" ? making.say("board.all") : making.said.spot(board);
    const std::string material =
        board.word("material_text").empty() ? says("material") : board.word("material_text");
    Row row{{name, material, making.said.bare(board, "thickness_mm"), making.said.bare(board, "support_mm"),
             making.said.bare(board, "gap_mm"), says("soft"), verdict_on(making, board, "verdict.nothing"),
             making.traced(board)},
            {}};
    if (Text amiss = amiss_on_board(making, board); !amiss.is_empty())
        row.beneath.push_back(std::move(amiss));
    return row;
}

Row heads_row(const Making& making, const Reading& heads) {
    const double checked = heads.number("checked").value_or(0);
    const double bad = heads.number("flush").value_or(0) + heads.number("proud").value_or(0);
    const std::string share = checked > 0 ? making.words.number(100 * bad / checked, 1) : "";
    const std::string spot = making.said.spot(heads);
    const auto bare = [&](const char* field) { return making.said.bare(heads, field); };
    return {{spot.empty() ? making.say("heads.spread") : spot, bare("checked"), bare("flush"), bare("proud"),
             bare("worst_mm"), share, making.traced(heads)},
            {}};
}

std::string heads_bound(const Making& making, const job::HeadsSample& sample) {
    const auto text = [](std::int64_t n) { return std::to_string(n); };
    const Fillings fillings = {
        {"checked", text(sample.checked)},
        {"total", text(sample.total)},
        {"bad", text(sample.bad)},
        {"found", making.words.number(sample.found_pct, 1)},
        {"at_most", text(sample.at_most)},
        {"at_most_pct", making.words.number(sample.at_most_pct, 1)},
        {"confidence", making.words.number(making.setting.method.limit("heads_confidence_pct"), 0)}};
    return making.say(sample.is_full ? "heads.all" : "heads.bound", fillings);
}

Row joint_row(const Making& making, const Reading& joint) {
    const auto says = [&](const char* field) { return making.said.value(joint, field); };
    const std::string spot = making.said.spot(joint);
    return {{spot.empty() ? making.say("joint.all") : spot, making.said.bare(joint, "step_mm"),
             says("sanded"), says("filled"), says("blown_off"), says("wipe"),
             verdict_on(making, joint, "verdict.nothing"), making.traced(joint)},
            {}};
}

Row moisture_row(const Making& making, const Reading& point) {
    const auto worked = job::moisture_of(point, making.setting.method);
    const std::string corrected = worked && worked->corrected_pct
                                      ? making.words.number(*worked->corrected_pct, 1)
                                      : making.say("moisture.uncorrected");
    Row row{{making.said.spot(point), making.said.bare(point, "reading_pct"),
             making.said.bare(point, "board_c"), making.said.value(point, "setting"), corrected,
             verdict_on(making, point, "verdict.dry"), making.traced(point)},
            {}};
    return row;
}

Row level_row(const Making& making, const job::LevelPoint& level) {
    const std::string label = level.reading->label;
    const std::string place = making.said.short_place(level.reading->place);
    return {{label.empty() ? place : label + " (" + place + ")", making.said.bare(*level.reading, "z_mm"),
             making.said.value(*level.reading, "on"), verdict_on(making, *level.reading, "verdict.nothing"),
             making.traced(*level.reading)},
            {}};
}

void add_closing(Making& making, const job::LevelRun& run) {
    if (run.closing_error_mm)
        making.sentence("levels.closing", {{"mm", making.words.number(std::fabs(*run.closing_error_mm), 0)}});
    else
        making.sentence("levels.not_closed");
}

// The plane, the flattest run, and the level that lies furthest off the plane.
std::vector<Fact> fall_facts(const Making& making, const job::Fall& fall) {
    const auto spot = [&](std::size_t i) { return making.said.short_place(fall.points[i].reading->place); };
    const trade::Plane& plane = fall.falls.plane;
    std::vector<Fact> facts{{making.say("falls.plane"), fall_words(making, plane.fall_1_in)}};
    if (fall.falls.flattest) {
        const trade::Step& step = fall.falls.steps[*fall.falls.flattest];
        facts.push_back(
            {making.say("falls.flattest"),
             making.say("falls.run",
                        {{"fall", fall_words(making, trade::fall_1_in(step.run_m, step.run_rise_mm))},
                         {"from", spot(step.run_upper)},
                         {"to", spot(step.run_lower)}})});
    }
    std::size_t worst = 0;
    for (std::size_t i = 1; i < plane.residuals_mm.size(); ++i)
        if (std::fabs(plane.residuals_mm[i]) > std::fabs(plane.residuals_mm[worst])) worst = i;
    const double off_mm = plane.residuals_mm[worst];
    if (std::fabs(off_mm) < 0.5) { // a level is good to a millimetre or two
        facts.push_back({making.say("falls.worst"), making.say("falls.on_plane")});
        return facts;
    }
    facts.push_back({making.say("falls.worst"),
                     making.say(off_mm < 0 ? "falls.under" : "falls.over",
                                {{"mm", making.words.number(std::fabs(off_mm), 0)}, {"at", spot(worst)}})});
    return facts;
}

// The tapes of that length, whichever way they were named.
std::string tape_entries(const Making& making, const trade::JudgedTape& tape) {
    std::vector<const Reading*> taped;
    for (const Reading* reading : making.job.all("tape")) {
        const auto& [a, b] = std::tie(reading->place.a, reading->place.b);
        const bool is_it = (a == tape.from && b == tape.to) || (a == tape.to && b == tape.from);
        if (is_it && reading->number("m") == tape.m) taped.push_back(reading);
    }
    return making.traced(taped);
}

Row tape_row(const Making& making, const trade::JudgedTape& tape) {
    const auto m = [&](double length_m) { return making.words.number(length_m, 3); };
    const std::string entries = tape_entries(making, tape);
    if (!tape.from_others_m) return {{tape.from + tape.to, m(tape.m), "", "", entries}, {}};
    return {{tape.from + tape.to, m(tape.m), m(*tape.from_others_m),
             making.words.number(1000 * (tape.m - *tape.from_others_m), 0), entries},
            {}};
}

std::vector<Fact> outline_facts(const Making& making, const trade::Outline& outline) {
    const Words& words = making.words;
    std::vector<Fact> facts{
        {making.say("outline.area"), making.say("m2", {{"n", words.number(outline.area_m2, 2)}})},
        {making.say("outline.perimeter"), making.say("m", {{"n", words.number(outline.perimeter_m, 2)}})}};
    const std::string misclosure = outline.misclosure_mm
                                       ? making.say("mm", {{"n", words.number(*outline.misclosure_mm, 1)}})
                                       : making.say("outline.no_spare");
    facts.push_back({making.say("outline.misclosure"), misclosure});
    return facts;
}

} // namespace

std::string fall_words(const Making& making, std::optional<double> fall_1_in) {
    if (!fall_1_in) return making.say("falls.level");
    const std::string n = making.words.number(std::fabs(*fall_1_in), 1);
    return making.say(*fall_1_in < 0 ? "falls.back" : "falls.one_in", {{"n", n}});
}

Text verdict_on(const Making& making, const Reading& reading, std::string_view fine_key) {
    return verdict_on(making, std::vector<const Reading*>{&reading}, fine_key);
}

Text verdict_on(const Making& making, const std::vector<const Reading*>& readings,
                std::string_view fine_key) {
    const Amiss amiss = amiss_on(making, readings);
    std::vector<std::string> pieces;
    for (const auto& [severity, numbers] : amiss.numbers)
        pieces.push_back(making.say("verdict.see", {{"severity", making.severity(severity)},
                                                    {"numbers", making.words.listed(numbers)}}));
    if (amiss.let_go) pieces.push_back(making.say("verdict.let_go"));
    if (amiss.doubted) pieces.push_back(making.say("verdict.doubted"));
    return pieces.empty() ? Text(making.say(fine_key)) : strong(joined(pieces, "; "));
}

void add_structure(Making& making) {
    making.heading("section.structure");
    const Reading* structure = making.job.latest("structure");
    if (structure == nullptr) return making.nothing();
    making.traced_facts(*structure);
}

void add_boards(Making& making) {
    making.heading("section.boards");
    std::vector<Row> rows;
    for (const Reading* board : making.job.all("board")) rows.push_back(board_row(making, *board));
    making.table("",
                 {"board", "material", "thickness_mm#", "supports_mm#", "gap_mm#", "soft", "found", "entry"},
                 std::move(rows));
    if (const PlanAbout plan = plan_of_boards(making); !plan.marks.empty()) add_plan(making, plan);
}

void add_fixings(Making& making) {
    making.heading("section.fixings");
    std::vector<Row> rows;
    for (const Reading* heads : making.job.all("heads")) rows.push_back(heads_row(making, *heads));
    making.table("", {"where", "checked#", "flush#", "proud#", "worst_mm#", "bad_pct#", "entry"},
                 std::move(rows));
    if (const auto sample = job::judge_heads(making.job, making.setting.method))
        making.paper.paragraph(heads_bound(making, *sample));
    const Reading* last = making.job.latest("heads");
    if (last == nullptr) return;
    auto facts = making.said.facts(*last, {"total", "checked", "below", "flush", "proud", "worst_mm",
                                           "squares", "board", "other_heads", "reset", "minutes_min"});
    if (!facts.empty()) making.facts(std::move(facts));
}

void add_joints(Making& making) {
    making.heading("section.joints");
    std::vector<Row> rows;
    for (const Reading* joint : making.job.all("joint")) rows.push_back(joint_row(making, *joint));
    making.table("", {"joint", "step_mm#", "sanded", "filled", "blown_off", "wipe", "found", "entry"},
                 std::move(rows));
}

void add_moisture(Making& making) {
    making.heading("section.moisture");
    std::vector<Row> rows;
    for (const Reading* point : making.job.all("moisture")) rows.push_back(moisture_row(making, *point));
    const auto limit = [&](const char* key, int places) {
        return making.words.number(making.setting.method.limit(key), places);
    };
    making.table("", {"point", "read_pct#", "board_c#", "setting", "corrected_pct#", "found", "entry"},
                 std::move(rows));
    if (const PlanAbout plan = plan_of_moisture(making); !plan.marks.empty()) add_plan(making, plan);
    making.sentence("moisture.correction", {{"per_k", limit("moisture_per_k_pct", 2)},
                                            {"reference", limit("moisture_reference_c", 0)},
                                            {"warn", limit("moisture_warn_pct", 0)},
                                            {"stop", limit("moisture_stop_pct", 0)}});
}

void add_levels(Making& making) {
    making.heading("section.levels");
    const auto run = job::latest_run(making.job);
    if (!run) return making.nothing();
    std::vector<Row> rows;
    for (const job::LevelPoint& level : run->points) rows.push_back(level_row(making, level));
    making.table("", {"point", "height_mm#", "measured_on", "found", "entry"}, std::move(rows));
    add_plan(making, plan_of_levels(making));
    add_closing(making, *run);
    for (const job::Surface surface : {job::Surface::before_covering, job::Surface::finished})
        if (const auto fall = job::fall_of(making.job, making.setting.method, surface))
            making.facts(fall_facts(making, *fall));
}

void add_outline(Making& making) {
    making.heading("section.outline");
    const job::Roof& roof = making.job.roof;
    if (!roof.outline_says.empty())
        making.sentence("outline.open", {{"why", making.said.again(roof.outline_says_as)}});
    if (!roof.outline) {
        if (making.job.all("tape").empty()) making.nothing();
        return;
    }
    std::vector<Row> rows;
    for (const trade::JudgedTape& tape : roof.outline->tapes) rows.push_back(tape_row(making, tape));
    making.table("", {"tape", "taped_m#", "from_others_m#", "difference_mm#", "entry"}, std::move(rows));
    making.facts(outline_facts(making, *roof.outline));
}

} // namespace undersheet::paper
