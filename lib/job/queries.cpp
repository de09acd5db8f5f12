#include "job/queries.h"

#include <algorithm>

namespace undersheet::job {

namespace {

bool shows(const Reading& photo, const Finding& finding) {
    const std::string of = photo.word("of");
    const auto is_of = [&](const entry::Entry* entry) { return of == entry::hash_text(entry->hash); };
    if (!of.empty()) return std::any_of(finding.entries.begin(), finding.entries.end(), is_of);
    const std::string at = entry::place_text(photo.place);
    return !at.empty() && (at == finding.place || at == finding.label);
}

trade::MoistureRule wood_rule(const method::Method& method) {
    trade::MoistureRule rule = trade::practice_moisture_rule();
    rule.pct_per_k_below = method.limit("moisture_per_k_pct");
    rule.pct_per_k_above = method.limit("moisture_per_k_pct");
    rule.reference_c = method.limit("moisture_reference_c");
    return rule;
}

bool is_about(const Finding& finding, const Reading& reading) {
    if (finding.place.empty() && finding.label.empty()) return false;
    return std::any_of(finding.entries.begin(), finding.entries.end(), [&](const entry::Entry* entry) {
        return std::find(reading.stands_on.begin(), reading.stands_on.end(), entry) !=
                   reading.stands_on.end() ||
               entry == reading.entry;
    });
}

// A bonding part is begun and resumed under the latest air reading of that moment.
const Reading* air_at(const Job& job, const entry::Time& when) {
    const Reading* latest = nullptr;
    for (const Reading* air : job.all("air"))
        if (air->when().unix_s <= when.unix_s &&
            (latest == nullptr || latest->when().unix_s <= air->when().unix_s))
            latest = air;
    return latest;
}

bool is_finished(const Reading& level) { return level.word("on") == "finished"; }

// The run of the last level read on that surface, without its closing reading.
std::vector<LevelPoint> run_on(const Job& job, Surface surface) {
    std::string run;
    for (const Reading* level : job.all("level"))
        if (is_finished(*level) == (surface == Surface::finished)) run = level->word("run");
    std::vector<LevelPoint> points;
    for (const Reading* level : job.all("level")) {
        const auto at = locate(job.roof, level->place);
        const auto z_mm = level->number("z_mm");
        const bool of_run =
            is_finished(*level) == (surface == Surface::finished) && level->word("run") == run;
        if (of_run && at && z_mm && level->word("closing") != "yes") points.push_back({level, *at, *z_mm});
    }
    return points;
}

bool is_on_roof(const Roof& roof, const std::string& of) {
    return of == "roof" || std::any_of(roof.edges.begin(), roof.edges.end(),
                                       [&](const Edge& edge) { return edge.kind == of; });
}

} // namespace

std::vector<const Reading*> photos_of(const Job& job, const Finding& finding) {
    std::vector<const Reading*> found;
    for (const Reading* photo : job.all("photo"))
        if (shows(*photo, finding)) found.push_back(photo);
    return found;
}

const Reading* photo_named(const Job& job, std::string_view sha256) {
    for (const Reading* photo : job.all("photo"))
        if (photo->word("sha256") == sha256) return photo;
    return nullptr;
}

std::optional<trade::Moisture> moisture_of(const Reading& reading, const method::Method& method) {
    const auto raw_pct = reading.number("reading_pct");
    if (!raw_pct) return std::nullopt;
    const auto worked =
        trade::moisture({.reading_pct = *raw_pct, .board_c = reading.number("board_c")}, wood_rule(method),
                        {method.limit("meter_least_pct"), method.limit("meter_most_pct")});
    return worked ? std::optional(*worked) : std::nullopt;
}

const Reading* reading_of(const Job& job, const entry::Entry* entry) {
    const auto found = std::find_if(job.readings.begin(), job.readings.end(),
                                    [&](const Reading& one) { return one.entry == entry; });
    return entry == nullptr || found == job.readings.end() ? nullptr : &*found;
}

std::vector<const Reading*> bonding_readings(const Job& job, const method::Method& method) {
    std::vector<const Reading*> found;
    for (const Part& part : job.parts) {
        const method::Stage* stage = method.stage(part.stage);
        if (stage == nullptr || stage->products.empty()) continue;
        for (const PartEvent& event : part.events) {
            if (event.event != Event::begin && event.event != Event::resume) continue;
            const Reading* air = air_at(job, event.entry->when);
            if (air != nullptr && std::find(found.begin(), found.end(), air) == found.end())
                found.push_back(air);
        }
    }
    std::sort(found.begin(), found.end(),
              [](const Reading* a, const Reading* b) { return entry::comes_before(*a->entry, *b->entry); });
    return found;
}

std::vector<const Reading*> heights_at(const Job& job, const Edge& edge) {
    std::vector<const Reading*> found;
    for (const Reading* chase : job.all("chase"))
        if (job.roof.edge(chase->place.a + chase->place.b) == &edge && chase->number("height_mm"))
            found.push_back(chase);
    return found;
}

std::vector<const Finding*> findings_on(const Judgement& judgement, const Reading& reading) {
    std::vector<const Finding*> found;
    for (const auto* list : {&judgement.findings, &judgement.departures})
        for (const Finding& finding : *list)
            if (is_about(finding, reading)) found.push_back(&finding);
    return found;
}

std::string firm_said(const Job& job, std::string_view field) {
    return firm_said(*job.entries, job.as_of, field);
}

std::string firm_said(const EntryList& entries, const entry::Time& as_of, std::string_view field) {
    std::string said;
    for (const entry::Entry& entry : entries)
        if (entry.kind == "firm" && entry.when.unix_s <= as_of.unix_s && entry.data.find(field) != nullptr)
            said = entry.field_text(field);
    return said;
}

std::string agreed_by(const Part& part) {
    for (auto event = part.events.rbegin(); event != part.events.rend(); ++event)
        if (event->event == Event::leave_out) return event->entry->field_text("agreed_by");
    return part.agreed_by;
}

Worded why_worded(const Job& job, const method::Method& method, const Part& part, const std::string& why) {
    for (const Part& cause : job.parts)
        if (Worded reopened = opened_again(cause.name); reopened.text == why) return reopened;
    for (const method::Doubt& doubt : method.doubts())
        if (doubt.says == why) return {why};
    const Edge* edge = job.roof.edge(part.what);
    if (edge == nullptr || part.state != State::not_needed) return typed(why);
    Worded no_chase = no_chase_at(edge->abutment);
    return no_chase.text == why ? no_chase : typed(why);
}

std::optional<Fall> fall_of(const Job& job, const method::Method& method, Surface surface) {
    Fall fall{run_on(job, surface), {}};
    std::vector<trade::Level> levels;
    for (const LevelPoint& point : fall.points) levels.push_back({point.at.x_m, point.at.y_m, point.z_mm});
    auto worked = trade::falls(levels, {method.limit("fall_base_m"), method.limit("fall_line_deg")});
    if (!worked) return std::nullopt;
    fall.falls = *std::move(worked);
    return fall;
}

std::vector<NotLooked> not_looked(const Job& job, const method::Method& method,
                                  const method::Catalogue& kinds) {
    std::vector<NotLooked> found;
    for (const method::LookedFor& row : method.looked_for()) {
        const method::Kind* kind = kinds.find(row.kind);
        if (kind == nullptr || !is_on_roof(job.roof, row.of)) continue;
        const auto readings = job.all(row.kind);
        if (readings.empty()) found.push_back({kind, nullptr, ""});
        for (const Reading* reading : readings)
            for (const entry::Member& member : *reading->data.map())
                if (reading->not_looked(member.key)) found.push_back({kind, reading, member.key});
    }
    return found;
}

} // namespace undersheet::job
