#include "paper/next_look.h"

#include "paper/reminders.h"

#include <algorithm>

namespace undersheet::paper {
namespace {

constexpr std::string_view kYearly = "yearly";

bool belongs(const job::Reading& look, const job::Supplement& visit) {
    return look.entry->supplement == visit.opened->hash;
}

// What one visit says of the next look: the day it names, or a year on from a yearly look.
std::optional<NextLook> after(const job::Job& job, const job::Supplement& visit) {
    const job::Reading* last = nullptr;
    std::optional<entry::Date> named;
    bool is_yearly = visit.why == kYearly;
    for (const job::Reading* look : job.all("look")) {
        if (!belongs(*look, visit)) continue;
        last = look;
        is_yearly = is_yearly || look->word("why") == kYearly;
        if (const auto day = entry::parse_date(look->word("next_due"))) named = *day;
    }
    if (last == nullptr || (!named && !is_yearly)) return std::nullopt;
    const entry::Date done = entry::date_of(last->when());
    return NextLook{named.value_or(years_on(done, 1)), done, last->entry};
}

std::optional<NextLook> after_visits(const job::Job& job) {
    std::optional<NextLook> next;
    for (const job::Supplement& visit : job.supplements)
        if (!visit.is_open())
            if (const auto said = after(job, visit)) next = said;
    return next;
}

// The job of a hand-over paper holds no visit; folded within the last one signed it holds them all, corrections too.
std::optional<NextLook> after_visits(const Making& making) {
    const auto& visits = making.job.supplements;
    const auto last = std::find_if(visits.rbegin(), visits.rend(),
                                   [](const job::Supplement& visit) { return !visit.is_open(); });
    if (last == visits.rend()) return std::nullopt;
    const auto visited = job::fold(*making.job.entries, making.setting.method, making.setting.kinds,
                                   making.job.as_of, last->opened->hash);
    auto next = visited ? after_visits(*visited) : std::nullopt;
    if (!next) return std::nullopt;
    // The entry outlives this fold only in the job of the paper.
    const auto same =
        std::find_if(making.job.entries->begin(), making.job.entries->end(),
                     [&](const entry::Entry& entry) { return entry.hash == next->written->hash; });
    next->written = &*same;
    return next;
}

} // namespace

std::optional<NextLook> next_look(const Making& making) {
    if (auto next = after_visits(making)) return next;
    const auto guarantee = guarantee_of(making.job);
    if (!guarantee) return std::nullopt;
    return NextLook{guarantee->look_due(1), std::nullopt, guarantee->written};
}

// A look keeps the name of its year, so that the day a visit moved takes the place of the one a calendar has.
std::vector<Reminder> looks_to_come(const Making& making) {
    auto reminders = reminders_of(making);
    const auto guarantee = guarantee_of(making.job);
    const auto next = next_look(making);
    if (!guarantee || !next || !next->last) return reminders;
    const Reminder end = reminders.back();
    reminders.clear();
    for (entry::Date on = next->due; on < guarantee->last_day(); on = years_on(on, 1))
        reminders.push_back(day_to_come(making, "look-" + std::to_string(on.year - guarantee->from.year), on,
                                        next->written->when, "remind.look"));
    reminders.push_back(end);
    return reminders;
}

} // namespace undersheet::paper
