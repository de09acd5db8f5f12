#include "desk/desk.h"
#include "desk/session.h"
#include "desk/words.h"
#include "job/punch.h"

namespace undersheet::desk {
namespace {

std::string when_of(const entry::Entry* entry) { return entry == nullptr ? std::string() : entry->when.text; }

std::string who_of(const job::Job& job, const entry::Entry* entry) {
    return entry == nullptr ? std::string() : job.person_name(entry->author);
}

PunchLine line_of(const job::Job& job, const job::PunchRow& row) {
    PunchLine line;
    line.number = row.number;
    line.severity = method::severity_word(row.severity);
    line.severity_text = method::severity_text(row.severity);
    line.place = row.place;
    line.part = row.part;
    line.says = row.says;
    line.clears = row.clears;
    line.open = row.open;
    line.holds = row.holds;
    line.also_raised_as = row.also_raised_as;
    line.raised_by = who_of(job, row.raised);
    line.raised_at = when_of(row.raised);
    line.cleared_by = who_of(job, row.cleared);
    line.cleared_at = when_of(row.cleared);
    line.looked_by = who_of(job, row.second_look);
    line.looked_at = when_of(row.second_look);
    if (row.decided != nullptr)
        line.let_go = row.decided->decider + ", " + row.decided->role + ": " + row.decided->why;
    return line;
}

Punch told(Case& on, const std::vector<job::PunchRow>& rows) {
    Punch punch = {on.name(), on.moment.as_of.text, {}};
    for (const auto& row : rows) punch.rows.push_back(line_of(on.job, row));
    return punch;
}

} // namespace

Result<Punch> Desk::punch(const Asked& asked) {
    auto on = take_up(*session_, asked);
    if (!on) return on.fault();
    return told(*on, job::punch_now(on->job, on->judged()));
}

Result<Punch> Desk::punch_ever(const Asked& asked) {
    auto on = take_up(*session_, asked);
    if (!on) return on.fault();
    return told(*on, job::punch_list(on->job, on->judged(), *on->method, *on->kinds));
}

} // namespace undersheet::desk
