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
std::string entries_words(const SettleItem& item) {
    const std::size_t count = item.sides.size() - 1;
    return std::to_string(count) + (count == 1 ? " entry" : " entries");
}

} // namespace

std::string settle_id(const SettleItem& item) {
    constexpr std::size_t kDigits = 8;
    std::vector<std::string> names;
    for (const SettleSide& side : item.sides) names.push_back(entry::hash_text(side.entry->hash));
    std::sort(names.begin(), names.end());
    const std::string whole = item.part + "|" + item.kind + "|" + item.field + "|" + joined(names, "|");
    return "M" + entry::hash_text(entry::sha256(whole)).substr(0, kDigits);
}

std::string settle_words(const SettleItem& item) {
    const std::string count = std::to_string(item.sides.size());
    const std::string at =
        item.place.form == entry::PlaceForm::nowhere ? "" : " at " + entry::place_text(item.place);
    switch (item.about) {
    case Apart::part_state: {
        std::vector<std::string> states;
        for (const SettleSide& side : item.sides) states.push_back(side.says);
        return part_words(item.part) + ": " + joined(states, " on one device, ") + " on another";
    }
    case Apart::reading:
        return item.kind + at + ": read differently on " + count + " devices";
    case Apart::field:
        return item.kind + at + ": " + item.field + " said differently on " + count + " devices";
    case Apart::correction:
        return item.field + at + ": one entry corrected differently on " + count + " devices";
    case Apart::after_hand_over:
        return entries_words(item) + " written on another device that did not know of the hand-over";
    case Apart::after_revocation:
        return entries_words(item) + " from a device after it was reported lost, not counted";
    case Apart::punch_rows:
        return "punch rows " + item.sides[0].says + " and " + item.sides[1].says + " say the same";
    }
    return {};
}

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
