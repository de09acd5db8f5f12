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
    rule.pct_per_k_above = -method.limit("moisture_per_k_pct");
    rule.reference_c = method.limit("moisture_reference_c");
    return rule;
}

bool stands_on(const Finding& finding, const Reading& reading) {
    return std::any_of(finding.entries.begin(), finding.entries.end(), [&](const entry::Entry* entry) {
        return std::find(reading.stands_on.begin(), reading.stands_on.end(), entry) != reading.stands_on.end() ||
               entry == reading.entry;
    });
}

// A bonding part is begun and resumed under the latest air reading of that moment.
const Reading* air_at(const Job& job, const entry::Time& when) {
    const Reading* latest = nullptr;
    for (const Reading* air : job.all("air"))
        if (air->when().unix_s <= when.unix_s && (latest == nullptr || latest->when().unix_s <= air->when().unix_s))
            latest = air;
    return latest;
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
    const auto worked = trade::moisture({.reading_pct = *raw_pct, .board_c = reading.number("board_c")}, wood_rule(method),
                                        {method.limit("meter_least_pct"), method.limit("meter_most_pct")});
    return worked ? std::optional(*worked) : std::nullopt;
}

const Reading* reading_of(const Job& job, const entry::Entry* entry) {
    const auto found =
        std::find_if(job.readings.begin(), job.readings.end(), [&](const Reading& one) { return one.entry == entry; });
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
            if (air != nullptr && std::find(found.begin(), found.end(), air) == found.end()) found.push_back(air);
        }
    }
    std::sort(found.begin(), found.end(),
              [](const Reading* a, const Reading* b) { return entry::comes_before(*a->entry, *b->entry); });
    return found;
}

std::vector<const Reading*> heights_at(const Job& job, const Edge& edge) {
    std::vector<const Reading*> found;
    for (const Reading* chase : job.all("chase"))
        if (job.roof.edge(chase->place.a + chase->place.b) == &edge && chase->number("height_mm")) found.push_back(chase);
    return found;
}

std::vector<const Finding*> findings_on(const Judgement& judgement, const Reading& reading) {
    std::vector<const Finding*> found;
    for (const auto* list : {&judgement.findings, &judgement.departures})
        for (const Finding& finding : *list)
            if (stands_on(finding, reading)) found.push_back(&finding);
    return found;
}

} // namespace undersheet::job
