#include "paper/round_sections.h"

#include "base/text.h"
#include "job/queries.h"
#include "paper/deck_sections.h"
#include "paper/finding_items.h"
#include "paper/wall_heights.h"

#include <algorithm>

namespace undersheet::paper {

namespace {

using job::Reading;

Row day_row(const Making& making, const Reading& day) {
    const auto says = [&](const char* field) { return making.said.value(day, field); };
    const std::string worked =
        day.word("worked") == "no" ? making.say("day.no_work", {{"why", says("why_not")}}) : "";
    Row row{{says("date"), worked.empty() ? says("people") : worked, says("briefing"), says("plan"),
             says("extinguisher"), says("solvent_care"), says("data_sheet"), making.traced(day)},
            {}};
    if (!day.word("heat_end").empty())
        row.beneath.emplace_back(
            making.say("day.heat", {{"end", says("heat_end")}, {"look", says("fire_look")}}));
    return row;
}

// All that was said of something but what the table shows already, on one line.
Text rest_of(const Making& making, const Reading& reading, const std::vector<std::string_view>& shown) {
    std::vector<std::string> pieces;
    for (const Fact& fact : making.said.facts(reading, shown))
        pieces.push_back(fact.name + ": " + fact.value.words());
    return joined(pieces, "; ");
}

const Reading* abutment_at(const Making& making, const job::Edge& edge) {
    for (const Reading* wall : making.job.all("abutment"))
        if (making.job.roof.edge(wall->place.a + wall->place.b) == &edge) return wall;
    return nullptr;
}

std::string heights(const Making& making, const std::vector<const Reading*>& readings) {
    std::vector<std::string> pieces;
    for (const Reading* reading : readings) pieces.push_back(making.said.bare(*reading, "height_mm"));
    return pieces.empty() ? making.say("walls.no_height") : joined(pieces, ", ");
}

std::string least(const Making& making, const std::vector<const Reading*>& readings) {
    if (readings.empty()) return {};
    double least_mm = *readings.front()->number("height_mm");
    for (const Reading* reading : readings) least_mm = std::min(least_mm, *reading->number("height_mm"));
    return making.words.number(least_mm, 0);
}

std::vector<const Reading*> with(std::vector<const Reading*> readings, const Reading* wall) {
    if (wall != nullptr) readings.push_back(wall);
    return readings;
}

// What was found of a wall and of the heights along it.
Text wall_verdict(const Making& making, const Reading* wall, const std::vector<const Reading*>& readings) {
    const std::string_view fine_key = readings.empty() ? "verdict.no_height" : "verdict.high_enough";
    return verdict_on(making, with(readings, wall), fine_key);
}

Row wall_row(const Making& making, const job::Edge& edge) {
    const Reading* wall = abutment_at(making, edge);
    const auto readings = job::heights_at(making.job, edge);
    const auto says = [&](const char* field) {
        return wall == nullptr ? std::string() : making.said.value(*wall, field);
    };
    Row row{{edge.name, wall == nullptr ? making.say("walls.not_recorded") : says("type"), says("above"),
             heights(making, readings), least(making, readings), wall_verdict(making, wall, readings),
             making.traced(with(readings, wall))},
            {}};
    if (wall == nullptr) return row;
    if (Text rest = rest_of(making, *wall, {"type", "above"}); !rest.is_empty())
        row.beneath.push_back(std::move(rest));
    return row;
}

void add_each(Making& making, std::string_view kind, const std::vector<std::string_view>& leave_out) {
    const auto readings = making.job.all(kind);
    if (readings.empty()) return making.nothing();
    for (const Reading* reading : readings) {
        const std::string place = making.said.place(reading->place);
        const std::string name =
            reading->label.empty() ? place : reading->label + (place.empty() ? "" : ", " + place);
        if (!name.empty()) making.paper.heading(name, 3);
        making.traced_facts(*reading, leave_out);
    }
}

Row crease_row(const Making& making, const Reading& crease) {
    const auto says = [&](const char* field) { return making.said.value(crease, field); };
    return {{making.said.spot(crease), says("origin"), making.said.bare(crease, "length_m"),
             making.said.bare(crease, "height_mm"), making.said.bare(crease, "warmed_mm"),
             verdict_on(making, crease, "verdict.nothing"), making.traced(crease)},
            {}};
}

std::string range_words(const Making& making, const Reading& tin) {
    const std::string low = making.said.bare(tin, "low_c"), high = making.said.bare(tin, "high_c");
    if (low.empty() && high.empty()) return {};
    return making.say("tin.range", {{"low", low}, {"high", high}});
}

Row tin_row(const Making& making, const Reading& tin) {
    const auto says = [&](const char* field) { return making.said.value(tin, field); };
    return {{says("product"), says("batch"), says("use_by"), making.said.bare(tin, "size_l"), says("count"),
             range_words(making, tin), verdict_on(making, tin, "verdict.nothing"), making.traced(tin)},
            {}};
}

} // namespace

void add_safety(Making& making) {
    making.heading("section.safety");
    const Reading* site = making.job.latest("site"); // may say no more than whose roof it is
    if (site != nullptr && !making.said.facts(*site).empty()) making.traced_facts(*site);
    auto days = making.job.all("day"); // one filled in later does not move behind the next
    std::stable_sort(days.begin(), days.end(),
                     [](const Reading* a, const Reading* b) { return a->word("date") < b->word("date"); });
    std::vector<Row> rows;
    for (const Reading* day : days) rows.push_back(day_row(making, *day));
    making.table("",
                 {"day", "people", "briefing", "plan", "extinguisher", "solvent_care", "data_sheet", "entry"},
                 std::move(rows));
    add_passing(making, "day");
}

void add_walls(Making& making) {
    making.heading("section.walls");
    std::vector<Row> rows;
    for (const job::Edge& edge : making.job.roof.edges)
        if (!edge.is_free()) rows.push_back(wall_row(making, edge));
    if (rows.empty() && making.job.roof.closed()) return making.sentence("walls.none");
    making.table("", {"edge", "wall", "above", "heights_mm", "least_mm#", "found", "entry"}, std::move(rows));
    for (const job::Edge& edge : making.job.roof.edges) {
        auto drawing = edge.is_free() ? std::nullopt : wall_heights(making, edge);
        if (!drawing) continue;
        making.paper.heading(drawing->title, 3);
        making.paper.add(*std::move(drawing));
    }
}

void add_gutters(Making& making) {
    making.heading("section.gutters");
    add_each(making, "gutter", {});
}

void add_openings(Making& making) {
    making.heading("section.openings");
    if (making.job.all("opening").empty()) return making.sentence("openings.none");
    add_each(making, "opening", {"label"});
}

void add_sheet(Making& making) {
    making.heading("section.sheet");
    add_each(making, "sheet", {"label"});
    std::vector<Row> rows;
    for (const Reading* crease : making.job.all("crease")) rows.push_back(crease_row(making, *crease));
    if (rows.empty()) return making.sentence("creases.none");
    making.table(making.say("creases.caption"),
                 {"crease", "origin", "length_m#", "cold_mm#", "warmed_mm#", "found", "entry"},
                 std::move(rows));
}

void add_tins(Making& making) {
    making.heading("section.tins");
    std::vector<Row> rows;
    for (const Reading* tin : making.job.all("tin")) rows.push_back(tin_row(making, *tin));
    making.table("", {"product", "batch", "use_by", "size_l#", "count#", "range_c", "found", "entry"},
                 std::move(rows));
}

} // namespace undersheet::paper
