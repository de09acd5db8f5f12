#include "job/replay.h"

#include "base/text.h"

#include <algorithm>
#include <array>

namespace undersheet::job {
namespace {

using entry::Entry;
using entry::Value;
using method::Effect;
using method::Method;
using method::Stage;
using method::Step;
using method::Which;

constexpr std::string_view kStepNotDone = "step@"; // a decision on "step@band/AB:smooth" stands for the tick

bool is_answer(const Value& value) {
    const std::string* text = value.text();
    return text == nullptr || (*text != "not_looked" && *text != "cant_reach");
}

class Replayer {
public:
    Replayer(Job& job, const Counted& counted, const Method& method)
        : job_(job), counted_(counted), method_(method) {}

    void run() {
        for (const Entry* entry : counted_.standing) {
            if (job_.handed_over != nullptr) break;
            take(*entry);
        }
    }

private:
    void take(const Entry& entry) {
        const Value data = corrected_data(entry, counted_);
        note_recorded(recorded_, entry, data);
        if (entry.kind == "work")
            tick(entry, data);
        else if (entry.kind == "use")
            use(entry, data);
        else if (entry.kind == "decide")
            decide(entry, data);
        else if (const auto event = event_of(entry.kind); event && !entry.part.empty())
            act(entry, data, *event);
        apply_doubts(entry, data);
        finish_parts(entry);
    }

    Part* find_part(const std::string& name) {
        const auto found = std::find_if(job_.parts.begin(), job_.parts.end(),
                                        [&](const Part& part) { return part.name == name; });
        return found == job_.parts.end() ? nullptr : &*found;
    }

    // Structural move only; false (and a problem noted) when the part's state has no such event.
    bool move(Part& part, Event event, const Entry& entry) {
        const Move made = transition(part.state, event, Facts::all(true));
        if (!made.to) {
            job_.problems.push_back(std::string(event_word(event)) + " of " + part.name +
                                    " was written while it was " + std::string(state_text(part.state)) +
                                    " (entry " + entry::short_name(entry.hash) + ")");
            return false;
        }
        part.events.push_back({event, &entry, part.state, *made.to});
        part.state = *made.to;
        return true;
    }

    void act(const Entry& entry, const Value& data, Event event) {
        Part* part = find_part(entry.part);
        if (part == nullptr) {
            job_.problems.push_back("there is no part " + entry.part + " (entry " +
                                    entry::short_name(entry.hash) + ")");
            return;
        }
        if (event == Event::tick) return tick(entry, data);
        if (!move(*part, event, entry)) return;
        switch (event) {
        case Event::begin:
            begin(*part, entry, data);
            break;
        case Event::pause:
            part->pauses.push_back({.from = &entry, .rain = data.is_yes("rain")});
            break;
        case Event::resume:
            resume(*part, entry, data);
            break;
        case Event::sign:
            sign(*part, entry);
            break;
        case Event::confirm:
            confirm(*part, entry);
            break;
        case Event::reopen:
            reopen(*part, entry, data);
            break;
        case Event::leave_out:
            part->left_out_why = data.text_of("why");
            part->agreed_by = data.text_of("agreed_by");
            break;
        default:
            break;
        }
    }

    void add_tins(Part& part, const Value& data) {
        std::vector<std::string> labels = split(data.text_of("tin"), ',');
        for (const auto& item : data.list_of("tin")) {
            if (item.text() != nullptr) labels.push_back(*item.text());
        }
        for (const auto& label : labels) {
            const bool known = std::find(part.tins.begin(), part.tins.end(), label) != part.tins.end();
            if (!label.empty() && !known) part.tins.push_back(label);
        }
    }

    void begin(Part& part, const Entry& entry, const Value& data) {
        part.begun_by = entry.author;
        part.reading = last_air(entry);
        add_tins(part, data);
    }

    const Entry* last_air(const Entry& until) const {
        const Entry* last = nullptr;
        for (const Entry* other : counted_.standing) {
            if (other == &until) break;
            if (other->kind == "air") last = other;
        }
        return last;
    }

