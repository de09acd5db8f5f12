#include "book/merging.h"

#include "book/handing.h"
#include "book/journal.h"

#include <algorithm>
#include <set>

namespace undersheet::book {
namespace {

using entry::ChainFault;
using entry::Entry;
using entry::Hash;

constexpr std::size_t kMostDevices = 200; // on one job; the written form takes 256 in a list

class Merger {
public:
    Merger(Connection& into, const Incoming& incoming, const std::string& from)
        : into_(into), incoming_(incoming), from_(from), own_devices_(own_devices(into)) {}

    Merged run() {
        check_links();
        for (const auto& [job, entries] : incoming_.jobs) take_job(job, entries);
        add_keys();
        add_texts();
        check_pinned();
        note_erased();
        add_secrets();
        merged_.has_forgotten = forget_values(into_, merged_.erased);
        give_up_copied_devices();
        name_a_job();
        return std::move(merged_);
    }

private:
    [[noreturn]] void refuse(const ChainFault& fault) const {
        throw Trouble{{Code::not_handed,
                       "entry " + entry::short_name(fault.entry) + " (number " + std::to_string(fault.seq) +
                           " of device " + fault.device.substr(0, 8) + "): " + fault.what,
                       from_, "nothing was taken; ask for the whole job once more"}};
    }

    // Across jobs: nothing more than what the file itself holds can be asked for.
    void check_links() const {
        std::vector<entry::DeviceLink> links;
        for (const auto& [job, entries] : incoming_.jobs) {
            for (const Entry& entry : entries) links.push_back(entry::device_link(entry));
        }
        for (const ChainFault& fault : entry::check_devices(std::move(links), {}))
            if (fault.sort != ChainFault::Sort::copied) refuse(fault); // that it was copied, verify says
    }

    void take_job(const std::string& job, const std::vector<Entry>& entries) {
        std::vector<Entry> all = entries_of(into_, job);
        std::set<Hash> own;
        for (const Entry& entry : all) own.insert(entry.hash);
        std::set<Hash> fresh;
        for (const Entry& entry : entries) {
            if (own.contains(entry.hash)) continue;
            fresh.insert(entry.hash);
            all.push_back(entry);
        }
        std::sort(all.begin(), all.end(), entry::comes_before);
        check_chains(all, fresh);
        check_openings(all, fresh);
        check_devices(all, fresh);
        add_entries(all, fresh);
        if (!erased_by(all).is_empty()) has_erasures_ = true;
        note_job(job, all, entries.size(), fresh.size());
    }

    // What was wrong with our own entries before is no reason to refuse somebody else's.
    void check_chains(const std::vector<Entry>& all, const std::set<Hash>& fresh) {
        for (const ChainFault& fault : entry::check_job(all)) {
            if (fault.sort == ChainFault::Sort::copied)
                merged_.taken.copied.push_back(fault);
            else if (fresh.contains(fault.entry) && !incoming_.may_have_gaps)
                refuse(fault);
        }
    }

    // What a job is judged by is said once: nobody says it again with a method of their own.
    void check_openings(const std::vector<Entry>& all, const std::set<Hash>& fresh) const {
        const Entry* first = nullptr;
        bool is_new = false;
        for (const Entry& entry : all) {
            if (entry.kind != "open") continue;
            is_new = is_new || fresh.contains(entry.hash);
            if (first != nullptr && is_new)
                refuse({entry.hash, entry.device, entry.seq,
                        "the job is opened twice, by this entry and by " + entry::short_name(first->hash)});
            first = &entry;
        }
    }

    // Every entry names the last of each device that it knew: with more of them nobody could write any more.
    void check_devices(const std::vector<Entry>& all, const std::set<Hash>& fresh) const {
        std::set<std::string> devices;
        for (const Entry& entry : all) {
            devices.insert(entry.device);
            if (devices.size() > kMostDevices && fresh.contains(entry.hash))
                refuse(
                    {entry.hash, entry.device, entry.seq,
                     "more than " + std::to_string(kMostDevices) + " devices would have written on its job"});
        }
    }

