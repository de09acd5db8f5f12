#include "job/replayer.h"

#include "base/text.h"
#include "job/settle.h"

#include <algorithm>

namespace undersheet::job {
namespace {

using entry::Entry;
using entry::Value;
using method::Stage;
using method::Step;

constexpr std::string_view kStepNotDone = "step@"; // a decision on "step@band/AB:smooth" stands for the tick

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

void strike_ticks(Part& part, const std::string& step) {
    for (Tick& tick : part.ticks) {
        if (tick.step == step) tick.struck = true;
    }
}

void confirm(Part& part, const Entry& entry) {
    part.doubts.clear();
    part.doubt_parts.clear();
    if (!part.signatures.empty()) part.signatures.back().confirmed.push_back(&entry);
}

} // namespace

void Replayer::take(View& view, const Entry& entry) {
    if (view.handed_over != nullptr) return;
    view_ = &view;
    const Value data = corrected_data(entry, counted_.corrections);
    note_recorded(view.recorded, entry, data);
    if (entry.kind == "work")
        tick(entry, data);
    else if (entry.kind == "use")
        use(entry, data);
    else if (entry.kind == "decide")
        decide(entry, data);
    else if (entry.kind == "settle")
        settle(entry, data);
    else if (const auto event = event_of(entry.kind); event && !entry.part.empty())
        act(entry, data, *event);
    apply_doubts(entry, data, [](const Part&) { return true; });
    finish_parts(view, entry);
}

Part* Replayer::find_part(const std::string& name) {
    const auto found = std::find_if(view_->parts.begin(), view_->parts.end(),
                                    [&](const Part& part) { return part.name == name; });
    return found == view_->parts.end() ? nullptr : &*found;
}

void Replayer::note_problem(const Entry& entry, const std::string& says) {
    view_->problems.push_back({&entry, says + " (entry " + entry::short_name(entry.hash) + ")"});
}

// Structural move only; false (and a problem noted) when the part's state has no such event.
bool Replayer::move(Part& part, Event event, const Entry& entry) {
    if (part.is_contested()) {
        note_problem(entry, std::string(event_word(event)) + " of " + part.name +
                                " was written before it was settled what two devices said of it");
        return false;
    }
    const Move made = transition(part.state, event, Facts::all(true));
    if (!made.to) {
        note_problem(entry, std::string(event_word(event)) + " of " + part.name +
                                " was written while it was " + std::string(state_text(part.state)));
        return false;
    }
    part.stand({event, &entry, part.state, *made.to});
    return true;
}

void Replayer::act(const Entry& entry, const Value& data, Event event) {
    Part* part = find_part(entry.part);
    if (part == nullptr) return note_problem(entry, "there is no part " + entry.part);
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
    case Event::send_back:
        part->sent_back = &entry;
        break;
    case Event::leave_out:
        part->left_out_why = data.text_of("why");
        part->agreed_by = data.text_of("agreed_by");
        break;
    default:
        break;
    }
}

void Replayer::begin(Part& part, const Entry& entry, const Value& data) {
    part.begun_by = entry.author;
    part.reading = last_air(entry);
    add_tins(part, data);
}

const Entry* Replayer::last_air(const Entry& until) const {
    const Entry* last = nullptr;
    for (const Entry* other : counted_.standing) {
        if (other == &until) break;
        if (other->kind == "air" && told_.knew(until, *other)) last = other;
    }
    return last;
}

void Replayer::tick(const Entry& entry, const Value& data) {
    Part* part = find_part(entry.part);
    const std::string name = data.text_of("step");
    const Stage* stage = part == nullptr ? nullptr : method_.stage(part->stage);
    const Step* step = stage == nullptr ? nullptr : stage->step(name);
    if (step == nullptr) return note_problem(entry, "there is no step '" + name + "' of " + entry.part);
    if (!move(*part, Event::tick, entry)) return;
    for (const auto& again : step->restarts) strike_ticks(*part, again);
    if (!step->restarts.empty()) strike_ticks(*part, step->name);
    part->ticks.push_back({.step = name, .entry = &entry, .data = data});
    add_tins(*part, data);
}

void Replayer::use(const Entry& entry, const Value& data) {
    Part* part = find_part(entry.part);
    if (part != nullptr && !data.is_yes("ended")) add_tins(*part, data);
}

void Replayer::decide(const Entry& entry, const Value& data) {
    const std::string finding = data.text_of("finding");
    if (!finding.starts_with(kStepNotDone)) return;
    const auto pieces = split(std::string_view(finding).substr(kStepNotDone.size()), ':');
    Part* part = find_part(pieces.front());
    if (part == nullptr || pieces.size() != 2) return;
    part->ticks.push_back({.step = pieces[1], .entry = &entry, .data = data});
}

void Replayer::resume(Part& part, const Entry& entry, const Value& data) {
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

void Replayer::sign(Part& part, const Entry& entry) {
    SignOff signature{.entry = &entry, .by = entry.author};
    signature.own_check = part.stage == "final" && last_signer() == entry.author;
    part.signatures.push_back(signature);
    const Stage* stage = method_.stage(part.stage);
    if (stage->per != "job") return;
    if (view_->goes_on) {
        part.state = State::closed; // the rest may be opened again, what was handed over was
        return;
    }
    view_->handed_over = &entry;
    for (Part& other : view_->parts) {
        if (other.is_called_for()) other.state = State::closed;
    }
}

// Who signed last before this: the final look wants another pair of eyes.
std::string Replayer::last_signer() const {
    const Entry* last = nullptr;
    for (const Part& part : view_->parts) {
        for (const SignOff& signature : part.signatures) {
            if (signature.struck) continue;
            if (last == nullptr || entry::comes_before(*last, *signature.entry)) last = signature.entry;
        }
    }
    return last == nullptr ? std::string() : last->author;
}

void Replayer::settle(const Entry& entry, const Value& data) {
    for (Part& part : view_->parts) {
        if (!part.is_contested()) continue;
        SettleItem item = settle_item(part);
        if (item.id == data.text_of("item")) return keep_side(part, std::move(item), entry, data);
    }
}

// The part goes on from the side that holds; a signature that side did not know of no longer stands.
void Replayer::keep_side(Part& part, SettleItem item, const Entry& settled, const Value& data) {
    const std::string kept = data.text_of("keep");
    for (const Tip& tip : part.tips) {
        if (entry::hash_text(tip.entry->hash) != kept) continue;
        for (SignOff& signature : part.signatures) {
            if (signature.struck || told_.knew(*tip.entry, *signature.entry)) continue;
            signature.struck = true;
            signature.struck_why = data.text_of("why");
        }
        item.kept = tip.entry;
        item.settled = &settled;
        item.why = data.text_of("why");
        view_->settled.push_back(std::move(item));
        const Entry& side = *tip.entry;
        part.stand({Event::settle, &settled, part.state, tip.state});
        return doubt_what_was_missed(part, side, settled);
    }
    note_problem(settled, "settle of " + part.name + " names none of the sides");
}

} // namespace undersheet::job
