// Several devices: handing a job over, taking one in, and what was said apart.
#include "base/text.h"
#include "desk/desk.h"
#include "desk/drafts.h"
#include "desk/erased_apart.h"
#include "desk/keep.h"
#include "desk/words.h"
#include "job/settle.h"

namespace undersheet::desk {
namespace {

Lines remarks_of(const book::Taken& taken) {
    Lines remarks;
    for (const auto& fault : taken.copied) {
        remarks.push_back("device " + fault.device.substr(0, 8) +
                          " was copied: it has two entries of number " + std::to_string(fault.seq) +
                          "; both are kept");
    }
    if (taken.was_older_copy)
        remarks.emplace_back("this book was an older copy of itself; it goes on as a new device");
    if (taken.has_erased) remarks.emplace_back("what was erased elsewhere is gone here too");
    return remarks;
}

// How much has to be settled now in the jobs that came in.
void count_open_items(Session& session, const book::Taken& taken, TakenIn& in) {
    for (const auto& line : taken.jobs) {
        if (line.ref.empty() || line.fresh == 0) continue;
        auto on = take_up(session, {line.job, {}, {}});
        if (on)
            in.to_settle += on->job.to_settle.size();
        else // it is in the book all the same
            in.remarks.push_back("job " + line.ref + " cannot be read here: " + on.fault().detail);
    }
}

Done note_values_come_back(book::Book& book, const book::Taken& taken, TakenIn& in) {
    for (const auto& line : taken.jobs) {
        if (line.fresh == 0) continue;
        auto entries = book.entries(line.job);
        if (!entries) return entries.fault();
        const entry::Causality causality(*entries);
        for (const auto& again : recorded_apart_from_erasing(*entries, causality))
            in.remarks.push_back("entry " + entry::short_name((*entries)[again.entry].hash) + ": " +
                                 again.says);
    }
    return {};
}

Done note_jobs_called_alike(book::Book& book, const book::Taken& taken, TakenIn& in) {
    auto jobs = book.jobs();
    if (!jobs) return jobs.fault();
    for (const auto& line : taken.jobs) {
        const auto others =
            std::count_if(jobs->begin(), jobs->end(), [&](const auto& job) { return job.ref == line.ref; });
        if (line.ref.empty() || others < 2 || line.fresh == 0) continue;
        in.remarks.push_back("there are now " + std::to_string(others) + " jobs called " + line.ref +
                             "; name the one that came in by --job " + line.job.substr(0, kShortJob));
    }
    return {};
}

SettleSideLine side_of(const Case& on, const job::SettleSide& side) {
    SettleSideLine line;
    line.entry = entry::hash_text(side.entry->hash);
    line.name = entry::short_name(side.entry->hash);
    line.by = on.job.person_name(side.entry->author);
    line.when = side.entry->when.text;
    line.device = side.entry->device;
    line.says =
        side.says.empty() ? entry_words(on.job, *side.entry, on.kinds->find(side.entry->kind)) : side.says;
    return line;
}

std::string about_word(job::Apart about) {
    switch (about) {
    case job::Apart::part_state:
        return "part";
    case job::Apart::reading:
        return "reading";
    case job::Apart::field:
        return "field";
    case job::Apart::correction:
        return "correction";
    case job::Apart::after_hand_over:
        return "after_hand_over";
    case job::Apart::after_revocation:
        return "after_revocation";
    case job::Apart::punch_rows:
        return "punch_rows";
    }
    return "";
}

SettleLine line_of(const Case& on, const job::SettleItem& item) {
    SettleLine line;
    line.id = item.id;
    line.about = about_word(item.about);
    line.says = job::settle_words(item);
    line.part = item.part;
    line.place = entry::place_text(item.place);
    line.kind = item.kind;
    line.field = item.field;
    line.open = item.settled == nullptr;
    line.holds = item.holds && line.open;
    for (const auto& side : item.sides) line.sides.push_back(side_of(on, side));
    if (item.settled == nullptr) return line;
    line.kept = item.kept == nullptr ? "" : entry::hash_text(item.kept->hash);
    line.why = item.why;
    line.settled_by = on.job.person_name(item.settled->author);
    line.settled_at = item.settled->when.text;
    return line;
}

} // namespace

Result<HandedOut> Desk::hand(const HandOver& what) {
    auto book = session_->writer();
    if (!book) return book.fault();
    std::string id;
    HandedOut out;
    out.file = what.file;
    if (!what.whole_book) {
        auto on = take_up(*session_, {what.job, {}, {}});
        if (!on) return on.fault();
        id = on->id;
        out.job = on->job.ref;
    }
    auto handed = (*book)->hand(id, what.file);
    if (!handed) return handed.fault();
    out.entries = as_size(handed->entries);
    out.photos = as_size(handed->photos);
    out.digest = entry::hash_text(handed->digest);
    out.missing_photos = std::move(handed->missing_photos);
    return out;
}

Result<TakenIn> Desk::take(const std::string& handed_file) {
    auto book = session_->writer();
    if (!book) return book.fault();
    auto taken = (*book)->take(handed_file);
    if (!taken) return taken.fault();
    TakenIn in;
    in.file = handed_file;
    in.entries = as_size(taken->entries);
    in.fresh = as_size(taken->fresh);
    in.photos = as_size(taken->photos);
    in.new_devices = taken->new_devices;
    in.remarks = remarks_of(*taken);
    for (const auto& line : taken->jobs)
        in.jobs.push_back({line.ref, as_size(line.in_file), as_size(line.fresh)});
    count_open_items(*session_, *taken, in);
    if (auto noted = note_jobs_called_alike(**book, *taken, in); !noted) return noted.fault();
    if (auto noted = note_values_come_back(**book, *taken, in); !noted) return noted.fault();
    return in;
}

Result<SettleList> Desk::to_settle(const Asked& asked) {
    auto on = take_up(*session_, asked);
    if (!on) return on.fault();
    SettleList list = {on->name(), {}};
    for (const auto& item : on->job.to_settle) list.items.push_back(line_of(*on, item));
    for (const auto& item : on->job.settled) list.items.push_back(line_of(*on, item));
    return list;
}

Result<Kept> Desk::settle(const Asked& asked, const Settle& settled) {
    Typed typed = {"settle", {}, {}, {}};
    typed.put("item", settled.item);
    typed.put("keep", settled.keep);
    typed.put("why", settled.why);
    return keep(*session_, asked, std::vector<Typed>{typed});
}

} // namespace undersheet::desk
