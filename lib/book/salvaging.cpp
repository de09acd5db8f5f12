#include "book/salvaging.h"

#include "book/files.h"
#include "book/handing.h"
#include "book/merging.h"
#include "book/opening.h"
#include "book/photos.h"
#include "book/remains.h"
#include "entry/names.h"

#include <algorithm>

namespace undersheet::book {
namespace {

using entry::Entry;
using entry::Hash;
using Entries = std::vector<Entry>;

constexpr std::size_t kMostDamagedBytes = 1U << 30U;

// --- order: what contradicts what stands before it was not written by a device of ours ---

const Entry* find(const std::map<Hash, const Entry*>& index, const Hash& hash) {
    const auto at = index.find(hash);
    return at == index.end() ? nullptr : at->second;
}

// Holds as far as what it stands on is there.
bool stands(const Entry& entry, const std::map<Hash, const Entry*>& index) {
    std::int64_t greatest = 0;
    bool knows_all = true;
    const auto look = [&](const Hash& hash) {
        const Entry* before = find(index, hash);
        knows_all = knows_all && before != nullptr;
        if (before != nullptr) greatest = std::max(greatest, before->lam);
        return before;
    };
    for (const Hash& head : entry.seen) look(head);
    const Entry* before = entry.prev ? look(*entry.prev) : nullptr;
    if (before != nullptr && (before->device != entry.device || before->seq + 1 != entry.seq)) return false;
    return knows_all ? entry.lam == greatest + 1 : entry.lam > greatest;
}

// Whatever is dropped leaves a gap like any other, so what stands on it is kept.
std::int64_t drop_what_does_not_stand(std::map<std::string, Entries>& jobs) {
    std::set<Hash> wrong;
    std::vector<entry::DeviceLink> links;
    for (const auto& [job, entries] : jobs) {
        std::map<Hash, const Entry*> index;
        for (const Entry& entry : entries) index.emplace(entry.hash, &entry);
        for (const Entry& entry : entries) {
            links.push_back(entry::device_link(entry));
            if (!stands(entry, index)) wrong.insert(entry.hash);
        }
    }
    for (const auto& fault : entry::check_devices(std::move(links), {})) wrong.insert(fault.entry);
    for (auto& [job, entries] : jobs)
        std::erase_if(entries, [&](const Entry& entry) { return wrong.contains(entry.hash); });
    std::erase_if(jobs, [](const auto& job) { return job.second.empty(); });
    return static_cast<std::int64_t>(wrong.size());
}

// --- what is missing ---

class Misser {
public:
    Misser(const Remains& remains, Salvaged& into) : remains_(remains), into_(into) {}

    void run() {
        for (const auto& [job, entries] : remains_.found.jobs) look(job, entries);
        for (const auto& [at, last] : remains_.last) note_number(at, last + 1);
        for (const auto& [device, written] : remains_.written) devices_[device].written = written;
        for (auto& [device, line] : devices_) {
            line.device = device;
            into_.devices.push_back(line);
        }
        into_.named = std::count_if(named_.begin(), named_.end(),
                                    [&](const Hash& hash) { return !here_.contains(hash); });
        for (const auto& secret : remains_.found.secrets) cids_.erase(secret.cid);
        into_.missing_personal = static_cast<std::int64_t>(cids_.size());
        for (const Hash& text : texts_) {
            if (!remains_.found.texts.contains(text)) into_.missing_texts.push_back(text);
        }
    }

private:
    using Place = std::pair<std::string, std::string>; // job and device

    void look(const std::string& job, const Entries& entries) {
        const Erased erased = erased_by(entries);
        for (const Entry& entry : entries) {
            if (entry.kind == "open") refs_[job] = entry.data.text_of("ref");
        }
        for (const Entry& entry : entries) {
            here_.insert(entry.hash);
            named_.insert(entry.seen.begin(), entry.seen.end());
            ++devices_[entry.device].entries;
            note_number({job, entry.device}, entry.seq);
            note_belongings(entry, erased);
        }
    }

    // The entries of a device come in order of their numbers. What lies between the last and this one is missing.
    void note_number(const Place& place, std::int64_t seq) {
        std::int64_t& due = due_.try_emplace(place, 1).first->second;
        if (seq > due) into_.gaps.push_back({place.first, refs_[place.first], place.second, due, seq - 1});
        due = std::max(due, seq + 1);
    }

    void note_belongings(const Entry& entry, const Erased& erased) {
        for (const auto& member : *entry.data.map()) {
            const auto cid = entry::commitment_of(member.value);
            if (cid && !erased.cids.contains(*cid)) cids_.insert(*cid);
        }
        for (const Hash& text : texts_pinned_by(entry)) texts_.insert(text);
    }

