#include "paper/completion.h"

#include "base/text.h"
#include "paper/care.h"
#include "paper/completion_details.h"
#include "paper/finding_items.h"
#include "paper/guarantee.h"
#include "paper/look.h"
#include "paper/receipt.h"
#include "paper/reminders.h"

#include <algorithm>

namespace undersheet::paper {

namespace {

using job::Part;
using job::State;

const entry::Entry* signed_entry(const job::Job& job, std::string_view part) {
    const Part* found = job.part(part);
    return found == nullptr || found->signature() == nullptr ? nullptr : found->signature()->entry;
}

bool is_from_paper(const job::Job& job) {
    return job.opened != nullptr && job.opened->data.is_yes("from_paper");
}

// The days on which the sheet was bonded down: from the first field section signed to the last.
std::string covered_on(const Making& making) {
    const entry::Entry *first = nullptr, *last = nullptr;
    for (const Part& part : making.job.parts) {
        if (part.stage != "field" || part.signature() == nullptr) continue;
        const entry::Entry* entry = part.signature()->entry;
        if (first == nullptr || entry->when.unix_s < first->when.unix_s) first = entry;
        if (last == nullptr || entry->when.unix_s > last->when.unix_s) last = entry;
    }
    if (first == nullptr) return {};
    const std::string from = making.words.date(entry::date_of(first->when));
    const std::string to = making.words.date(entry::date_of(last->when));
    return from == to ? making.say("completion.on", {{"day", from}})
                      : making.say("completion.between", {{"from", from}, {"to", to}});
}

// The address on one line, as a sentence wants it.
std::string address(const Making& making) {
    std::vector<std::string> lines;
    for (const std::string& line : split(making.paper.head.customer_address, '\n'))
        if (!trimmed(line).empty()) lines.emplace_back(trimmed(line));
    return lines.empty() ? making.say("completion.no_address") : joined(lines, ", ");
}

std::vector<job::PunchRow> still_open(const Making& making) {
    std::vector<job::PunchRow> rows = making.punch;
    std::erase_if(rows, [](const job::PunchRow& row) { return row.severity == method::Severity::note; });
    return rows;
}

// Parts of the work that are neither signed, left out nor not needed; the hand-over itself is not work on the roof.
std::vector<std::string> unfinished_parts(const Making& making) {
    std::vector<std::string> names;
    for (const Part& part : making.job.parts) {
        const bool settled = part.state == State::signed_off || part.state == State::left_out ||
                             part.state == State::not_needed || part.state == State::closed;
        if (!settled && part.stage != "hand-over") names.push_back(making.said.part(part.name));
    }
    return names;
}

void add_open(Making& making, const std::vector<job::PunchRow>& rows, const std::vector<std::string>& parts) {
    if (rows.empty() && parts.empty()) return;
    making.heading("section.still_open");
    Listing listing;
    for (const job::PunchRow& row : rows) listing.points.emplace_back(making.said.again(row.says_as));
    if (!parts.empty())
        listing.points.emplace_back(making.say("completion.parts", {{"parts", making.words.listed(parts)}}));
    making.paper.add(std::move(listing));
}

std::string verdict_key(const Making& making, const std::string& covered, bool anything_open) {
    if (is_from_paper(making.job)) return "completion.from_paper";
    if (covered.empty()) return "completion.not_covered";
    if (signed_entry(making.job, "final") == nullptr) return "completion.not_finished";
    return anything_open ? "completion.open" : "completion.finished";
}

void add_verdict(Making& making) {
    const auto rows = still_open(making);
    const auto parts = is_from_paper(making.job) ? std::vector<std::string>() : unfinished_parts(making);
    const std::string covered = covered_on(making);
    const std::string key = verdict_key(making, covered, !rows.empty() || !parts.empty());
    const std::string finished =
        making.job.opened == nullptr ? "" : making.job.opened->data.text_of("finished");
    const auto day = entry::parse_date(finished);
    making.paper.add(Verdict{making.say(key, {{"address", address(making)},
                                              {"covered", covered},
                                              {"firm", making.paper.head.firm},
                                              {"finished", day ? making.words.date(*day) : finished}})});
    add_open(making, rows, parts);
}

// What a tick of the hand-over or of laying says, else what the sheet's own record says.
std::string ticked(const Making& making, std::string_view stage, std::string_view field) {
    for (const Part& part : making.job.parts) {
        if (part.stage != stage) continue;
        for (auto tick = part.ticks.rbegin(); tick != part.ticks.rend(); ++tick) {
            if (tick->struck || tick->data.find(field) == nullptr) continue;
            const job::Reading as_read{
                .entry = tick->entry, .stands_on = {tick->entry}, .kind = "work", .data = tick->data};
            return making.said.value(as_read, field);
        }
    }
    return {};
}

void add_what_it_is(Making& making) {
    making.heading("section.what_it_is");
    const job::Reading* sheet = making.job.latest("sheet");
    const auto said = [&](const char* field) {
        return sheet == nullptr ? std::string() : making.said.value(*sheet, field);
    };
    const auto as_laid = [&](const char* field) {
        const std::string laid = ticked(making, "final", field);
        return laid.empty() ? said(field) : laid;
    };
    std::vector<Fact> facts;
    if (making.job.roof.outline)
        making.fact(facts, "completion.area",
                    making.say("m2", {{"n", making.words.number(making.job.roof.outline->area_m2, 1)}}));
    const std::string material = said("material_text");
    making.fact(facts, "completion.covering",
                material.empty() ? making.say("completion.one_sheet") : material);
    making.fact(facts, "completion.thickness", as_laid("thickness_mm"));
    making.fact(facts, "completion.colour", as_laid("colour"));
    making.facts(std::move(facts));
}

void add_guarantee(Making& making) {
    making.heading("section.guarantee");
    making.facts(guarantee_facts(making));
}

// Decisions the customer took, and what the record says somebody was told.
void add_decided(Making& making) {
    making.heading("section.decided");
    Listing listing;
    for (const job::Finding& finding : making.judgement.departures)
        if (lower_ascii(finding.decided->role) == "customer")
            listing.points.emplace_back(making.say(
                "decided.customer", {{"says", plain_says(making, finding)}, {"why", finding.decided->why}}));
    for (const job::Answer& told : making.job.told) {
        const job::Finding* finding = making.judgement.finding(told.finding);
        if (finding != nullptr)
            listing.points.emplace_back(making.say("decided.told", {{"says", plain_says(making, *finding)},
                                                                    {"who", told.text},
                                                                    {"when", making.when(told.entry)}}));
    }
    if (listing.points.empty()) return making.sentence("decided.nothing");
    making.paper.add(std::move(listing));
}

void add_own_signature(Making& making, std::string_view part_name, std::string_view meaning_key) {
    const Part* part = making.job.part(part_name);
    const job::SignOff* signature = part == nullptr ? nullptr : part->signature();
    if (signature == nullptr) {
        making.paper.add(Signature{making.say(meaning_key), "", "", "", making.say("signature.not_yet")});
        return;
    }
    making.paper.add(Signature{making.say(meaning_key), making.job.person_name(signature->by),
                               making.paper.head.firm, making.when(signature->entry),
                               making.signed_how(*signature)});
}

void add_customer_signature(Making& making) {
    const entry::Entry* signed_at = signed_entry(making.job, "hand-over");
    Signature customer{making.say("completion.received"), "", making.say("completion.customer"), "", ""};
    if (signed_at == nullptr)
        customer.note = making.say("signature.not_yet");
    else
        fill_customer(making, *signed_at, customer);
    making.paper.add(std::move(customer));
}

void add_signatures(Making& making) {
    making.heading("section.signatures");
    add_own_signature(making, "final", "completion.looked_over");
    if (signed_entry(making.job, "hand-over") != nullptr)
        add_own_signature(making, "hand-over", "completion.handed_over");
    add_customer_signature(making);
}

} // namespace

Document completion(const job::Job& job, const job::Judgement& judgement, const Setting& setting) {
    Making making(job, judgement, setting, "completion.name");
    add_verdict(making);
    add_what_it_is(making);
    add_guarantee(making);
    add_care_lines(making);
    add_since_then(making);
    add_decided(making);
    add_signatures(making);
    making.paper.add(PageBreak{});
    add_details(making);
    add_receipt(making, signed_entry(job, "hand-over"));
    making.paper.reminders = reminders_of(making);
    return std::move(making.paper);
}

} // namespace undersheet::paper
