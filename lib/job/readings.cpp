#include "job/readings.h"

#include "entry/json.h"

#include <algorithm>
#include <set>

namespace undersheet::job {
namespace {

using entry::Entry;
using entry::Value;

std::string label_of(const Entry& entry, const Value& data) {
    const std::string label = data.text_of("label");
    if (!label.empty()) return label;
    return entry.place.form == entry::PlaceForm::label ? entry.place.a : std::string();
}

// Two entries with the same identity speak of the same thing: same kind, same label (or place), same key fields.
std::string identity(const method::Kind& kind, const Reading& reading) {
    std::string id =
        kind.name + "|" + (reading.label.empty() ? entry::place_text(reading.place) : reading.label);
    for (const auto& field : kind.key_fields) {
        if (field == "label") continue;
        const Value* value = reading.data.find(field);
        id += "|" + (value == nullptr ? std::string() : entry::write_strict(*value));
    }
    return id;
}

// A kind keyed by its label says nothing of which one it is when it has neither label nor place: then it stands beside.
bool can_be_told_apart(const method::Kind& kind, const Reading& reading) {
    const bool by_label =
        std::find(kind.key_fields.begin(), kind.key_fields.end(), "label") != kind.key_fields.end();
    return !by_label || !reading.label.empty() || reading.place.form != entry::PlaceForm::nowhere;
}

void overlay(Value& under, const Value& over) {
    for (const auto& member : *over.map()) under.set(member.key, member.value);
}

class Counter {
public:
    explicit Counter(const method::Catalogue& kinds) : kinds_(kinds) {}

    void gather_changes(const std::vector<const Entry*>& visible) {
        for (const Entry* entry : visible) {
            if (entry->kind == "withdraw") withdrawn_.insert(entry->data.text_of("of"));
        }
        for (const Entry* entry : visible) {
            if (entry->kind != "correct" || withdrawn_.contains(entry::hash_text(entry->hash))) continue;
            made_.corrections[entry->data.text_of("of")].push_back(entry);
        }
        for (const Entry* entry : visible) {
            const std::string replaces = entry->data.text_of("replaces");
            if (!replaces.empty()) superseded_.insert(replaces);
        }
    }

    void count(const Entry* entry) {
        const std::string name = entry::hash_text(entry->hash);
        if (withdrawn_.contains(name)) {
            made_.withdrawn.push_back(entry);
            return;
        }
        made_.standing.push_back(entry);
        const method::Kind* kind = kinds_.find(entry->kind);
        if (kind == nullptr || kind->group != method::Group::reading) return;
        Reading reading{.entry = entry,
                        .stands_on = {entry},
                        .kind = entry->kind,
                        .part = entry->part,
                        .place = entry->place};
        reading.data = corrected_data(*entry, made_);
        reading.label = label_of(*entry, reading.data);
        if (superseded_.contains(name)) {
            made_.replaced.push_back(std::move(reading));
            return;
        }
        take(*kind, std::move(reading));
    }

    Counted finish() {
        for (std::size_t i = 0; i < taken_.size(); ++i) {
            if (still_counts_[i]) made_.readings.push_back(std::move(taken_[i]));
        }
        return std::move(made_);
    }

private:
    void take(const method::Kind& kind, Reading reading) {
        if (kind.judging != method::Judging::adds && can_be_told_apart(kind, reading))
            stand_in_for_earlier(kind, reading);
        taken_.push_back(std::move(reading));
        still_counts_.push_back(true);
    }

    void stand_in_for_earlier(const method::Kind& kind, Reading& reading) {
        const auto [at, is_first] = latest_.try_emplace(identity(kind, reading), taken_.size());
        if (is_first) return;
        const Reading& earlier = taken_[at->second];
        if (kind.judging == method::Judging::fills)
            fill_from(earlier, reading);
        else
            made_.replaced.push_back(earlier);
        still_counts_[at->second] = false;
        at->second = taken_.size();
    }

    // What the earlier entries said and this one leaves open still counts.
    static void fill_from(const Reading& earlier, Reading& reading) {
        Value merged = earlier.data;
        overlay(merged, reading.data);
        reading.data = std::move(merged);
        reading.stands_on.insert(reading.stands_on.begin(), earlier.stands_on.begin(),
                                 earlier.stands_on.end());
        if (reading.place.form == entry::PlaceForm::nowhere) reading.place = earlier.place;
    }

    const method::Catalogue& kinds_;
    std::set<std::string> withdrawn_, superseded_;
    std::vector<Reading> taken_;
    std::vector<bool> still_counts_;
    std::map<std::string, std::size_t> latest_; // identity -> its place in taken_
    Counted made_;
};

} // namespace

Value corrected_data(const Entry& entry, const Counted& counted) {
    Value data = entry.data;
    const auto found = counted.corrections.find(entry::hash_text(entry.hash));
    if (found == counted.corrections.end()) return data;
    for (const Entry* correction : found->second) {
        if (const Value* fields = correction->data.find("fields")) overlay(data, *fields);
    }
    return data;
}

Counted count_readings(const std::vector<const Entry*>& visible, const method::Catalogue& kinds) {
    Counter counter(kinds);
    counter.gather_changes(visible);
    for (const Entry* entry : visible) counter.count(entry);
    return counter.finish();
}

} // namespace undersheet::job
