#include "job/clashes.h"

#include "entry/json.h"
#include "job/settle.h"

#include <algorithm>

namespace undersheet::job {

using entry::Entry;
using entry::Value;

std::vector<const Entry*> Sides::stand(const Entry* entry, const Value& says, const Told& told) {
    std::vector<const Entry*> gone;
    std::vector<const Entry*> left = {};
    std::vector<Value> left_says = {};
    for (std::size_t i = 0; i < entries_.size(); ++i) {
        if (told.knew(*entry, *entries_[i])) {
            gone.push_back(entries_[i]);
            continue;
        }
        left.push_back(entries_[i]);
        left_says.push_back(std::move(says_[i]));
    }
    entries_ = std::move(left);
    says_ = std::move(left_says);
    entries_.push_back(entry);
    says_.push_back(says);
    return gone;
}

bool Sides::differ() const {
    return std::any_of(says_.begin(), says_.end(), [&](const Value& one) {
        return entry::write_strict(one) != entry::write_strict(says_.front());
    });
}

const Value& Sides::said_by(const Entry* entry) const {
    const auto at = std::find(entries_.begin(), entries_.end(), entry);
    return says_[static_cast<std::size_t>(at - entries_.begin())];
}

bool Settlements::apply(SettleItem& item, const Told& told) const {
    const auto found = all_.find(item.id);
    if (found == all_.end()) return false;
    std::vector<const Entry*> latest; // of which no later one knew
    for (const Entry* settling : found->second) {
        std::erase_if(latest, [&](const Entry* earlier) { return told.knew(*settling, *earlier); });
        latest.push_back(settling);
    }
    const Entry* last = latest.back();
    const std::string keep = last->data.text_of("keep");
    if (std::any_of(latest.begin(), latest.end(),
                    [&](const Entry* settling) { return settling->data.text_of("keep") != keep; }))
        return false;
    for (const SettleSide& side : item.sides) {
        if (entry::hash_text(side.entry->hash) == keep) item.kept = side.entry;
    }
    if (item.kept == nullptr) return false;
    item.settled = last;
    item.why = last->data.text_of("why");
    return true;
}

Settlements settlements_in(const std::vector<const Entry*>& visible) {
    Settlements settlements;
    for (const Entry* entry : visible) {
        if (entry->kind == "settle") settlements.note(entry);
    }
    return settlements;
}

SettleItem item_of(Apart about, const Entry& of, std::string field, const std::vector<const Entry*>& sides) {
    SettleItem item{
        .about = about, .kind = of.kind, .field = std::move(field), .place = of.place, .holds = true};
    item.part = of.part;
    for (const Entry* side : sides) item.sides.push_back({side, {}});
    item.id = settle_id(item);
    return item;
}

} // namespace undersheet::job