    // A job whose method is nowhere could not be judged, here or by whom it is handed on to.
    void check_pinned() const {
        if (incoming_.may_have_gaps) return;
        for (const auto& [job, entries] : incoming_.jobs)
            for (const Entry& entry : entries)
                for (const Hash& text : texts_pinned_by(entry)) {
                    const bool is_here = into_.one("SELECT 1 FROM text WHERE hash = ?",
                                                   {Bytes{bytes_of(text)}}, [](const Row&) {});
                    if (!is_here)
                        refuse({entry.hash, entry.device, entry.seq,
                                "the method or catalogue that its job is judged by did not come with it (" +
                                    entry::short_name(text) + ")"});
                }
    }

    void add_entries(const std::vector<Entry>& all, const std::set<Hash>& fresh) {
        for (const Entry& entry : all) {
            if (!fresh.contains(entry.hash)) continue;
            add_row(into_, entry);
            merged_.ids.push_back(entry.id);
            if (own_devices_.contains(entry.device)) given_up_.insert(entry.device);
        }
        if (!fresh.empty()) recount(into_, all);
    }

    // The other jobs of the book may need what these erased.
    void note_erased() {
        if (has_erasures_) merged_.erased = gone_from(into_);
    }

    void note_job(const std::string& job, const std::vector<Entry>& all, std::size_t in_file,
                  std::size_t fresh) {
        TakenJob line{job, {}, static_cast<std::int64_t>(in_file), static_cast<std::int64_t>(fresh)};
        for (const Entry& entry : all) {
            if (entry.kind == "open") line.ref = entry.data.text_of("ref", line.ref);
        }
        merged_.taken.entries += line.in_file;
        merged_.taken.fresh += line.fresh;
        merged_.taken.jobs.push_back(std::move(line));
    }

    void add_keys() {
        for (const auto& [device, key] : incoming_.keys) {
            const bool is_known =
                into_.one("SELECT 1 FROM pubkey WHERE dev = ?", {device}, [](const Row&) {});
            if (!is_known) merged_.taken.new_devices.push_back(device);
            add_device(into_, key);
        }
    }

    void add_texts() {
        for (const auto& [hash, body] : incoming_.texts)
            into_.run("INSERT OR IGNORE INTO text (hash, body) VALUES (?, ?)",
                      {Bytes{bytes_of(hash)}, Bytes{body}});
    }

    void add_secrets() {
        for (const entry::Secret& secret : incoming_.secrets) {
            if (merged_.erased.cids.contains(secret.cid)) continue;
            into_.run("INSERT OR IGNORE INTO secret (cid, salt, val) VALUES (?, ?, ?)",
                      {Bytes{bytes_of(secret.cid)}, Bytes{bytes_of(secret.salt)}, Bytes{secret.value}});
        }
    }

    // Somebody has entries of this very device that are not here: the book is an older copy. Going on with the same key
    // would make two entries of one number.
    void give_up_copied_devices() {
        for (const std::string& device : given_up_) give_up_device(into_, device);
        merged_.taken.was_older_copy = !given_up_.empty();
    }

    // On a new device the job that was worked on last, anywhere, is the one that is meant.
    void name_a_job() {
        if (!local(into_, "last_job").empty()) return;
        into_.one("SELECT job FROM job WHERE ref <> '' ORDER BY last_when DESC, job LIMIT 1", {},
                  [&](const Row& row) { set_local(into_, "last_job", row.text(0)); });
    }

    Connection& into_;
    const Incoming& incoming_;
    const std::string& from_;
    std::set<std::string> own_devices_, given_up_ = {};
    bool has_erasures_ = false;
    Merged merged_ = {};
};

} // namespace

Merged merge(Connection& into, const Incoming& incoming, const std::string& from) {
    return Merger(into, incoming, from).run();
}

} // namespace undersheet::book