    const Remains& remains_;
    Salvaged& into_;
    std::map<std::string, std::string> refs_ = {};
    std::map<std::string, SalvagedDevice> devices_ = {};
    std::map<Place, std::int64_t> due_ = {};
    std::set<Hash> here_ = {}, named_ = {}, cids_ = {}, texts_ = {};
};

// --- the new book ---

// Photographs that were brought over go again when the book does not come to be.
class PhotosBrought {
public:
    PhotosBrought(std::string from, std::string to) : from_(std::move(from)), to_(std::move(to)) {}
    PhotosBrought(const PhotosBrought&) = delete;
    PhotosBrought& operator=(const PhotosBrought&) = delete;
    ~PhotosBrought() {
        if (!is_over_) static_cast<void>(remove_photos(to_, brought_)); // best effort: they harm nobody
    }
    void bring(const Entries& entries, Salvaged& into) {
        const Erased erased = erased_by(entries);
        for (const Hash& photo : photos_of(entries)) {
            if (erased.photos.contains(photo) || brought_.photos.contains(photo)) continue;
            const auto bytes = read_photo_file(from_, photo);
            if (!bytes) {
                into.missing_photos.push_back(photo);
                continue;
            }
            value_or_trouble(keep_photo_file(to_, *bytes));
            brought_.photos.insert(photo);
            ++into.photos;
        }
    }
    void keep() { is_over_ = true; }

private:
    std::string from_, to_;
    Erased brought_ = {};
    bool is_over_ = false;
};

// As the book says, else the journal that speaks of the firm.
std::string office_of(const Remains& remains, entry::World& world) {
    if (!remains.office.empty()) return remains.office;
    for (const auto& [job, entries] : remains.found.jobs) {
        const bool is_firm = std::any_of(entries.begin(), entries.end(),
                                         [](const Entry& entry) { return entry.kind == "firm"; });
        if (is_firm) return job;
    }
    return entry::new_job(world);
}

void fill(const std::string& part, const Remains& remains, PhotosBrought& photos, Salvaged& into) {
    Connection connection(part, Connection::Mode::write, 0);
    Transaction writing(connection, Transaction::Kind::writing);
    static_cast<void>(merge(connection, remains.found, part)); // everything is new here
    for (const auto& [job, entries] : remains.found.jobs) photos.bring(entries, into);
    const auto rows = [&](const char* query) {
        std::int64_t count = 0;
        connection.one(query, {}, [&](const Row& row) { count = row.integer(0); });
        return count;
    };
    into.entries = rows("SELECT count(*) FROM entry");
    into.personal = rows("SELECT count(*) FROM secret");
    into.texts = rows("SELECT count(*) FROM text");
    writing.commit();
}

// The public half of a key that was beside the book, or in one of the files that help.
KeyFinder keys_from(const Damaged& damaged) {
    KeysByDevice keys;
    for (const std::string& file : damaged.handed) keys.merge(HandedFile::open(file)->read().keys);
    return [keys = std::move(keys), store = damaged.keys](const std::string& device) {
        const auto at = keys.find(device);
        if (at != keys.end()) return std::optional(at->second);
        const auto kept = store == nullptr ? std::optional<Key>() : value_or_trouble(store->load(device));
        return kept ? std::optional(entry::signer_from(kept->seed)->public_key()) : std::nullopt;
    };
}

Salvaged salvage_or_trouble(const Damaged& from, const std::string& to, Surroundings around) {
    const std::string& damaged = from.file;
    done_or_trouble(check_file(damaged));
    done_or_trouble(check_free(to));
    Remains remains = remains_of(value_or_trouble(read_whole(damaged, kMostDamagedBytes)), keys_from(from));
    Salvaged salvaged;
    salvaged.refused = remains.refused + drop_what_does_not_stand(remains.found.jobs);
    if (remains.found.jobs.empty()) {
        throw Trouble{{Code::book_damaged, "no entry that holds can be read from this file", damaged,
                       "go back to a copy, or have the jobs handed over by another device"}};
    }
    salvaged.has_journal = !read_start(damaged + "-journal", 1).empty();
    Misser(remains, salvaged).run();
    remains.found.may_have_gaps = true;
    PhotosBrought photos(damaged + ".photos", to + ".photos");
    make_book(to, office_of(remains, around.world), around.wait_ms,
              [&](const std::string& part) { fill(part, remains, photos, salvaged); });
    photos.keep();
    return salvaged;
}

} // namespace

bool Salvaged::is_whole() const {
    const bool all_written = std::all_of(devices.begin(), devices.end(), [](const SalvagedDevice& device) {
        return device.entries >= device.written;
    });
    return all_written && gaps.empty() && refused + named + missing_personal == 0 && missing_texts.empty() &&
           missing_photos.empty();
}

Result<Salvaged> salvage(const Damaged& damaged, const std::string& to, Surroundings around) {
    return guarded([&] { return salvage_or_trouble(damaged, to, around); });
}

} // namespace undersheet::book
