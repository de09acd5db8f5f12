#include "job/readings.h"

#include "entry/json.h"
#include "job/clashes.h"

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

// The entry that another names in a field.
std::optional<entry::Hash> named_in(const Entry& entry, std::string_view field) {
    auto named = entry::parse_hash(entry.data.text_of(field));
    return named ? std::optional(*named) : std::nullopt;
}

class Counter {
public:
    Counter(const method::Catalogue& kinds, const Told& told) : kinds_(kinds), told_(told) {}

    void gather_changes(const std::vector<const Entry*>& visible) {
        for (const Entry* entry : visible) {
            const auto of = entry->kind == "withdraw" ? named_in(*entry, "of") : std::nullopt;
            if (of) withdrawn_.insert(*of);
        }
        for (const Entry* entry : visible) {
            if (withdrawn_.contains(entry->hash)) continue;
            const auto of = entry->kind == "correct" ? named_in(*entry, "of") : std::nullopt;
            if (of) made_.corrections[*of].push_back(entry);
            if (entry->kind == "settle") settlements_.note(entry);
        }
        for (auto& [of, corrections] : made_.corrections) settle_corrections(corrections);
        for (const Entry* entry : visible) {
            if (const auto replaced = named_in(*entry, "replaces")) superseded_.insert(*replaced);
        }
    }

    void count(const Entry* entry) {
        if (withdrawn_.contains(entry->hash)) {
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
        reading.data = corrected_data(*entry, made_.corrections);
        reading.label = label_of(*entry, reading.data);
        if (superseded_.contains(entry->hash)) {
            made_.replaced.push_back(std::move(reading));
            return;
        }
        take(*kind, std::move(reading));
    }

    Counted finish() {
        for (auto& [identity, standing] : latest_) settle_readings(standing);
        for (auto& [identity, fields] : fields_) settle_fields(identity, fields);
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
        const std::string of = identity(kind, reading);
        std::vector<std::size_t>& standing = latest_[of];
        if (kind.judging == method::Judging::fills) {
            for (const std::size_t earlier : standing) {
                fill_from(taken_[earlier], reading);
                still_counts_[earlier] = false;
            }
            standing.clear();
            if (!told_.is_one_run()) stand_fields(of, *reading.entry);
        } else {
            std::erase_if(standing, [&](std::size_t earlier) { return gives_way(earlier, reading); });
        }
        standing.push_back(taken_.size());
    }

    // What its writer knew of, or what says the same.
    bool gives_way(std::size_t earlier, const Reading& reading) {
        const Reading& other = taken_[earlier];
        if (told_.apart(*reading.entry, *other.entry) && !says_the_same(reading, other)) return false;
        made_.replaced.push_back(other);
        still_counts_[earlier] = false;
        return true;
    }
    static bool says_the_same(const Reading& a, const Reading& b) {
        return entry::write_strict(a.data) == entry::write_strict(b.data);
    }

    void stand_fields(const std::string& of, const Entry& entry) {
        const Value data = corrected_data(entry, made_.corrections);
        for (const auto& member : *data.map()) {
            const auto held = entry.personal.find(member.key); // two salts make one name look like two
            const Value says = held == entry.personal.end() ? member.value : Value(held->second);
            fields_[of][member.key].stand(&entry, says, told_);
        }
    }

    // --- what was said apart ---

    void keep(SettleItem item) {
        (item.settled == nullptr ? made_.to_settle : made_.settled).push_back(std::move(item));
    }

    void settle_readings(const std::vector<std::size_t>& standing) {
        if (standing.size() < 2) return;
        std::vector<const Entry*> sides;
        for (const std::size_t at : standing) sides.push_back(taken_[at].entry);
        SettleItem item = item_of(Apart::reading, *sides.front(), "", sides);
        if (settlements_.apply(item, told_)) {
            for (const std::size_t at : standing) {
                if (taken_[at].entry == item.kept) continue;
                made_.replaced.push_back(taken_[at]);
                still_counts_[at] = false;
            }
        }
        keep(std::move(item));
    }

    void settle_fields(const std::string& of, const std::map<std::string, Sides>& fields) {
        for (const auto& [field, sides] : fields) {
            if (!sides.differ()) continue;
            SettleItem item = item_of(Apart::field, *sides.entries().front(), field, sides.entries());
            if (settlements_.apply(item, told_))
                taken_[latest_[of].front()].data.set(field, sides.said_by(item.kept));
            keep(std::move(item));
        }
    }

    // The last correction in the list is the one that counts.
    void settle_corrections(std::vector<const Entry*>& corrections) {
        if (corrections.size() < 2 || told_.is_one_run()) return;
        std::map<std::string, Sides> fields;
        for (const Entry* correction : corrections) {
            const Value* changed = correction->data.find("fields");
            if (changed == nullptr || changed->map() == nullptr) continue;
            for (const auto& member : *changed->map())
                fields[member.key].stand(correction, member.value, told_);
        }
        for (const auto& [field, sides] : fields) {
            if (!sides.differ()) continue;
            SettleItem item = item_of(Apart::correction, *sides.entries().front(), field, sides.entries());
            if (settlements_.apply(item, told_)) {
                std::erase(corrections, item.kept);
                corrections.push_back(item.kept);
            }
            keep(std::move(item));
        }
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
    const Told& told_;
    Settlements settlements_ = {};
    std::set<entry::Hash> withdrawn_, superseded_;
    std::vector<Reading> taken_;
    std::vector<bool> still_counts_;
    std::map<std::string, std::vector<std::size_t>> latest_;          // identity -> its places in taken_
    std::map<std::string, std::map<std::string, Sides>> fields_ = {}; // of kinds that fill field by field
    Counted made_;
};

} // namespace

Value corrected_data(const Entry& entry, const Corrections& corrections) {
    Value data = entry.data;
    const auto found = corrections.find(entry.hash);
    if (found == corrections.end()) return data;
    for (const Entry* correction : found->second) {
        if (const Value* fields = correction->data.find("fields")) overlay(data, *fields);
    }
    return data;
}

Counted count_readings(const std::vector<const Entry*>& visible, const method::Catalogue& kinds,
                       const Told& told) {
    Counter counter(kinds, told);
    counter.gather_changes(visible);
    for (const Entry* entry : visible) counter.count(entry);
    return counter.finish();
}

} // namespace undersheet::job
