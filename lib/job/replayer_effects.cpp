// What an entry does to other parts than its own: opening again, doubts, and being done.
#include "job/replayer.h"

#include "job/doubts.h"

#include <algorithm>

namespace undersheet::job {
namespace {

using entry::Entry;
using entry::Value;
using method::Effect;
using method::Which;

void strike_all_ticks(Part& part) {
    for (Tick& tick : part.ticks) tick.struck = true;
}

bool is_standing(const Part& part) {
    return part.state == State::signed_off || part.state == State::in_doubt;
}

bool is_in_work(const Part& part) {
    return part.state == State::under_way || part.state == State::done || part.state == State::paused;
}

} // namespace

void Replayer::strike_signature(Part& part, const std::string& why) {
    if (part.signatures.empty()) return;
    part.signatures.back().struck = true;
    part.signatures.back().struck_why = why;
}

bool Replayer::is_bonded() const {
    return std::any_of(view_->parts.begin(), view_->parts.end(), [&](const Part& part) {
        return method_.stage(part.stage)->bonds && part.has_begun();
    });
}

void Replayer::reopen(Part& part, const Entry& entry, const Value& data) {
    const bool bonded = is_bonded();
    strike_signature(part, data.text_of("why"));
    strike_all_ticks(part);
    part.redo_from = &entry;
    part.doubts.clear();
    part.doubt_parts.clear();
    reopen_later(part, entry, bonded, [](const Part&) { return true; });
}

void Replayer::reopen_later(const Part& part, const Entry& entry, bool bonded, const Eligible& eligible) {
    const bool whole = entry.place.form == entry::PlaceForm::nowhere;
    const Footprint place =
        whole ? footprint_of_part(roof_, part.name) : footprint_of_place(roof_, entry.place);
    for (const auto& row : method_.reopenings()) {
        if (row.reopened != part.stage) continue;
        if ((row.when == "bare" && bonded) || (row.when == "bonded" && !bonded)) continue;
        for (Part& later : view_->parts) {
            if (&later == &part) continue;
            if (later.stage == row.later && is_affected(row.which, part, later, place) && eligible(later))
                affect(later, part, row.effect, entry);
        }
    }
}

bool Replayer::is_affected(Which which, const Part& part, const Part& later, const Footprint& place) const {
    if (which == Which::same) return later.what == part.what;
    if (which == Which::touching) return touch(place, footprint_of_part(roof_, later.name));
    return true;
}

void Replayer::affect(Part& later, const Part& cause, Effect effect, const Entry& entry) {
    const std::string why = opened_again(cause.name).text;
    if (effect == Effect::doubt) {
        if (is_standing(later)) put_in_doubt(later, why, cause.name, entry);
        return;
    }
    if (!is_standing(later) && !is_in_work(later)) return;
    strike_signature(later, why);
    strike_all_ticks(later);
    later.redo_from = &entry;
    later.stand({Event::reopen, &entry, later.state, State::opened_again});
    later.note = why;
}

void Replayer::put_in_doubt(Part& part, const std::string& why, const std::string& cause,
                            const Entry& entry) {
    if (part.state == State::signed_off) part.stand({Event::doubt, &entry, part.state, State::in_doubt});
    part.doubts.push_back(why);
    if (!cause.empty()) part.doubt_parts.push_back(cause);
}

void Replayer::apply_doubts(const Entry& entry, const Value& data, const Eligible& eligible) {
    for (const auto& row : method_.doubts()) {
        if (!casts_doubt(row, entry.kind, data, method_, view_->parts)) continue;
        for (Part& part : view_->parts) {
            if (part.stage == row.stage && is_standing(part) && eligible(part))
                put_in_doubt(part, row.says, "", entry);
        }
    }
}

void Replayer::finish_parts(View& view, const Entry& entry) {
    view_ = &view;
    for (Part& part : view.parts) {
        if (part.state != State::under_way || part.is_contested()) continue;
        if (steps_complete(part, *method_.stage(part.stage), view.recorded)) move(part, Event::finish, entry);
    }
}

// What an entry does to parts that are not its own.
void Replayer::reach_others(const Entry& entry, const Eligible& eligible) {
    apply_doubts(entry, corrected_data(entry, counted_.corrections), eligible);
    const Part* opened = entry.kind == "reopen" ? find_part(entry.part) : nullptr;
    if (opened != nullptr) reopen_later(*opened, entry, is_bonded(), eligible);
}

// The side that holds goes on as if the other device's entries had come after it.
void Replayer::doubt_what_was_missed(Part& part, const Entry& kept, const Entry& settled) {
    const Eligible only_this = [&](const Part& other) { return &other == &part; };
    for (const Entry* entry : counted_.standing) {
        const bool was_missed = told_.knew(settled, *entry) && told_.apart(*entry, kept);
        if (!was_missed) continue;
        reach_others(*entry, only_this);
    }
}

// A part is met by an entry that nobody who moved it last knew of, nor knew of them.
void Replayer::catch_up(View& view, const std::vector<const Entry*>& known) {
    view_ = &view;
    if (view.handed_over != nullptr) return;
    for (const Entry* entry : known) {
        const Eligible missed_it = [&](const Part& part) {
            bool apart = false;
            for (const Tip& tip : part.tips) {
                if (told_.knew(*tip.entry, *entry)) return false;
                apart = apart || !told_.knew(*entry, *tip.entry);
            }
            return apart && !part.is_contested();
        };
        reach_others(*entry, missed_it);
    }
}

} // namespace undersheet::job
