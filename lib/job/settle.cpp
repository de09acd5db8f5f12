#include "job/settle.h"

#include "base/text.h"

#include <algorithm>

namespace undersheet::job {
namespace {

// Two rows in the same words about the same place.
bool is_same_row(const PunchItem& a, const PunchItem& b) {
    return lower_ascii(trimmed(a.text)) == lower_ascii(trimmed(b.text)) && a.part == b.part &&
           entry::place_text(a.place) == entry::place_text(b.place);
}

// Of those that came apart; the first side is what they did not know of.
Worded entries_worded(const SettleItem& item) {
    const std::size_t count = item.sides.size() - 1;
    return worded(count == 1 ? "{n} entry" : "{n} entries", {{"n", std::to_string(count)}});
}

// "moisture at 2.90,1.80", "moisture"
Worded what_worded(const SettleItem& item, const Worded& what) {
    if (item.place.form == entry::PlaceForm::nowhere) return what;
    return worded("{what} at {place}",
                  {{"what", what}, {"place", place_worded(entry::place_text(item.place))}});
}

Worded states_worded(const SettleItem& item) {
    Worded states = item.sides.front().says;
    for (std::size_t i = 1; i < item.sides.size(); ++i)
        states =
            worded("{states} on one device, {state}", {{"states", states}, {"state", item.sides[i].says}});
    return worded("{part}: {states} on another", {{"part", part_worded(item.part)}, {"states", states}});
}

} // namespace

std::string settle_id(const SettleItem& item) {
    constexpr std::size_t kDigits = 8;
    std::vector<std::string> names;
    // What a lost device wrote grows while it is found again: the report alone names the item.
    const bool is_report = item.about == Apart::after_revocation;
    for (const SettleSide& side : item.sides) {
        names.push_back(entry::hash_text(side.entry->hash));
        if (is_report) break;
    }
    std::sort(names.begin(), names.end());
    const std::string whole = item.part + "|" + item.kind + "|" + item.field + "|" + joined(names, "|");
    return "M" + entry::hash_text(entry::sha256(whole)).substr(0, kDigits);
}

Worded settle_worded(const SettleItem& item) {
    const std::string count = std::to_string(item.sides.size());
    const Worded what = what_worded(item, choice_worded("read", item.kind));
    switch (item.about) {
    case Apart::part_state:
        return states_worded(item);
    case Apart::reading:
        return worded("{what}: read differently on {n} devices", {{"what", what}, {"n", count}});
    case Apart::field:
        return worded("{what}: {field} said differently on {n} devices",
                      {{"what", what}, {"field", typed(item.field)}, {"n", count}});
    case Apart::correction:
        return worded("{what}: one entry corrected differently on {n} devices",
                      {{"what", what_worded(item, typed(item.field))}, {"n", count}});
    case Apart::after_hand_over:
        return worded("{entries} written on another device that did not know of the hand-over",
                      {{"entries", entries_worded(item)}});
    case Apart::after_revocation:
        return worded("{entries} from a device after it was reported lost, not counted",
                      {{"entries", entries_worded(item)}});
    case Apart::punch_rows:
        return worded("punch rows {one} and {other} say the same",
                      {{"one", typed(item.sides[0].says)}, {"other", typed(item.sides[1].says)}});
    }
    return {};
}

std::string settle_words(const SettleItem& item) { return settle_worded(item).text; }

Result<const SettleItem*> settle_item_meant(const Job& job, std::string_view typed) {
    constexpr std::size_t kShortest = 3;
    const std::string wanted = lower_ascii(typed);
    const SettleItem* found = nullptr;
    for (const SettleItem& item : job.to_settle) {
        if (wanted.size() < kShortest || !lower_ascii(item.id).starts_with(wanted)) continue;
        if (found != nullptr)
            return Fault{Code::no_such_finding,
                         "'" + std::string(typed) + "' begins more than one item",
                         {},
                         "write more of its name"};
        found = &item;
    }
    if (found != nullptr) return found;
    return Fault{Code::no_such_finding,
                 "there is nothing to settle under '" + std::string(typed) + "'",
                 {},
                 "undersheet settle lists what is open"};
}

void offer_same_punch_rows(Job& job) {
    for (std::size_t i = 0; i < job.punch.size(); ++i) {
        for (std::size_t k = i + 1; k < job.punch.size(); ++k) {
            const PunchItem& a = job.punch[i];
            const PunchItem& b = job.punch[k];
            const bool both_shown = !a.joined_away && !b.joined_away;
            if (!both_shown || a.raised->device == b.raised->device || !is_same_row(a, b)) continue;
            SettleItem item{
                .about = Apart::punch_rows, .part = a.part, .kind = "punch_add", .place = a.place};
            item.sides = {{a.raised, a.name}, {b.raised, b.name}};
            item.id = settle_id(item);
            job.to_settle.push_back(std::move(item));
        }
    }
}

} // namespace undersheet::job
