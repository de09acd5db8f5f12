// Entries in, job out: sort, leave out what is later than asked, then people, readings, roof, parts and lists.
#include "job/clashes.h"
#include "job/derive_parts.h"
#include "job/fold_lists.h"
#include "job/job.h"
#include "job/replay.h"
#include "job/roof_build.h"
#include "job/settle.h"
#include "job/supplements.h"
#include "method/stored.h"

#include <algorithm>
#include <array>

namespace undersheet::job {
namespace {

using entry::Entry;

// The firm, its people and the opening of the job always count: work is often written down before its job was opened.
bool is_office(const Entry& entry, const method::Catalogue& kinds) {
    const method::Kind* kind = kinds.find(entry.kind);
    return kind != nullptr && kind->group == method::Group::office;
}

std::vector<const Entry*> visible_at(const EntryList& entries, const method::Catalogue& kinds,
                                     const entry::Time& as_of) {
    std::vector<const Entry*> visible;
    for (const Entry& entry : entries) {
        if (entry.when.unix_s <= as_of.unix_s || is_office(entry, kinds)) visible.push_back(&entry);
    }
    return visible;
}

// The kind whose fields an entry holds: for a correction the kind of what it corrects.
Done could_be_kept(const Entry& entry, const EntryList& entries, const method::Catalogue& kinds) {
    const method::Kind* kind = kinds.find(entry.kind);
    if (kind == nullptr) return {};
    if (auto done = method::check_stored(*kind, entry.data); !done) return done;
    const entry::Value* fields = entry.data.find("fields");
    if (entry.kind != "correct" || fields == nullptr) return {};
    const auto of = entry::parse_hash(entry.data.text_of("of"));
    const auto corrected = std::find_if(entries.begin(), entries.end(),
                                        [&](const Entry& other) { return of && other.hash == *of; });
    const method::Kind* other = corrected == entries.end() ? nullptr : kinds.find(corrected->kind);
    return other == nullptr ? Done() : method::check_stored(*other, *fields);
}

// What the catalogue would never have kept stays in the book and is not folded: rules rely on its words and ranges.
std::vector<std::string> leave_out_impossible(std::vector<const Entry*>& visible, const EntryList& entries,
                                              const method::Catalogue& kinds) {
    std::vector<std::string> problems;
    std::erase_if(visible, [&](const Entry* entry) {
        const auto could = could_be_kept(*entry, entries, kinds);
        if (!could)
            problems.push_back(one_line(could.fault()) + " (entry " + entry::short_name(entry->hash) + ")");
        return !could;
    });
    return problems;
}

// At the same place, whatever set-up of the instrument it belongs to.
bool is_read_since(const Job& job, const Reading& reading, const Entry& change, const Told& told) {
    return std::any_of(job.readings.begin(), job.readings.end(), [&](const Reading& later) {
        return later.kind == reading.kind && later.place == reading.place && later.label == reading.label &&
               told.knew(*later.entry, change);
    });
}

// A changed deck moves the heights and the wet near the change: what was read there by somebody who did not know of
// it is asked for again.
void doubt_near_changes(Job& job, const method::Method& method, const Told& told) {
    constexpr std::array kDoubted{"chase", "level", "moisture"};
    const double reach_m = method.limit("moisture_reach_m");
    for (const Reading* change : job.all("alter")) {
        const auto changed_at = locate(job.roof, change->place);
        for (Reading& reading : job.readings) {
            if (std::find(kDoubted.begin(), kDoubted.end(), reading.kind) == kDoubted.end()) continue;
            if (told.knew(*reading.entry, *change->entry)) continue;
            if (is_read_since(job, reading, *change->entry, told)) continue;
            const auto read_at = locate(job.roof, reading.place);
            const bool apart = changed_at && read_at && trade::distance_m(*changed_at, *read_at) > reach_m;
            if (!apart) reading.doubted = true;
        }
    }
}

void close_if_from_paper(Job& job) {
    if (job.opened == nullptr || !job.opened->data.is_yes("from_paper")) return;
    job.handed_over = job.opened;
    for (Part& part : job.parts) {
        if (part.state != State::not_needed) part.state = job.within ? State::signed_off : State::closed;
    }
}

// What another device wrote without knowing of the hand-over: it is kept, and does not change what was handed over.
std::vector<const Entry*> apart_from_hand_over(const Job& job, const std::vector<const Entry*>& visible,
                                               const method::Catalogue& kinds, const Told& told) {
    std::vector<const Entry*> apart;
    if (job.handed_over == nullptr || told.is_one_run()) return apart;
    for (const Entry* entry : visible) {
        if (!is_office(*entry, kinds) && told.apart(*entry, *job.handed_over)) apart.push_back(entry);
    }
    return apart;
}

void offer_as_supplement(Job& job, std::vector<const Entry*> apart, const std::vector<const Entry*>& visible,
                         const Told& told) {
    const Settlements settlements = settlements_in(visible);
    apart.insert(apart.begin(), job.handed_over);
    SettleItem item = item_of(Apart::after_hand_over, *job.handed_over, "", apart);
    item.holds = false;
    const bool is_settled = settlements.apply(item, told);
    (is_settled ? job.settled : job.to_settle).push_back(std::move(item));
}

// What a lost device wrote and who reported it lost had not seen: it does not count, unless somebody settles that it does.
std::vector<SettleItem> leave_out_revoked(std::vector<const Entry*>& visible, const Told& told) {
    const Settlements settlements = settlements_in(visible);
    std::vector<SettleItem> items;
    const std::vector<const Entry*> all = visible;
    for (const Entry* revoked : all) {
        const bool counts = std::find(visible.begin(), visible.end(), revoked) != visible.end();
        if (revoked->kind != "revoke" || !counts) continue;
        std::vector<const Entry*> after = {revoked};
        for (const Entry* entry : visible) {
            if (entry->device == revoked->data.text_of("device") && !told.knew(*revoked, *entry))
                after.push_back(entry);
        }
        if (after.size() == 1) continue;
        SettleItem item = item_of(Apart::after_revocation, *revoked, "", after);
        item.holds = false;
        settlements.apply(item, told);
        const Entry* kept = item.kept == revoked ? nullptr : item.kept; // and what it stands on
        std::erase_if(visible, [&](const Entry* entry) {
            const bool is_after = std::find(after.begin() + 1, after.end(), entry) != after.end();
            const bool counts_again =
                kept != nullptr && (told.knew(*kept, *entry) || told.knew(*entry, *item.settled));
            return is_after && !counts_again;
        });
        items.push_back(std::move(item));
    }
    return items;
}

void add_items(Job& job, const std::vector<SettleItem>& items) {
    for (const SettleItem& item : items)
        (item.settled == nullptr ? job.to_settle : job.settled).push_back(item);
}

void move_into(Job& job, Counted counted) {
    job.readings = std::move(counted.readings);
    job.replaced = std::move(counted.replaced);
    job.withdrawn = std::move(counted.withdrawn);
    job.corrections = std::move(counted.corrections);
    for (SettleItem& item : counted.to_settle) job.to_settle.push_back(std::move(item));
    for (SettleItem& item : counted.settled) job.settled.push_back(std::move(item));
}

Job fold_visible(std::shared_ptr<const EntryList> entries, const std::vector<const Entry*>& visible,
                 const method::Method& method, const method::Catalogue& kinds, const Told& told,
                 const std::optional<entry::Hash>& within) {
    Job job;
    job.entries = std::move(entries);
    job.within = within;
    if (!job.entries->empty()) job.id = job.entries->front().job;
    Counted counted = count_readings(visible, kinds, told);
    take_lists(job, counted);
    job.roof = build_roof(counted.readings, method);
    job.parts = derive_parts(job.roof, method);
    close_if_from_paper(job);
    replay(job, counted, method, told);
    move_into(job, std::move(counted));
    doubt_near_changes(job, method, told);
    if (!told.is_one_run()) offer_same_punch_rows(job);
    return job;
}

// What another device wrote without knowing of the hand-over is left out, and stands for a person to settle.
Job fold_first_record(const std::shared_ptr<const EntryList>& entries, std::vector<const Entry*>& visible,
                      const method::Method& method, const method::Catalogue& kinds, const Told& told) {
    Job job = fold_visible(entries, visible, method, kinds, told, {});
    const std::vector<const Entry*> apart = apart_from_hand_over(job, visible, kinds, told);
    if (apart.empty()) return job;
    std::erase_if(visible, [&](const Entry* entry) {
        return std::find(apart.begin(), apart.end(), entry) != apart.end();
    });
    job = fold_visible(entries, visible, method, kinds, told, {});
    offer_as_supplement(job, apart, visible, told);
    return job;
}

} // namespace

Result<Job> fold(EntryList entries, const method::Method& method, const method::Catalogue& kinds,
                 const entry::Time& as_of, const std::optional<entry::Hash>& within) {
    std::sort(entries.begin(), entries.end(), entry::comes_before);
    const auto kept = std::make_shared<const EntryList>(std::move(entries));
    const Told told(*kept);
    std::vector<const Entry*> visible = visible_at(*kept, kinds, as_of);
    const std::vector<SettleItem> revoked = leave_out_revoked(visible, told);
    std::vector<std::string> problems = leave_out_impossible(visible, *kept, kinds);
    std::vector<Supplement> supplements = supplements_in(visible, told, problems);
    std::vector<const Entry*> first = counting(visible, supplements, {});
    Job job = fold_first_record(kept, first, method, kinds, told);
    if (within) {
        const entry::Entry* handed_over = job.handed_over;
        std::vector<const Entry*> all = first;
        for (const Entry* entry : counting(visible, supplements, within))
            if (entry->supplement) all.push_back(entry);
        std::sort(all.begin(), all.end()); // they stand in one list, in its order
        job = fold_visible(kept, all, method, kinds, told, within);
        job.handed_over = handed_over;
    }
    add_items(job, revoked);
    job.supplements = std::move(supplements);
    job.problems.insert(job.problems.begin(), problems.begin(), problems.end());
    job.as_of = as_of;
    return job;
}

} // namespace undersheet::job
