// What two devices said apart about one thing: a reading, a field, a correction.
//
// Promises: the latest word of each device that did not know of the other's; who knew of both and spoke again, ends it.
// Does not: choose. A settling entry names the side that holds.
#pragma once

#include "job/told.h"

namespace undersheet::job {

// The words that stand beside each other about one thing.
class Sides {
public:
    // Those the new entry's writer knew of no longer stand.
    std::vector<const entry::Entry*> stand(const entry::Entry* entry, const entry::Value& says,
                                           const Told& told);
    [[nodiscard]] bool differ() const;
    [[nodiscard]] const std::vector<const entry::Entry*>& entries() const { return entries_; }
    [[nodiscard]] const entry::Value& said_by(const entry::Entry* entry) const;

private:
    std::vector<const entry::Entry*> entries_ = {};
    std::vector<entry::Value> says_ = {};
};

// What people have settled, by the name of the item.
class Settlements {
public:
    void note(const entry::Entry* settling) { all_[settling->data.text_of("item")].push_back(settling); }
    // Fills in what was settled; false while it is open, or when two people settled it apart and not alike.
    bool apply(SettleItem& item, const Told& told) const;

private:
    std::map<std::string, std::vector<const entry::Entry*>> all_ = {};
};

[[nodiscard]] Settlements settlements_in(const std::vector<const entry::Entry*>& visible);

[[nodiscard]] SettleItem item_of(Apart about, const entry::Entry& of, std::string field,
                                 const std::vector<const entry::Entry*>& sides);

} // namespace undersheet::job