    void tick(const Entry& entry, const Value& data) {
        Part* part = find_part(entry.part);
        const std::string name = data.text_of("step");
        const Stage* stage = part == nullptr ? nullptr : method_.stage(part->stage);
        const Step* step = stage == nullptr ? nullptr : stage->step(name);
        if (step == nullptr) {
            job_.problems.push_back("there is no step '" + name + "' of " + entry.part + " (entry " +
                                    entry::short_name(entry.hash) + ")");
            return;
        }
        if (!move(*part, Event::tick, entry)) return;
        for (const auto& again : step->restarts) strike_ticks(*part, again);
        if (!step->restarts.empty()) strike_ticks(*part, step->name);
        part->ticks.push_back({.step = name, .entry = &entry, .data = data});
        add_tins(*part, data);
    }

    static void strike_ticks(Part& part, const std::string& step) {
        for (Tick& tick : part.ticks) {
            if (tick.step == step) tick.struck = true;
        }
    }

    static void strike_all_ticks(Part& part) {
        for (Tick& tick : part.ticks) tick.struck = true;
    }

    void use(const Entry& entry, const Value& data) {
        Part* part = find_part(entry.part);
        if (part != nullptr && !data.is_yes("ended")) add_tins(*part, data);
    }

    void decide(const Entry& entry, const Value& data) {
        const std::string finding = data.text_of("finding");
        if (!finding.starts_with(kStepNotDone)) return;
        const auto pieces = split(std::string_view(finding).substr(kStepNotDone.size()), ':');
        Part* part = find_part(pieces.front());
        if (part == nullptr || pieces.size() != 2) return;
        part->ticks.push_back({.step = pieces[1], .entry = &entry, .data = data});
    }

    void resume(Part& part, const Entry& entry, const Value& data) {
        add_tins(part, data);
        if (const Entry* air = last_air(entry)) part.reading = air;
        if (part.pauses.empty()) return;
        Pause& pause = part.pauses.back();
        pause.to = &entry;
        const Stage* stage = method_.stage(part.stage);
        const Tick* coat = open_coat(part, *stage);
        if (coat == nullptr) return;
        const double open_min = entry::minutes_between(pause.from->when, entry.when);
        if (!pause.rain && open_min <= method_.limit("coat_exposed_min")) return;
        pause.spoilt_coat = true;
        const Step* step = stage->step(coat->step);
        for (const auto& again : step->restarts) strike_ticks(part, again);
        strike_ticks(part, step->name);
    }

    void sign(Part& part, const Entry& entry) {
        SignOff signature{.entry = &entry, .by = entry.author};
        signature.own_check = part.stage == "final" && last_signer() == entry.author;
        part.signatures.push_back(signature);
        const Stage* stage = method_.stage(part.stage);
        if (stage->per != "job") return;
        job_.handed_over = &entry;
        for (Part& other : job_.parts) {
            if (other.state != State::not_needed && other.state != State::left_out)
                other.state = State::closed;
        }
    }

    // Who signed last before this: the final look wants another pair of eyes.
    std::string last_signer() const {
        const Entry* last = nullptr;
        for (const Part& part : job_.parts) {
            for (const SignOff& signature : part.signatures) {
                if (signature.struck) continue;
                if (last == nullptr || entry::comes_before(*last, *signature.entry)) last = signature.entry;
            }
        }
        return last == nullptr ? std::string() : last->author;
    }

    static void confirm(Part& part, const Entry& entry) {
        part.doubts.clear();
        part.doubt_parts.clear();
        if (!part.signatures.empty()) part.signatures.back().confirmed.push_back(&entry);
    }

    static void strike_signature(Part& part, const std::string& why) {
        if (part.signatures.empty()) return;
        part.signatures.back().struck = true;
        part.signatures.back().struck_why = why;
    }

    bool is_bonded() const {
        return std::any_of(job_.parts.begin(), job_.parts.end(), [&](const Part& part) {
            const Stage* stage = method_.stage(part.stage);
            return stage->bonds && part.has_begun();
        });
    }

