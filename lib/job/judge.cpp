#include "job/judge.h"

#include "base/text.h"
#include "job/guards.h"
#include "job/not_looked.h"
#include "job/rules.h"
#include "job/weather.h"

#include <algorithm>

namespace undersheet::job {
namespace {

using method::Severity;

// A decision or answer counts for a finding only while the finding stands on the entries it was given for: a new, worse
// reading asks again.
bool stands_on_same(const std::vector<std::string>& given_for, const Finding& finding) {
    return std::all_of(finding.entries.begin(), finding.entries.end(), [&](const entry::Entry* entry) {
        return given_for.empty() || std::find(given_for.begin(), given_for.end(),
                                              entry::hash_text(entry->hash)) != given_for.end();
    });
}

template <class Rows>
auto* latest_for(const Rows& rows, const Finding& finding) {
    const typename Rows::value_type* found = nullptr;
    for (const auto& row : rows) {
        if (row.finding == finding.id && stands_on_same(row.stands_on, finding)) found = &row;
    }
    return found;
}

void attach_answers(const Job& job, Finding& finding) {
    finding.decided = finding.decidable ? latest_for(job.decisions, finding) : nullptr;
    finding.reason = latest_for(job.reasons, finding);
    finding.told = latest_for(job.told, finding);
    if (finding.by_reason && finding.reason != nullptr) finding.severity = Severity::note;
}

void sort_worst_first(std::vector<Finding>& findings) {
    std::stable_sort(findings.begin(), findings.end(), [](const Finding& a, const Finding& b) {
        if (a.severity != b.severity) return a.severity > b.severity;
        return !a.near && b.near;
    });
}

// What holds the next move of a part in this state; the event that move is.
std::optional<Event> next_event(State state) {
    switch (state) {
    case State::waiting:
    case State::opened_again:
        return Event::begin;
    case State::paused:
        return Event::resume;
    case State::under_way:
        return Event::finish;
    case State::done:
        return Event::sign;
    case State::in_doubt:
        return Event::confirm;
    default:
        return std::nullopt;
    }
}

// Guards that depend on what is typed with the event are asked when it is typed.
bool depends_on_typing(Guard guard) {
    return guard == Guard::reason || guard == Guard::agreed || guard == Guard::step_order ||
           guard == Guard::tin || guard == Guard::on_job;
}

HeldList holds_of(const Scene& scene, Event event, bool typed) {
    HeldList held;
    for (const Guard guard : guards_of(scene.part.state, event)) {
        if (!typed && depends_on_typing(guard)) continue;
        for (auto& line : holds_for(scene, guard)) held.push_back(std::move(line));
    }
    return held;
}

bool is_typed_by_people(Event event) {
    return event != Event::finish && event != Event::doubt && event != Event::close;
}

PartView view_of(const Context& context, const Judgement& judgement, const Part& part) {
    const method::Stage& stage = *context.method.stage(part.stage);
    PartView view{.part = part.name,
                  .stage = part.stage,
                  .title = part_words(part.name),
                  .state = part.state,
                  .may = {},
                  .steps = {},
                  .held_by = {}};
    for (const auto& step : stage.steps) {
        const entry::Entry* by = step_entry(part, step, context.recorded);
        view.steps.push_back(
            {.name = step.name, .says = step.says, .must = step.must, .done = by != nullptr, .entry = by});
    }
    for (const Event event : events_from(part.state)) {
        const Wish wish{.part = part.name, .event = event, .by = {}, .when = context.job.as_of, .data = {}};
        const Scene scene{context.job, context.method, judgement.findings, context.recorded, part, stage,
                          wish};
        const HeldList held = holds_of(scene, event, false);
        if (held.empty() && is_typed_by_people(event)) view.may.push_back(event);
        if (event == next_event(part.state)) view.held_by = held;
    }
    if (part.state == State::waiting && view.held_by.empty()) view.state = State::ready;
    return view;
}

// A step that somebody decided to leave undone is a departure as long as the part stands on that decision.
void add_steps_let_go(const Job& job, const method::Method& method, Judgement& judgement) {
    for (const Decision& decision : job.decisions) {
        if (judgement.finding(decision.finding) != nullptr) continue; // said twice
        for (const Part& part : job.parts) {
            const auto tick = std::find_if(part.ticks.begin(), part.ticks.end(),
                                           [&](const Tick& done) { return done.entry == decision.entry; });
            if (tick == part.ticks.end()) continue;
            const method::Step* step = method.stage(part.stage)->step(tick->step);
            Finding undone{.id = decision.finding, .rule = "step", .severity = Severity::put_right};
            undone.part = part.name;
            undone.says =
                part_words(part.name) + ": not done: " + (step == nullptr ? tick->step : step->says);
            undone.decidable = true;
            undone.decided = &decision;
            judgement.departures.push_back(std::move(undone));
        }
    }
}

Judgement findings_in(const Context& context) {
    Judgement judgement;
    for (Finding& finding : all_findings(context)) {
        attach_answers(context.job, finding);
        (finding.decided != nullptr ? judgement.departures : judgement.findings)
            .push_back(std::move(finding));
    }
    add_steps_let_go(context.job, context.method, judgement);
    sort_worst_first(judgement.findings);
    return judgement;
}

} // namespace

int Judgement::count(Severity severity) const {
    return static_cast<int>(std::count_if(findings.begin(), findings.end(),
                                          [&](const Finding& f) { return f.severity == severity; }));
}

const Finding* Judgement::finding(std::string_view id) const {
    for (const auto* list : {&findings, &departures}) {
        const auto found =
            std::find_if(list->begin(), list->end(), [&](const Finding& f) { return f.id == id; });
        if (found != list->end()) return &*found;
    }
    return nullptr;
}

const PartView* Judgement::part(std::string_view name) const {
    const auto found =
        std::find_if(parts.begin(), parts.end(), [&](const PartView& view) { return view.part == name; });
    return found == parts.end() ? nullptr : &*found;
}

Judgement judge_findings(const Job& job, const method::Method& method, const method::Catalogue& kinds) {
    return findings_in(make_context(job, method, kinds));
}

Judgement judge(const Job& job, const method::Method& method, const method::Catalogue& kinds) {
    const Context context = make_context(job, method, kinds);
    Judgement judgement = findings_in(context);
    for (const Part& part : job.parts) judgement.parts.push_back(view_of(context, judgement, part));
    judgement.not_looked = not_looked_list(context);
    judgement.bond_now = bond_now(job, judgement, method);
    return judgement;
}

// What leads to the move that the part's state does not know.
std::string way_on(const Scene& scene) {
    const Part& part = scene.part;
    if (part.state == State::closed) return "handed over: only a numbered supplement can say more";
    if (part.state == State::waiting || part.state == State::opened_again)
        return "begin " + part.name + " first";
    if (part.state == State::paused) return "resume " + part.name + " first";
    if (part.state != State::under_way) return "see stages for what may be done";
    std::vector<std::string> left;
    for (const auto& step : scene.stage.steps)
        if (step.must && !step_done(part, step, scene.recorded)) left.push_back(step.name);
    if (!left.empty()) return "still to do: " + joined(left, ", ");
    return is_worked_on_since(part, scene.stage, scene.recorded)
               ? "see stages for what may be done"
               : "it was sent back: tick what was done again";
}

Refusal refusal_of(const Job& job, const Judgement& judgement, const method::Method& method,
                   const Wish& wish) {
    const Part* part = job.part(wish.part);
    if (part == nullptr)
        return {.exists = false,
                .held_by = {{.why = "this roof has no part " + wish.part, .clears = "see stages"}}};
    const Recorded recorded = recorded_of(job);
    const Scene scene{job, method, judgement.findings, recorded, *part, *method.stage(part->stage), wish};
    const Move move =
        transition(part->state, wish.event, facts_of(scene, guards_of(part->state, wish.event)));
    if (!move.exists) {
        return {.exists = false,
                .held_by = {{.why = part_words(part->name) + " is " + std::string(state_text(part->state)),
                             .clears = way_on(scene)}}};
    }
    Refusal refusal;
    for (const Guard guard : move.failed) {
        for (auto& line : holds_for(scene, guard)) refusal.held_by.push_back(std::move(line));
    }
    return refusal;
}

} // namespace undersheet::job
