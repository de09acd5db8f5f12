#include "base/text.h"
#include "desk/drafts.h"

namespace undersheet::desk {
namespace {

std::string spoken(std::string_view word) { return replaced(std::string(word), "_", " "); }

// When the part's state knows no such move, the moves it does know are the answer.
Held no_such_move(const job::PartView* view, const job::Part& part, job::Event event) {
    std::vector<std::string> may;
    if (view != nullptr) {
        for (const auto possible : view->may) may.push_back(spoken(job::event_word(possible)));
    }
    const std::string state(job::state_text(part.state));
    return {part.name + " is " + state + ", so there is no '" + spoken(job::event_word(event)) + "' now",
            may.empty() ? "" : "it can be followed by " + joined(may, ", "),
            {},
            false,
            {}};
}

// A move about a time before the part's last one would be counted in another order than it happened.
bool is_out_of_order(const Case& on, const std::string& part) {
    for (const auto& entry : on.entries) {
        const bool moves =
            entry.part == part && (entry.kind == "work" || job::event_of(entry.kind).has_value());
        if (moves && entry.when.unix_s > on.moment.as_of.unix_s) return true;
    }
    return false;
}

} // namespace

Result<Drafted> draft_move(const Writing& writing, const Typed& typed, job::Event event) {
    Case& on = writing.on;
    auto drafted = checked_draft(writing, typed);
    if (!drafted) return drafted;
    const job::Part* part = on.job.part(typed.part);
    const job::Judgement& judged = on.judged();
    auto place = entry::parse_place(drafted->draft.place);
    if (!place) return place.fault();
    if (is_out_of_order(on, typed.part)) {
        drafted->held_by.push_back({part->name + " has moved since " + on.moment.as_of.text,
                                    "give a time after its last move",
                                    {},
                                    false,
                                    {}});
        return drafted;
    }
    entry::Value data = drafted->draft.data;
    for (const auto& [field, value] : drafted->draft.personal)
        data.set(field, value); // the guards see who agreed; the body does not
    const auto refusal =
        job::refusal_of(on.job, judged, *on.method,
                        {typed.part, event, writing.by.id, on.moment.when, std::move(data), *place});
    const job::PartView* view = judged.part(typed.part);
    const bool waits = !refusal.exists && view != nullptr && view->state == job::State::waiting;
    for (const auto& held : waits && !view->held_by.empty() ? view->held_by : refusal.held_by)
        drafted->held_by.push_back({held.why, held.clears, held.finding, held.decidable, {}});
    if (!refusal.exists && drafted->held_by.empty())
        drafted->held_by.push_back(no_such_move(view, *part, event));
    return drafted;
}

} // namespace undersheet::desk