    void reopen(Part& part, const Entry& entry, const Value& data) {
        const bool bonded = is_bonded();
        strike_signature(part, data.text_of("why"));
        strike_all_ticks(part);
        part.redo_from = &entry;
        part.doubts.clear();
        part.doubt_parts.clear();
        const bool whole = entry.place.form == entry::PlaceForm::nowhere;
        const Footprint place =
            whole ? footprint_of_part(job_.roof, part.name) : footprint_of_place(job_.roof, entry.place);
        for (const auto& row : method_.reopenings()) {
            if (row.reopened != part.stage) continue;
            if ((row.when == "bare" && bonded) || (row.when == "bonded" && !bonded)) continue;
            for (Part& later : job_.parts) {
                if (later.stage == row.later && is_affected(row.which, part, later, place))
                    affect(later, part, row.effect, entry);
            }
        }
    }

    bool is_affected(Which which, const Part& part, const Part& later, const Footprint& place) const {
        if (which == Which::same) return later.what == part.what;
        if (which == Which::touching) return touch(place, footprint_of_part(job_.roof, later.name));
        return true;
    }

    void affect(Part& later, const Part& cause, Effect effect, const Entry& entry) {
        const std::string why = part_words(cause.name) + " was opened again";
        const bool standing = later.state == State::signed_off || later.state == State::in_doubt;
        const bool in_work =
            later.state == State::under_way || later.state == State::done || later.state == State::paused;
        if (effect == Effect::doubt) {
            if (standing) put_in_doubt(later, why, cause.name, entry);
            return;
        }
        if (!standing && !in_work) return;
        strike_signature(later, why);
        strike_all_ticks(later);
        later.redo_from = &entry;
        later.events.push_back({Event::reopen, &entry, later.state, State::opened_again});
        later.state = State::opened_again;
        later.note = why;
    }

    void put_in_doubt(Part& part, const std::string& why, const std::string& cause, const Entry& entry) {
        if (part.state == State::signed_off) move(part, Event::doubt, entry);
        part.doubts.push_back(why);
        if (!cause.empty()) part.doubt_parts.push_back(cause);
    }

    bool has_begun(const std::string& stage) const {
        return std::any_of(job_.parts.begin(), job_.parts.end(),
                           [&](const Part& part) { return part.stage == stage && part.has_begun(); });
    }

    void apply_doubts(const Entry& entry, const Value& data) {
        for (const auto& row : method_.doubts()) {
            if (row.kind != entry.kind) continue;
            if (row.only_if && !says(data, *row.only_if)) continue;
            if (!row.unless_begun.empty() && has_begun(row.unless_begun)) continue;
            for (Part& part : job_.parts) {
                const bool standing = part.state == State::signed_off || part.state == State::in_doubt;
                if (part.stage == row.stage && standing) put_in_doubt(part, row.says, "", entry);
            }
        }
    }

    bool says(const Value& data, const method::Condition& condition) const {
        if (condition.test == method::Test::over) {
            const Value* value = data.find(condition.field);
            return value != nullptr && value->number() != nullptr &&
                   value->number()->value() > method_.limit(condition.limit);
        }
        const std::string word = data.text_of(condition.field);
        return std::find(condition.words.begin(), condition.words.end(), word) != condition.words.end();
    }

    // "Done" is not typed by anybody: it is what a part is once its last must-do step is there.
    void finish_parts(const Entry& entry) {
        for (Part& part : job_.parts) {
            if (part.state != State::under_way) continue;
            if (steps_complete(part, *method_.stage(part.stage), recorded_)) move(part, Event::finish, entry);
        }
    }

    Job& job_;
    const Counted& counted_;
    const Method& method_;
    Recorded recorded_;
};

bool came_after(const Part& part, const Step& step, const Tick& tick) {
    if (step.after.empty()) return true;
    const Tick* before = part.last_tick(step.after);
    return before != nullptr &&
           (before->entry == tick.entry || entry::comes_before(*before->entry, *tick.entry));
}

} // namespace

void replay(Job& job, const Counted& counted, const Method& method) { Replayer(job, counted, method).run(); }

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

bool steps_complete(const Part& part, const Stage& stage, const Recorded& recorded) {
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
