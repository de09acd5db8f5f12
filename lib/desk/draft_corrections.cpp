#include "base/text.h"
#include "desk/drafts.h"
#include "job/readings.h"

#include <algorithm>
#include <set>

namespace undersheet::desk {
namespace {

using entry::Entry;
using entry::Value;

bool is_withdrawn(const Case& on, const Entry& entry) {
    return std::any_of(on.job.withdrawn.begin(), on.job.withdrawn.end(),
                       [&](const Entry* gone) { return gone->hash == entry.hash; });
}

Done can_be_corrected(const Case& on, const Entry& entry, const method::Kind& kind) {
    const std::string name = entry::short_name(entry.hash);
    if (is_withdrawn(on, entry))
        return Fault{Code::entry_unknown, name + " was withdrawn", {}, "record it anew"};
    if (kind.group == method::Group::reading || kind.name == "tick") return {};
    return Fault{Code::not_from_here,
                 name + " is no reading (" + kind.heading + ")",
                 {},
                 "a mis-tap is taken back with undersheet withdraw"};
}

Fault personal_field(const std::string& kind, const std::string& field) {
    return {Code::field_unknown, "this is somebody's own and is not corrected", kind + " " + field,
            "record it anew: undersheet record " + kind + " " + field + "=…"};
}

// Only what was typed is corrected, not what the catalogue would fill in.
Result<Value> corrected_fields(const Case& on, const Entry& entry, const method::Kind& kind,
                               const Typed& typed) {
    method::Input input = {{},
                           entry::place_text(entry.place),
                           entry.when,
                           finder(on.job.people),
                           job::corrected_data(entry, on.job.corrections)};
    for (const auto& field : typed.fields) {
        if (field.first != "of" && field.first != "why") input.typed.push_back(field);
    }
    if (input.typed.empty())
        return Fault{Code::field_missing, "nothing to correct was typed", "correct",
                     "write the field as it should be, like reading_pct=12.9"};
    auto checked = method::check(*on.kinds, kind, input);
    if (!checked) return checked.fault();
    Value fields;
    for (const auto& [name, value] : input.typed) {
        if (checked->personal.contains(name)) return personal_field(kind.name, name);
        if (const Value* found = checked->data.find(name)) fields.set(name, *found);
    }
    return fields;
}

Fault too_late(std::string why, std::string clears) {
    return {Code::too_late_to_undo, std::move(why), {}, std::move(clears)};
}

// Stages that wait for `stage`, and those that wait for them.
std::set<std::string> stages_after(const method::Method& method, const std::string& stage) {
    std::set<std::string> after = {stage};
    for (std::size_t before = 0; before != after.size();) {
        before = after.size();
        for (const auto& need : method.needs()) {
            if (after.contains(need.needs)) after.insert(need.stage);
        }
    }
    return after;
}

bool is_move(const Entry& entry) { return entry.kind == "work" || job::event_of(entry.kind).has_value(); }

// A later move of the same part, or of a part of a stage that waits for this one.
const Entry* built_on(const Case& on, const Entry& entry) {
    const auto after = stages_after(*on.method, split(entry.part, '/')[0]);
    for (const auto& later : on.entries) {
        if (!entry::comes_before(entry, later) || !is_move(later) || is_withdrawn(on, later)) continue;
        const std::string stage = split(later.part, '/')[0];
        const bool other_stage = stage != split(entry.part, '/')[0] && after.contains(stage);
        if (later.part == entry.part || other_stage) return &later;
    }
    return nullptr;
}

// A reading can be withdrawn until the hand-over; a mis-tap only while it is fresh, by whoever made it.
Done can_be_withdrawn(const Writing& writing, const Entry& entry, const method::Kind& kind) {
    const Case& on = writing.on;
    const std::string name = entry::short_name(entry.hash) + " (" + kind.heading + ")";
    if (is_withdrawn(on, entry)) return Fault{Code::entry_unknown, name + " is withdrawn already", {}, {}};
    if (kind.group == method::Group::office)
        return Fault{Code::not_from_here, name + " stays as it is", {}, "record it anew"};
    if (kind.group == method::Group::reading && kind.name != "work") return {};
    const double limit_min = on.method->limit("undo_min");
    if (entry.author != writing.by.id) {
        return too_late(name + " is " + on.job.person_name(entry.author) +
                            "'s, and only they can take it back",
                        "open the part again, or send it back");
    }
    if (entry::minutes_between(entry.when, on.moment.when) > limit_min) {
        return too_late(name + " is more than " + shortest(limit_min, 0) + " minutes old",
                        "open the part again, or send it back");
    }
    if (const Entry* later = built_on(on, entry)) {
        return too_late(entry::short_name(later->hash) + " is built on " + name, "withdraw that first");
    }
    return {};
}

} // namespace

Result<Drafted> draft_correction(const Writing& writing, const Typed& typed) {
    auto found = find_entry(writing.on, typed.text("of"));
    if (!found) return found.fault();
    const Entry& entry = **found;
    const method::Kind* kind = writing.on.kinds->find(entry.kind);
    if (kind == nullptr) return method::unknown_kind(*writing.on.kinds, entry.kind);
    if (auto can = can_be_corrected(writing.on, entry, *kind); !can) return can.fault();
    auto fields = corrected_fields(writing.on, entry, *kind, typed);
    if (!fields) return fields.fault();
    Typed correction = {"correct", {}, entry.part, {}};
    correction.put("of", entry::hash_text(entry.hash));
    correction.put("why", typed.text("why"));
    correction.put("fields", *fields);
    return checked_draft(writing, correction);
}

Result<Drafted> draft_withdrawal(const Writing& writing, Typed typed) {
    auto found = find_entry(writing.on, typed.text("of"));
    if (!found) return found.fault();
    const method::Kind* kind = writing.on.kinds->find((*found)->kind);
    if (kind == nullptr) return method::unknown_kind(*writing.on.kinds, (*found)->kind);
    if (auto can = can_be_withdrawn(writing, **found, *kind); !can) return can.fault();
    typed.part = (*found)->part;
    typed.set("of", entry::hash_text((*found)->hash));
    return checked_draft(writing, typed);
}

} // namespace undersheet::desk
