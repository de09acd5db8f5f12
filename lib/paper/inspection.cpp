#include "paper/inspection.h"

#include "paper/deck_sections.h"
#include "paper/finding_items.h"
#include "paper/photographs.h"
#include "paper/plan.h"
#include "paper/round_sections.h"

#include <algorithm>
#include <array>

namespace undersheet::paper {

namespace {

using job::Finding;
using job::Reading;
using method::Severity;

std::size_t how_many(const std::vector<const Finding*>& findings, Severity severity) {
    return static_cast<std::size_t>(
        std::count_if(findings.begin(), findings.end(),
                      [&](const Finding* finding) { return finding->severity == severity; }));
}

// What has to have been read before anybody can call a deck fit.
std::vector<std::string> never_read(const Making& making) {
    constexpr std::array<std::string_view, 4> kWanted{"board", "heads", "moisture", "level"};
    std::vector<std::string> names;
    for (const std::string_view kind : kWanted)
        if (making.job.all(kind).empty()) names.push_back(making.say("inspection.of." + std::string(kind)));
    return names;
}

std::string verdict_words(const Making& making, std::size_t stops, std::size_t to_do) {
    if (stops > 0) return making.words.count("inspection.not_fit", stops);
    if (const auto names = never_read(making); !names.empty())
        return making.say("inspection.not_read", {{"names", making.words.listed(names)}});
    return to_do > 0 ? making.words.count("inspection.fit_when", to_do) : making.say("inspection.fit");
}

// A missing label or a word to building control holds only the end of the job, not the sheet.
bool holds_the_sheet(const Finding& finding) {
    return std::any_of(finding.holds.begin(), finding.holds.end(), [](const method::Hold& hold) {
        return hold.stage != "final" && hold.stage != "hand-over";
    });
}

void add_deck_verdict(Making& making) {
    const auto findings = numbered(making);
    auto holding = findings;
    std::erase_if(holding, [](const Finding* finding) { return !holds_the_sheet(*finding); });
    const std::size_t stops = how_many(findings, Severity::stop);
    const std::size_t unseen = making.judgement.not_looked.size();
    making.paper.add(Verdict{verdict_words(making, stops, how_many(holding, Severity::put_right))});
    making.sentence(
        "inspection.counts",
        {{"notes", making.words.count("count.notes", how_many(findings, Severity::note))},
         {"put_right", making.words.count("count.put_right", how_many(findings, Severity::put_right))},
         {"stops", making.words.count("count.stops", stops)}});
    if (unseen > 0) making.paper.paragraph(making.words.count("inspection.not_looked", unseen));
}

// Stops and what to put right, then under a heading of their own the notes, numbered on.
void add_findings(Making& making) {
    making.heading("section.findings");
    const auto findings = numbered(making);
    if (findings.empty() || findings.front()->severity == Severity::note) making.sentence("findings.none");
    std::size_t number = 0;
    for (const Finding* finding : findings) {
        const bool is_first_note = finding->severity == Severity::note &&
                                   how_many(findings, Severity::note) + number == findings.size();
        if (is_first_note) making.heading("section.notes");
        making.paper.add(finding_item(making, *finding, std::to_string(++number)));
    }
}

// What is read of the roof, as against what is written while the work goes on.
bool is_inspection(const Reading& reading, const method::Method& method) {
    const auto& kinds = method.looked_for();
    return reading.kind != "air" &&
           std::any_of(kinds.begin(), kinds.end(),
                       [&](const method::LookedFor& row) { return row.kind == reading.kind; });
}

const job::SignOff* deck_signature(const Making& making) {
    const job::Part* deck = making.job.part("deck");
    return deck == nullptr ? nullptr : deck->signature();
}

// The weather until the deck was signed; what came after belongs to the work.
void add_weather(const Making& making, std::vector<Fact>& facts) {
    const job::SignOff* signed_by = deck_signature(making);
    for (const Reading* air : making.job.all("air")) {
        if (signed_by != nullptr && air->when().unix_s > signed_by->entry->when.unix_s) return;
        facts.push_back({making.say("who.air"), making.when(air->entry) + ": " + making.air(*air)});
    }
}

void add_inspectors(Making& making) {
    making.heading("section.who");
    std::vector<std::string> names;
    const entry::Entry *first = nullptr, *last = nullptr;
    for (const Reading& reading : making.job.readings) {
        if (!is_inspection(reading, making.setting.method)) continue;
        const std::string name = making.person(reading.entry);
        if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
        if (first == nullptr || reading.when().unix_s < first->when.unix_s) first = reading.entry;
        if (last == nullptr || reading.when().unix_s > last->when.unix_s) last = reading.entry;
    }
    if (first == nullptr) return making.nothing();
    std::vector<Fact> facts{{making.say("who.by"), making.words.listed(names)},
                            {making.say("who.from"), making.when(first)},
                            {making.say("who.to"), making.when(last)}};
    add_weather(making, facts);
    making.facts(std::move(facts));
}

void add_signature(Making& making) {
    making.heading("section.signature");
    const job::SignOff* signed_by = deck_signature(making);
    if (signed_by == nullptr) {
        making.paper.add(
            Signature{making.say("inspection.signed"), "", "", "", making.say("signature.not_yet")});
        return;
    }
    const job::Person* person = making.job.person(signed_by->by);
    const std::string role = person == nullptr ? "" : making.said.choice("role", person->role);
    making.paper.add(Signature{making.say("inspection.signed"), making.job.person_name(signed_by->by), role,
                               making.when(signed_by->entry), making.signed_how(*signed_by)});
}

} // namespace

Document inspection(const job::Job& job, const job::Judgement& judgement, const Setting& setting) {
    Making making(job, judgement, setting, "inspection.name");
    add_deck_verdict(making);
    add_findings(making);
    const Photos photos = making.job.all("photo");
    add_plan(making, with_photographs(making, photos, plan_of_findings(making)));
    add_inspectors(making);
    add_passing(making, "air");
    add_safety(making);
    add_structure(making);
    add_boards(making);
    add_fixings(making);
    add_joints(making);
    add_moisture(making);
    add_levels(making);
    add_outline(making);
    add_walls(making);
    add_gutters(making);
    add_openings(making);
    add_sheet(making);
    add_tins(making);
    add_not_looked(making);
    making.heading("section.decisions");
    add_departures(making);
    add_photographs(making, photos, "photographs.none");
    add_signature(making);
    return std::move(making.paper);
}

} // namespace undersheet::paper
