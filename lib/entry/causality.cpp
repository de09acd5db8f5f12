#include "entry/causality.h"

#include <algorithm>
#include <cstring>

namespace undersheet::entry {

std::size_t Causality::Hasher::operator()(const Hash& hash) const {
    std::size_t first = 0; // a SHA-256 is as good a hash as any
    std::memcpy(&first, hash.data(), sizeof first);
    return first;
}

Causality::Causality(const std::vector<Entry>& entries) {
    index_.reserve(entries.size());
    for (std::size_t i = 0; i < entries.size(); ++i) index_.emplace(entries[i].hash, i);
    parents_.resize(entries.size());
    known_.resize(entries.size());
    is_followed_.resize(entries.size());
    at_.reserve(entries.size());
    for (std::size_t i = 0; i < entries.size(); ++i) place(entries, i);
}

std::optional<std::size_t> Causality::find(const Hash& hash) const {
    const auto at = index_.find(hash);
    return at == index_.end() ? std::nullopt : std::optional<std::size_t>(at->second);
}

// Only what stands earlier in the order: whatever else is named cannot have been known.
std::vector<std::size_t> Causality::named(const Entry& entry) const {
    std::vector<std::size_t> named;
    const auto add = [&](const Hash& hash) {
        const auto at = find(hash);
        if (at && *at < at_.size()) named.push_back(*at);
    };
    if (entry.prev) add(*entry.prev);
    for (const Hash& head : entry.seen) add(head);
    return named;
}

// A second entry behind the same one begins a run of its own.
Causality::At Causality::stand_behind(std::optional<std::size_t> before) {
    if (!before || is_followed_[*before]) return {runs_++, 1};
    is_followed_[*before] = true;
    return {at_[*before].run, at_[*before].count + 1};
}

void Causality::place(const std::vector<Entry>& entries, std::size_t entry) {
    const std::vector<std::size_t> before = named(entries[entry]);
    auto& known = known_[entry];
    for (const std::size_t other : before) {
        known.resize(std::max(known.size(), known_[other].size()));
        for (std::size_t run = 0; run < known_[other].size(); ++run)
            known[run] = std::max(known[run], known_[other][run]);
    }
    const Entry& made = entries[entry];
    at_.push_back(stand_behind(made.prev && !before.empty() && entries[before.front()].hash == *made.prev
                                   ? std::optional<std::size_t>(before.front())
                                   : std::nullopt));
    known.resize(std::max(known.size(), at_.back().run + 1));
    known[at_.back().run] = at_.back().count;
    keep_parents(entry, before);
}

void Causality::keep_parents(std::size_t entry, const std::vector<std::size_t>& named) {
    for (const std::size_t one : named) {
        const bool is_past_of_other = std::any_of(
            named.begin(), named.end(), [&](std::size_t other) { return other != one && knew(other, one); });
        if (!is_past_of_other) parents_[entry].push_back(one);
    }
    auto& kept = parents_[entry];
    std::sort(kept.begin(), kept.end());
    kept.erase(std::unique(kept.begin(), kept.end()), kept.end());
}

bool Causality::knew(std::size_t later, std::size_t earlier) const {
    const At& at = at_[earlier];
    return at.run < known_[later].size() && known_[later][at.run] >= at.count;
}

std::vector<std::size_t> Causality::tips() const {
    std::vector<bool> is_past(at_.size());
    for (const auto& before : parents_) {
        for (const std::size_t parent : before) is_past[parent] = true;
    }
    std::vector<std::size_t> tips;
    for (std::size_t i = 0; i < is_past.size(); ++i) {
        if (!is_past[i]) tips.push_back(i);
    }
    return tips;
}

} // namespace undersheet::entry
