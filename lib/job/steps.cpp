// When a step of a part is done, and which coat of adhesive is open.
#include "job/replay.h"

#include <algorithm>
#include <array>

namespace undersheet::job {
namespace {

using entry::Entry;
using entry::Value;
using method::Stage;
using method::Step;

bool is_answer(const Value& value) {
    const std::string* text = value.text();
    return text == nullptr || (*text != "not_looked" && *text != "cant_reach");
}

bool came_after(const Part& part, const Step& step, const Tick& tick) {
    if (step.after.empty()) return true;
    const Tick* before = part.last_tick(step.after);
    return before != nullptr &&
           (before->entry == tick.entry || entry::comes_before(*before->entry, *tick.entry));
}

} // namespace

void note_recorded(Recorded& recorded, const Entry& entry, const Value& data) {
    constexpr std::array kNamesOnly{"label", "run", "setting", "tin",
                                    "step"}; // these alone are no look at anything
    bool any = false;
    for (const auto& member : *data.map()) {
        if (!is_answer(member.value)) continue;
        any = any || std::find(kNamesOnly.begin(), kNamesOnly.end(), member.key) == kNamesOnly.end();
        recorded[entry.kind + "." + member.key] = &entry;
    }
    if (any) recorded[entry.kind] = &entry;
}

Recorded recorded_of(const Job& job) {
    Recorded recorded;
    for (const Reading& reading : job.readings) note_recorded(recorded, *reading.entry, reading.data);
    return recorded;
}

const Entry* step_entry(const Part& part, const Step& step, const Recorded& recorded) {
    if (const Tick* tick = part.last_tick(step.name))
        return came_after(part, step, *tick) ? tick->entry : nullptr;
    if (step.by_record.empty()) return nullptr;
    const auto found =
        recorded.find(step.by_field.empty() ? step.by_record : step.by_record + "." + step.by_field);
    if (found == recorded.end()) return nullptr;
    const bool since = part.redo_from == nullptr || entry::comes_before(*part.redo_from, *found->second);
    return since ? found->second : nullptr;
}

bool step_done(const Part& part, const Step& step, const Recorded& recorded) {
    return step_entry(part, step, recorded) != nullptr;
}

// What was sent back is looked at again: a step is ticked, decided or recorded anew.
bool is_worked_on_since(const Part& part, const Stage& stage, const Recorded& recorded) {
    if (part.sent_back == nullptr) return true;
    return std::any_of(stage.steps.begin(), stage.steps.end(), [&](const Step& step) {
        const Entry* done_by = step_entry(part, step, recorded);
        return done_by != nullptr && entry::comes_before(*part.sent_back, *done_by);
    });
}

bool steps_complete(const Part& part, const Stage& stage, const Recorded& recorded) {
    if (!is_worked_on_since(part, stage, recorded)) return false;
    return std::all_of(stage.steps.begin(), stage.steps.end(),
                       [&](const Step& step) { return !step.must || step_done(part, step, recorded); });
}

const Tick* open_coat(const Part& part, const Stage& stage) {
    const Tick* coat = nullptr;
    for (const Tick& tick : part.ticks) {
        const Step* step = stage.step(tick.step);
        if (tick.struck || step == nullptr) continue;
        if (step->opens_adhesive) coat = &tick;
        if (step->closes_adhesive) coat = nullptr;
    }
    return coat;
}

} // namespace undersheet::job
