#include "job/guards.h"

#include "base/text.h"
#include "job/settle.h"

#include <algorithm>

namespace undersheet::job {
namespace {

using method::Hold;
using method::Moment;
using method::Reach;
using method::Severity;
using method::Which;

constexpr std::size_t kShortestLeaveOutReason = 10;
constexpr std::size_t kShortestReason = 3;

bool must_come_first(const Scene& scene, const method::Need& need, const Part& other) {
    if (need.which == Which::same) return other.what == scene.part.what;
    if (need.which == Which::touching) {
        return touch(footprint_of_part(scene.job.roof, other.name),
                     footprint_of_part(scene.job.roof, scene.part.name));
    }
    return true;
}

// Field section 2 waits for section 1: the parts of a stage stand in laying order.
const Part* part_before(const Scene& scene) {
    const Part* before = nullptr;
    for (const Part& part : scene.job.parts) {
        if (part.name == scene.part.name) return before;
        if (part.stage == scene.part.stage) before = &part;
    }
    return nullptr;
}

Held not_signed(const Part& part) {
    const bool is_to_come = part.state == State::waiting || part.state == State::under_way ||
                            part.state == State::paused || part.state == State::done;
    return {.why = part_words(part.name) + " " +
                   (is_to_come ? std::string("not signed") : std::string(state_text(part.state))),
            .clears = part.state == State::in_doubt ? "confirm or reopen " + part.name : "sign " + part.name};
}

bool reaches(const Scene& scene, const Finding& finding, const Hold& hold) {
    if (hold.reach == Reach::all) return true;
    if (hold.reach == Reach::part && !finding.part.empty()) return finding.part == scene.part.name;
    const auto place = entry::parse_place(finding.place.empty() ? finding.label : finding.place);
    if (!finding.part.empty()) {
        return touch(footprint_of_part(scene.job.roof, finding.part),
                     footprint_of_part(scene.job.roof, scene.part.name));
    }
    if (!place || place->form == entry::PlaceForm::nowhere) return true; // nobody said where: careful
    if (hold.within.empty())
        return touch(footprint_of_place(scene.job.roof, *place),
                     footprint_of_part(scene.job.roof, scene.part.name));
    const auto metres = metres_to_part(scene.job.roof, *place, scene.part.name);
    return !metres || *metres <= scene.method.limit(hold.within);
}

bool holds(const Scene& scene, const Finding& finding, Moment moment) {
    if (finding.severity == Severity::note && (finding.near || finding.reason != nullptr)) return false;
    return std::any_of(finding.holds.begin(), finding.holds.end(), [&](const Hold& hold) {
        const bool this_stage =
            hold.stage.empty() ? scene.stage.per != "job" : hold.stage == scene.stage.name;
        return this_stage && hold.moment == moment && reaches(scene, finding, hold);
    });
}

HeldList reason_holds(const Scene& scene) {
    const std::size_t least =
        scene.wish.event == Event::leave_out ? kShortestLeaveOutReason : kShortestReason;
    if (character_count(trimmed(scene.wish.data.text_of("why"))) >= least) return {};
    return {{.why = "no reason given",
             .clears = "say why, in at least " + std::to_string(least) + " letters (--why)"}};
}

HeldList agreed_holds(const Scene& scene) {
    if (!trimmed(scene.wish.data.text_of("agreed_by")).empty()) return {};
    return {{.why = "nobody named who agreed", .clears = "name who agreed (agreed_by=)"}};
}

HeldList on_job_holds(const Scene& scene) {
    if (scene.wish.by.empty()) return {};
    const Person* person = scene.job.person(scene.wish.by);
    if (person == nullptr)
        return {{.why = "this person is not on the job", .clears = "add them (people add)"}};
    const auto ends = entry::parse_date(person->ends);
    if (!ends || !(*ends < entry::date_of(scene.wish.when))) return {};
    return {{.why = person->name + " left on " + entry::date_words(*ends),
             .clears = "somebody who is on the job signs"}};
}

HeldList leave_out_holds(const Scene& scene) {
    if (scene.stage.may_leave_out) return {};
    return {{.why = scene.stage.title + " is never left out", .clears = "do it, and sign it"}};
}

// Taking a part back into the work while a later one is signed on top would sign over something unsigned.
HeldList on_top_holds(const Scene& scene) {
    HeldList held;
    for (const auto& need : scene.method.needs()) {
        if (need.needs != scene.part.stage) continue;
        for (const Part& later : scene.job.parts) {
            if (later.stage != need.stage || later.state != State::signed_off) continue;
            const bool on_top =
                need.which == Which::all ||
                (need.which == Which::same ? later.what == scene.part.what
                                           : touch(footprint_of_part(scene.job.roof, later.name),
                                                   footprint_of_part(scene.job.roof, scene.part.name)));
            if (on_top)
                held.push_back({.why = part_words(later.name) + " is signed on top",
                                .clears = "reopen " + later.name + " first"});
        }
    }
    return held;
}

Held to_settle(const SettleItem& item) {
    return {.why = settle_words(item) + ": it is not settled which holds",
            .clears = "settle " + item.id + " --keep ENTRY --why \"…\""};
}

HeldList settle_holds(const Scene& scene) {
    HeldList held;
    for (const SettleItem& item : scene.job.to_settle) {
        if (item.holds && !item.part.empty() && item.part == scene.part.name) held.push_back(to_settle(item));
    }
    return held;
}

HeldList cause_holds(const Scene& scene) {
    HeldList held;
    for (const auto& cause : scene.part.doubt_parts) {
        const Part* part = scene.job.part(cause);
        if (part != nullptr && !is_out_of_the_way(part->state)) held.push_back(not_signed(*part));
    }
    for (auto& line : sign_holds(scene)) held.push_back(std::move(line));
    return held;
}

} // namespace

bool has_guard(const std::vector<std::string>& guards, std::string_view name) {
    return std::find(guards.begin(), guards.end(), name) != guards.end();
}

bool is_out_of_the_way(State state) {
    return state == State::signed_off || state == State::left_out || state == State::not_needed ||
           state == State::closed;
}

HeldList earlier_parts(const Scene& scene) {
    HeldList held;
    for (const auto& need : scene.method.needs()) {
        if (need.stage != scene.stage.name) continue;
        if (need.which == Which::previous) {
            const Part* before = part_before(scene);
            if (before != nullptr && !is_out_of_the_way(before->state)) held.push_back(not_signed(*before));
            continue;
        }
        for (const Part& other : scene.job.parts) {
            if (other.stage != need.needs || is_out_of_the_way(other.state)) continue;
            if (must_come_first(scene, need, other)) held.push_back(not_signed(other));
        }
    }
    return held;
}

HeldList held_by_findings(const Scene& scene, Moment moment) {
    HeldList held;
    for (const Finding& finding : scene.findings) {
        if (!holds(scene, finding, moment)) continue;
        Held line{.why = finding.says,
                  .clears = finding.clears,
                  .decidable = finding.decidable,
                  .finding = finding.id};
        if (finding.decidable && line.clears.find("decision") == std::string::npos)
            line.clears += ", or a named decision";
        if (finding.severity == Severity::note) line.clears = "reason " + finding.id + " \"…\"";
        held.push_back(std::move(line));
    }
    return held;
}

HeldList nothing_to_settle(const Scene& scene) {
    HeldList held;
    for (const SettleItem& item : scene.job.to_settle) {
        if (item.holds) held.push_back(to_settle(item));
    }
    return held;
}

HeldList missing_steps(const Scene& scene) {
    HeldList held;
    for (const auto& step : scene.stage.steps) {
        if (!step.must || step_done(scene.part, step, scene.recorded)) continue;
        const std::string how =
            step.by_record.empty()
                ? "tick " + scene.part.name + " " + step.name
                : "record " + step.by_record + (step.by_field.empty() ? "" : " " + step.by_field + "=…");
        held.push_back({.why = "not done yet: " + step.says,
                        .clears = how,
                        .decidable = step.decidable,
                        .finding = "step@" + scene.part.name + ":" + step.name});
    }
    return held;
}

HeldList holds_for(const Scene& scene, Guard guard) {
    switch (guard) {
    case Guard::earlier_signed:
        return earlier_parts(scene);
    case Guard::no_stop: {
        HeldList held = held_by_findings(scene, Moment::start);
        for (auto& line : start_evidence(scene)) held.push_back(std::move(line));
        return held;
    }
    case Guard::safety:
        return safety_holds(scene);
    case Guard::reading:
        return reading_holds(scene);
    case Guard::tin:
        return tin_holds(scene);
    case Guard::side_by_side:
        return beside_holds(scene);
    case Guard::reason:
        return reason_holds(scene);
    case Guard::agreed:
        return agreed_holds(scene);
    case Guard::may_leave_out:
        return leave_out_holds(scene);
    case Guard::nothing_on_top:
        return on_top_holds(scene);
    case Guard::step_order:
        return step_holds(scene);
    case Guard::steps_complete:
        return missing_steps(scene);
    case Guard::sign_clear:
        return sign_holds(scene);
    case Guard::on_job:
        return on_job_holds(scene);
    case Guard::cause_settled:
        return cause_holds(scene);
    case Guard::settled:
        return settle_holds(scene);
    }
    return {};
}

Facts facts_of(const Scene& scene, const std::vector<Guard>& guards) {
    Facts facts = Facts::all(true);
    for (const Guard guard : guards) facts.set(guard, holds_for(scene, guard).empty());
    return facts;
}

} // namespace undersheet::job
