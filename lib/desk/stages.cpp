#include "desk/desk.h"
#include "desk/session.h"
#include "desk/words.h"

namespace undersheet::desk {
namespace {

std::string decided_words(const job::Job& job, const job::Decision* decision) {
    if (decision == nullptr) return "";
    return decision->decider + ", " + decision->role + ": " + decision->why + " (written by " +
           by_words(job, decision->entry) + ")";
}

std::string answer_words(const job::Job& job, const job::Answer* answer) {
    return answer == nullptr ? std::string() : answer->text + " (" + by_words(job, answer->entry) + ")";
}

FindingLine line_of(const job::Job& job, const job::Finding& finding) {
    FindingLine line;
    line.id = finding.id;
    line.rule = finding.rule;
    line.severity = method::severity_word(finding.severity);
    line.severity_text = method::severity_text(finding.severity);
    line.place = finding.place;
    line.part = finding.part;
    line.says = finding.says;
    line.value = finding.value;
    line.limit = finding.limit;
    line.source = finding.source;
    line.mark = finding.mark;
    line.clears = finding.clears;
    line.near = finding.near;
    line.decidable = finding.decidable;
    line.decided = decided_words(job, finding.decided);
    line.reason = answer_words(job, finding.reason);
    line.told = answer_words(job, finding.told);
    for (const auto* entry : finding.entries) line.entries.push_back(entry::hash_text(entry->hash));
    return line;
}

// A part that only waits for its turn is told apart from one that something is missing for.
Held held_line(const job::Job& job, const job::Held& held) {
    constexpr std::string_view kSign = "sign ";
    Held line = {held.why, held.clears, held.finding, held.decidable, {}};
    if (held.clears.starts_with(kSign) && job.part(held.clears.substr(kSign.size())) != nullptr) {
        line.after = held.clears.substr(kSign.size());
    }
    return line;
}

PartLine line_of(const Case& on, const job::PartView& view) {
    PartLine line;
    line.part = view.part;
    line.stage = view.stage;
    line.title = view.title;
    line.state = job::state_word(view.state);
    line.state_text = job::state_text(view.state);
    for (const auto event : view.may) line.may.emplace_back(job::event_word(event));
    for (const auto& step : view.steps) {
        const std::string entry = step.entry == nullptr ? "" : entry::hash_text(step.entry->hash);
        line.steps.push_back({step.name, step.says, entry, step.must, step.done});
    }
    for (const auto& held : view.held_by) line.held_by.push_back(held_line(on.job, held));
    const job::Part* part = on.job.part(view.part);
    if (part == nullptr) return line;
    line.note = part->note;
    if (const auto* signature = part->signature()) {
        line.signed_by = on.job.person_name(signature->by);
        line.signed_at = signature->entry->when.text;
    }
    return line;
}

} // namespace

Result<Findings> Desk::findings(const Asked& asked) {
    auto on = take_up(*session_, asked);
    if (!on) return on.fault();
    Findings findings;
    findings.job = on->name();
    findings.as_of = on->moment.as_of.text;
    for (const auto& finding : on->judged().findings) findings.open.push_back(line_of(on->job, finding));
    for (const auto& finding : on->judged().departures) findings.let_go.push_back(line_of(on->job, finding));
    findings.not_looked = on->judged().not_looked;
    return findings;
}

Result<Stages> Desk::stages(const Asked& asked) {
    auto on = take_up(*session_, asked);
    if (!on) return on.fault();
    Stages stages;
    stages.job = on->name();
    stages.as_of = on->moment.as_of.text;
    if (on->judged().bond_now) stages.bond_now = on->judged().bond_now->line;
    for (const auto& view : on->judged().parts) stages.parts.push_back(line_of(*on, view));
    return stages;
}

} // namespace undersheet::desk
