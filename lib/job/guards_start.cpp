// Before a part is begun or taken up again: safety, air, moisture, tins, and what must not go on at the same time.
#include "job/guards.h"
#include "job/stock.h"
#include "job/weather.h"

#include "base/text.h"

#include <algorithm>

namespace undersheet::job {
namespace {

const Reading* day_of(const Job& job, const entry::Date& date) {
    for (const Reading* day : job.all("day")) {
        if (day->word("date") == entry::date_text(date)) return day;
    }
    return nullptr;
}

std::string field_in_words(std::string_view field) { return replaced(std::string(field), "_", " "); }

// "day.briefing" is said of today, "site.fragile" of the job.
HeldList unsaid(const Scene& scene, const std::vector<std::string>& wanted) {
    HeldList held;
    const Reading* day = day_of(scene.job, entry::date_of(scene.wish.when));
    for (const auto& name : wanted) {
        const auto pieces = split(name, '.');
        if (pieces.front() == "day") {
            const std::string word = day == nullptr ? std::string() : day->word(pieces[1]);
            if (word == "yes") continue;
            held.push_back({.why = "today's " + field_in_words(pieces[1]) + " is not ticked",
                            .clears = "record day " + pieces[1] + "=yes"});
            continue;
        }
        if (!scene.job.said(pieces[0], pieces[1]).empty()) continue;
        held.push_back({.why = "nothing said of " + field_in_words(pieces[1]),
                        .clears = "record " + pieces[0] + " " + pieces[1] + "=…"});
    }
    return held;
}

// Safety is checked per day and per person: whoever works is among the people of the day.
HeldList not_on_the_roof_today(const Scene& scene) {
    if (scene.wish.by.empty()) return {};
    const Reading* day = day_of(scene.job, entry::date_of(scene.wish.when));
    if (day == nullptr || day->data.find("people") == nullptr) {
        return {{.why = "nobody is named on the roof today", .clears = "record day people=…"}};
    }
    for (const auto& person : day->data.list_of("people")) {
        if (person.text() != nullptr && *person.text() == scene.wish.by) return {};
    }
    return {{.why = scene.job.person_name(scene.wish.by) + " is not among the people on the roof today",
             .clears = "record day people=…"}};
}

HeldList air_too_old(const Scene& scene) {
    const Reading* air = scene.job.latest("air");
    if (air == nullptr)
        return {{.why = "no air reading", .clears = "record air air_c=… rh_pct=… surface_c=…"}};
    const double age_min = entry::minutes_between(air->when(), scene.wish.when);
    if (age_min > scene.method.limit("reading_age_min")) {
        return {{.why = "the air reading of " + entry::clock_text(air->when()) + " is " + age_words(age_min) +
                        " old, over " + age_words(scene.method.limit("reading_age_min")),
                 .clears = "take one: record air air_c=… rh_pct=… surface_c=…"}};
    }
    if (!air->number("air_c") || !air->number("rh_pct") || !air->number("surface_c")) {
        return {{.why = "the air reading lacks the deck surface temperature",
                 .clears = "record air with surface_c=…"}};
    }
    return {};
}

bool is_near_edge_or_opening(const Scene& scene, const Reading& point) {
    const auto at = locate(scene.job.roof, point.place);
    const auto ground = scene.job.roof.polygon();
    if (!at || ground.empty()) return true;
    const double reach_m = scene.method.limit("wet_edge_m");
    if (trade::distance_to_edges_m(ground, *at) <= reach_m) return true;
    return std::any_of(
        scene.job.roof.openings.begin(), scene.job.roof.openings.end(), [&](const Opening& opening) {
            return opening.at && trade::distance_m(*opening.at, *at) <= opening.reach_m + reach_m;
        });
}

bool is_within_reach(const Scene& scene, const Reading& point) {
    const auto metres = metres_to_part(scene.job.roof, point.place, scene.part.name);
    return !metres || *metres <= scene.method.limit("moisture_reach_m");
}

std::string point_name(const Reading& point) {
    return point.label.empty() ? entry::place_text(point.place) : point.label;
}

// The points around the part; all of them when none is near.
std::vector<const Reading*> points_for(const Scene& scene) {
    std::vector<const Reading*> all;
    std::vector<const Reading*> near;
    for (const Reading* point : scene.job.all("moisture")) {
        if (!point->number("reading_pct")) continue;
        all.push_back(point);
        if (is_within_reach(scene, *point)) near.push_back(point);
    }
    return near.empty() ? all : near;
}

HeldList moisture_holds(const Scene& scene) {
    const auto points = points_for(scene);
    if (points.empty()) return {{.why = "no moisture reading", .clears = "record moisture at six points"}};
    const auto rain = last_rain(scene.job);
    std::vector<std::string> old;
    std::vector<std::string> rained_on;
    for (const Reading* point : points) {
        const double age_h = entry::minutes_between(point->when(), scene.wish.when) / 60;
        if (age_h > scene.method.limit("moisture_age_h"))
            old.push_back(point_name(*point));
        else if (rain && point->when().unix_s < rain->unix_s && is_near_edge_or_opening(scene, *point))
            rained_on.push_back(point_name(*point));
    }
    HeldList held;
    if (!old.empty()) {
        held.push_back({.why = "moisture at " + joined(old, ", ") + " is over " +
                               shortest(scene.method.limit("moisture_age_h"), 0) + " h old",
                        .clears = "read it again"});
    }
    if (!rained_on.empty()) {
        held.push_back({.why = "rain at " + entry::clock_text(*rain) + " since moisture was read at " +
                               joined(rained_on, ", "),
                        .clears = "read the points within " + shortest(scene.method.limit("wet_edge_m"), 1) +
                                  " m of edges and openings again"});
    }
    return held;
}

std::vector<std::string> named_tins(const Scene& scene) {
    std::vector<std::string> labels;
    for (const auto& piece : split(scene.wish.data.text_of("tin"), ',')) {
        if (!trimmed(piece).empty()) labels.emplace_back(trimmed(piece));
    }
    for (const auto& item : scene.wish.data.list_of("tin")) {
        if (item.text() != nullptr) labels.push_back(*item.text());
    }
    return labels;
}

void outside_range(const Scene& scene, const Reading& tin, HeldList& held) {
    const Reading* air = scene.job.latest("air");
    const auto low_c = tin.number("low_c");
    const auto high_c = tin.number("high_c");
    if (air == nullptr || !has_guard(scene.stage.start_guards, "reading")) return;
    for (const std::string field : {"air_c", "surface_c"}) {
        const auto value = air->number(field);
        if (!value) continue;
        if ((low_c && *value < *low_c) || (high_c && *value > *high_c)) {
            held.push_back({.why = air->word(field) + " °C is outside the range on tin " + tin.label + ", " +
                                   tin.word("low_c") + " to " + tin.word("high_c") + " °C",
                            .clears = "wait, or another tin"});
        }
    }
}

HeldList one_tin(const Scene& scene, const std::string& label) {
    const Reading* tin = scene.job.tin(label);
    if (tin == nullptr)
        return {{.why = "no tin " + label + " on record",
                 .clears = "record tin label=" + label + " product=… batch=… use_by=…"}};
    HeldList held;
    const auto& products = scene.stage.products;
    if (!products.empty() && !has_guard(products, tin->word("product"))) {
        held.push_back({.why = label + " is " + field_in_words(tin->word("product")) + "; " +
                               scene.stage.title + " takes " + field_in_words(joined(products, " or ")),
                        .clears = "name the right tin"});
    }
    const auto use_by = entry::parse_date(tin->word("use_by"));
    if (use_by && *use_by < entry::date_of(scene.wish.when)) {
        held.push_back(
            {.why = "tin " + label + " was use-by " + entry::date_words(*use_by), .clears = "another tin"});
    }
    const std::string stored = tin->word("stored");
    if (stored == "below_5c" || stored == "frozen")
        held.push_back(
            {.why = "tin " + label + " was stored too cold", .clears = "another tin; scrap this one"});
    outside_range(scene, *tin, held);
    return held;
}

const Part* other_open_coat(const Scene& scene, bool only_own) {
    for (const Part& other : scene.job.parts) {
        if (other.name == scene.part.name || open_coat(other, *scene.method.stage(other.stage)) == nullptr)
            continue;
        if (other.state != State::under_way && other.state != State::paused) continue;
        if (!only_own || scene.wish.by.empty() || other.begun_by == scene.wish.by) return &other;
    }
    return nullptr;
}

HeldList heights_missing(const Scene& scene) {
    for (const Reading* chase : scene.job.all("chase")) {
        if (chase->number("height_mm") &&
            scene.job.roof.edge(chase->place.a + chase->place.b) == scene.job.roof.edge(scene.part.what))
            return {};
    }
    return {{.why = "no height taken along " + scene.part.what,
             .clears = "record chase height_mm=… --at " + scene.part.what + "+0.10"}};
}

HeldList chase_not_cut(const Scene& scene) {
    const Edge* edge = scene.job.roof.edge(scene.part.what);
    if (edge == nullptr || !has_guard(scene.method.chased_abutments(), edge->abutment)) return {};
    for (const Reading* abutment : scene.job.all("abutment")) {
        if (scene.job.roof.edge(abutment->place.a + abutment->place.b) != edge) continue;
        if (abutment->word("chase") == "existing" || abutment->word("chase_cut") == "yes") return {};
    }
    return {{.why = "the chase along " + scene.part.what + " is not cut",
             .clears = "record abutment chase_cut=yes --at " + scene.part.what}};
}

HeldList dust_holds(const Scene& scene) {
    const Reading* wiped = nullptr;
    for (const Reading* joint : scene.job.all("joint")) {
        if (joint->word("wipe") == "clean") wiped = joint;
    }
    if (wiped == nullptr)
        return {{.why = "the deck was not wiped clean",
                 .clears = "blow it off, wipe it: record joint wipe=clean"}};
    const double age_h = entry::minutes_between(wiped->when(), scene.wish.when) / 60;
    const bool cut_since =
        std::any_of(scene.job.readings.begin(), scene.job.readings.end(), [&](const Reading& reading) {
            return reading.kind == "alter" && entry::comes_before(*wiped->entry, *reading.entry);
        });
    if (age_h <= scene.method.limit("dust_age_h") && !cut_since) return {};
    return {{.why = cut_since ? "the deck was worked on since it was wiped"
                              : "the deck was wiped over " + shortest(scene.method.limit("dust_age_h"), 1) +
                                    " h ago",
             .clears = "blow it off, wipe it again: record joint wipe=clean"}};
}

HeldList delivery_holds(const Scene& scene) {
    for (const Reading* sheet : scene.job.all("sheet")) {
        if (sheet->number("width_m") && sheet->number("length_m")) return {};
    }
    return {{.why = "no sheet on record", .clears = "measure it: record sheet width_m=… length_m=… batch=…"}};
}

} // namespace

HeldList safety_holds(const Scene& scene) {
    HeldList held;
    if (has_guard(scene.stage.start_guards, "safety")) {
        held = unsaid(scene, scene.method.safety());
        for (auto& line : not_on_the_roof_today(scene)) held.push_back(std::move(line));
    }
    if (has_guard(scene.stage.start_guards, "solvent")) {
        for (auto& line : unsaid(scene, scene.method.solvent())) held.push_back(std::move(line));
    }
    return held;
}

HeldList reading_holds(const Scene& scene) {
    HeldList held;
    if (has_guard(scene.stage.start_guards, "reading")) held = air_too_old(scene);
    if (has_guard(scene.stage.start_guards, "moisture")) {
        for (auto& line : moisture_holds(scene)) held.push_back(std::move(line));
    }
    return held;
}

HeldList tin_holds(const Scene& scene) {
    HeldList held;
    for (const auto& label : named_tins(scene)) {
        for (auto& line : one_tin(scene, label)) held.push_back(std::move(line));
    }
    return held;
}

// A coat that was left under a pause may be void: resuming says so, and nobody joins it before.
HeldList join_first(const Part& other, std::string why, std::string clears) {
    if (other.state == State::paused)
        clears = "resume " + other.name + " first: it says whether that coat is still good";
    return {{.why = std::move(why), .clears = std::move(clears)}};
}

HeldList beside_holds(const Scene& scene) {
    const method::Step* step = scene.stage.step(scene.wish.data.text_of("step"));
    const bool opens = step != nullptr && step->opens_adhesive;
    if (has_guard(scene.stage.start_guards, "one_coat") && (scene.wish.event != Event::tick || opens)) {
        if (const Part* other = other_open_coat(scene, true)) {
            return join_first(*other, "the coat on " + part_words(other->name) + " is still open",
                              "join it first: one open coat a person");
        }
    }
    if (has_guard(scene.stage.start_guards, "no_open_coat") && scene.wish.event != Event::tick) {
        if (const Part* other = other_open_coat(scene, false)) {
            if (other->stage != scene.part.stage)
                return join_first(*other, "open adhesive on " + part_words(other->name), "join it first");
        }
    }
    const Part* open = step != nullptr && step->uses_heat ? other_open_coat(scene, false) : nullptr;
    return open == nullptr ? HeldList()
                           : join_first(*open, "no heat gun beside open solvent", "join the open coat first");
}

HeldList start_evidence(const Scene& scene) {
    const auto& guards = scene.stage.start_guards;
    HeldList held;
    const auto take = [&](std::string_view guard, HeldList lines) {
        if (!has_guard(guards, guard)) return;
        for (auto& line : lines) held.push_back(std::move(line));
    };
    take("delivery", delivery_holds(scene));
    take("dust", dust_holds(scene));
    take("heights", heights_missing(scene));
    take("chase_cut", chase_not_cut(scene));
    return held;
}

} // namespace undersheet::job
