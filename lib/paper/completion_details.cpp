#include "paper/completion_details.h"

#include "base/text.h"
#include "job/heads_sample.h"
#include "job/queries.h"
#include "job/stock.h"
#include "job/weather.h"
#include "paper/deck_sections.h"
#include "paper/finding_items.h"
#include "paper/photographs.h"
#include "paper/plan.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace undersheet::paper {

namespace {

using job::Finding;
using job::Part;
using job::Reading;

// The least and the most of some figures, "13 to 16" or "13"; "" when there are none.
class Span {
public:
    void take(std::optional<double> value) {
        if (!value) return;
        least_ = any_ ? std::min(least_, *value) : *value;
        most_ = any_ ? std::max(most_, *value) : *value;
        any_ = true;
    }
    [[nodiscard]] bool any() const { return any_; }
    [[nodiscard]] double least() const { return least_; }
    [[nodiscard]] std::string words(const Making& making, int places) const {
        const std::string from = making.words.number(least_, places), to = making.words.number(most_, places);
        return from == to ? from : making.say("span", {{"from", from}, {"to", to}});
    }

private:
    double least_ = 0, most_ = 0;
    bool any_ = false;
};

// "plywood, 18 mm": each sort of board once.
std::string boards(const Making& making) {
    std::vector<std::string> sorts;
    for (const Reading* board : making.job.all("board")) {
        const std::string typed = board->word("material_text");
        std::vector<std::string> pieces{typed.empty() ? making.said.value(*board, "material") : typed,
                                        making.said.value(*board, "thickness_mm")};
        std::erase(pieces, "");
        const std::string sort = joined(pieces, ", ");
        if (std::find(sorts.begin(), sorts.end(), sort) == sorts.end()) sorts.push_back(sort);
    }
    return joined(sorts, "; ");
}

std::string insulation(const Making& making, const Reading& structure) {
    std::vector<std::string> pieces;
    for (const char* field : {"roof_kind", "insulation", "insulation_mm", "insulation_place"}) {
        const std::string value = making.said.value(structure, field);
        if (!value.empty()) pieces.push_back(value);
    }
    return joined(pieces, ", ");
}

std::string joists(const Making& making, const Reading& structure) {
    const std::string spacing = making.said.value(structure, "joist_spacing_mm");
    return spacing.empty() ? "" : making.say("details.joists", {{"spacing", spacing}});
}

std::string dryness(const Making& making) {
    Span judged;
    std::size_t points = 0;
    for (const Reading* point : making.job.all("moisture")) {
        const auto worked = job::moisture_of(*point, making.setting.method);
        if (!worked) continue;
        judged.take(worked->judged_pct);
        ++points;
    }
    if (points == 0) return making.say("details.not_read");
    const std::string stop = making.words.number(making.setting.method.limit("moisture_stop_pct"), 0);
    return making.words.count("details.dry", points, {{"range", judged.words(making, 1)}, {"stop", stop}});
}

std::string heads(const Making& making) {
    const auto sample = job::judge_heads(making.job, making.setting.method);
    if (!sample) return {};
    const bool all_below = sample->is_full && sample->bad == 0;
    return making.say(all_below         ? "details.heads_all_below"
                      : sample->is_full ? "details.heads_all"
                                        : "details.heads",
                      {{"checked", std::to_string(sample->checked)},
                       {"total", std::to_string(sample->total)},
                       {"bad", std::to_string(sample->bad)},
                       {"at_most", std::to_string(sample->at_most)}});
}

void add_underneath(Making& making) {
    making.heading("section.underneath");
    std::vector<Fact> facts;
    making.fact(facts, "details.boards", boards(making));
    if (const Reading* structure = making.job.latest("structure")) {
        making.fact(facts, "details.frame", joists(making, *structure));
        making.fact(facts, "details.insulation", insulation(making, *structure));
    }
    making.fact(facts, "details.moisture", dryness(making));
    making.fact(facts, "details.fixings", heads(making));
    making.facts(std::move(facts));
}

void add_bonding_weather(Making& making) {
    making.heading("section.bonding_weather");
    Span air_c, rh_pct, surface_c, margin_k;
    const auto readings = job::bonding_readings(making.job, making.setting.method);
    for (const Reading* air : readings) {
        air_c.take(air->number("air_c"));
        rh_pct.take(air->number("rh_pct"));
        surface_c.take(air->number("surface_c"));
        if (const auto dew = job::dew_margin(*air)) margin_k.take(dew->margin_k);
    }
    if (readings.empty()) return making.nothing();
    std::vector<Fact> facts{{making.say("weather.readings"), std::to_string(readings.size())}};
    const auto celsius = [&](const Span& span) {
        return span.any() ? span.words(making, 0) + " " + making.say("unit.c") : "";
    };
    making.fact(facts, "weather.air", celsius(air_c));
    making.fact(facts, "weather.humidity",
                rh_pct.any() ? rh_pct.words(making, 0) + " " + making.say("unit.pct") : "");
    making.fact(facts, "weather.deck", celsius(surface_c));
    if (margin_k.any())
        making.fact(
            facts, "weather.margin",
            making.say("weather.at_least",
                       {{"k", making.words.number(std::floor(margin_k.least()), 0)},
                        {"limit", making.words.number(making.setting.method.limit("dew_margin_k"), 0)}}));
    making.facts(std::move(facts));
}

std::string fall_on(const Making& making, job::Surface surface) {
    const auto fall = job::fall_of(making.job, making.setting.method, surface);
    if (!fall) return making.say("details.fall_not_measured");
    const std::string mean = fall_words(making, fall->falls.plane.fall_1_in);
    if (!fall->falls.flattest) return mean;
    const trade::Step& step = fall->falls.steps[*fall->falls.flattest];
    return making.say(
        "details.fall",
        {{"mean", mean}, {"flattest", fall_words(making, trade::fall_1_in(step.run_m, step.run_rise_mm))}});
}

void add_falls(Making& making) {
    making.heading("section.falls");
    making.facts({{making.say("details.fall_before"), fall_on(making, job::Surface::before_covering)},
                  {making.say("details.fall_after"), fall_on(making, job::Surface::finished)}});
}

// "141 to 164 (bare deck); 152 (finished roof)": what a chase was measured from decides what its height is worth.
std::string chase_words(const Making& making, const job::Edge& edge) {
    std::vector<std::pair<std::string, Span>> by_surface;
    for (const Reading* reading : job::heights_at(making.job, edge)) {
        const std::string on = making.said.value(*reading, "on");
        auto same = std::find_if(by_surface.begin(), by_surface.end(),
                                 [&](const auto& surface) { return surface.first == on; });
        if (same == by_surface.end()) same = by_surface.insert(by_surface.end(), {on, Span()});
        same->second.take(reading->number("height_mm"));
    }
    std::vector<std::string> all;
    for (const auto& [on, height_mm] : by_surface) {
        const std::string range = height_mm.words(making, 0);
        all.push_back(on.empty() ? range : making.say("walls.chase_from", {{"range", range}, {"on", on}}));
    }
    return all.empty() ? making.say("walls.no_height") : joined(all, "; ");
}

// What was left bonded up the wall after trimming, as its part was ticked last.
std::string bonded_words(const Making& making, const job::Edge& edge) {
    std::optional<double> cover_mm;
    for (const Part& part : making.job.parts) {
        if (part.what != edge.name) continue;
        for (const job::Tick& tick : part.ticks)
            if (const entry::Value* said = tick.data.find("cover_mm"); said != nullptr && !tick.struck)
                if (const Decimal* mm = said->number()) cover_mm = mm->value();
    }
    return cover_mm ? making.words.number(*cover_mm, 0) : making.say("walls.no_cover");
}

// Two heights that are easily taken for one another: where the slot is, and how far up the sheet is bonded.
void add_heights(Making& making) {
    making.heading("section.heights");
    std::vector<Row> rows;
    for (const job::Edge& edge : making.job.roof.edges)
        if (!edge.is_free())
            rows.push_back({{making.say("place.pair", {{"a", edge.a}, {"b", edge.b}}),
                             making.said.choice("type", edge.abutment), chase_words(making, edge),
                             bonded_words(making, edge)},
                            {}});
    if (rows.empty()) return making.sentence("walls.none");
    making.table("", {"edge", "wall", "chase_mm#", "bonded_mm#"}, std::move(rows));
}

// "field section 1; band, edge AB", each part once in the order of use.
std::string used_on(const Making& making, const std::string& label) {
    std::vector<std::string> parts;
    for (const job::TinUse& use : job::tin_uses(making.job)) {
        const std::string name = making.said.part(use.part);
        const bool same = use.label == label || (use.tin != nullptr && use.tin->label == label);
        if (same && !use.part.empty() && std::find(parts.begin(), parts.end(), name) == parts.end())
            parts.push_back(name);
    }
    return parts.empty() ? making.say("batches.not_used") : joined(parts, "; ");
}

void add_batches(Making& making) {
    making.heading("section.batches");
    std::vector<Row> rows;
    for (const Reading* sheet : making.job.all("sheet"))
        rows.push_back({{making.say("batches.sheet"), making.said.value(*sheet, "batch"),
                         making.say("batches.whole_roof")},
                        {}});
    for (const Reading* tin : making.job.all("tin"))
        rows.push_back({{making.said.value(*tin, "product"), making.said.value(*tin, "batch"),
                         used_on(making, tin->label)},
                        {}});
    making.table("", {"product", "batch", "used_on"}, std::move(rows));
}

void add_workers(Making& making) {
    making.heading("section.who_did");
    std::vector<std::string> names;
    const Part* final_look = making.job.part("final");
    for (const Part& part : making.job.parts) {
        if (part.signature() == nullptr || part.stage == "final" || part.stage == "hand-over") continue;
        const std::string name = making.job.person_name(part.signature()->by);
        if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
    }
    std::vector<Fact> facts;
    making.fact(facts, "details.done_by", making.words.listed(names));
    if (const job::SignOff* look = final_look == nullptr ? nullptr : final_look->signature())
        making.fact(facts, "details.checked_by",
                    making.by(look->entry) +
                        (look->own_check ? " (" + making.say("signature.own_check") + ")" : ""));
    making.facts(std::move(facts));
}

// What stays with the roof and is worth knowing; what passed with the day is not.
bool stays_with_roof(const Making& making, const Finding& finding) {
    constexpr std::array<std::string_view, 7> kStays{"structure", "board",  "level",  "abutment",
                                                     "chase",     "gutter", "opening"};
    const method::Rule* rule = making.setting.method.rule(finding.rule);
    return rule != nullptr && !rule->rereads && !finding.near &&
           std::find(kStays.begin(), kStays.end(), rule->kind) != kStays.end();
}

void add_differences(Making& making) {
    making.heading("section.not_as_usual");
    Listing listing;
    for (const Finding& finding : making.judgement.departures)
        listing.points.emplace_back(
            making.say("not_as_usual.let_go", {{"says", plain_says(making, finding)},
                                               {"who", making.words.held(finding.decided->decider)},
                                               {"role", making.said.choice("role", finding.decided->role)},
                                               {"why", finding.decided->why}}));
    for (const Part& part : making.job.parts)
        if (!part.left_out_why.empty())
            listing.points.emplace_back(
                making.say("not_as_usual.left_out", {{"part", making.said.part(part.name)},
                                                     {"why", part.left_out_why},
                                                     {"who", making.words.held(job::agreed_by(part))}}));
    for (const Finding& finding : making.judgement.findings)
        if (finding.severity == method::Severity::note && stays_with_roof(making, finding))
            listing.points.emplace_back(
                making.say("not_as_usual.note", {{"says", plain_says(making, finding)}}));
    if (listing.points.empty()) return making.sentence("not_as_usual.nothing");
    making.paper.add(std::move(listing));
}

void add_building_control(Making& making) {
    making.heading("section.building_control");
    const auto said = [&](const char* field) { return making.job.said("site", field); };
    const std::string state = said("building_control");
    if (state == "number")
        return making.sentence("control.number", {{"number", said("building_control_ref")}});
    if (state == "asked") return making.sentence("control.asked");
    if (state != "not_notifiable") return making.sentence("control.nothing");
    making.sentence("control.not_notifiable",
                    {{"why", said("building_control_reason")}, {"who", said("building_control_by")}});
}

} // namespace

void add_details(Making& making) {
    const Photos photos = making.job.all("photo");
    add_plan(making, with_photographs(making, photos, plan_of_roof(making)));
    add_underneath(making);
    add_bonding_weather(making);
    add_falls(making);
    add_heights(making);
    add_batches(making);
    add_workers(making);
    add_differences(making);
    add_not_looked(making);
    add_building_control(making);
    add_photographs(making, photos, "photographs.none");
}

} // namespace undersheet::paper
