#include "book/erased.h"

#include "book/files.h"
#include "book/handing.h"
#include "book/journal.h"

namespace undersheet::book {
namespace {

void add_names(const entry::Entry& entry, std::string_view field, std::set<entry::Hash>& into) {
    for (const auto& item : entry.data.list_of(field)) {
        if (item.text() == nullptr) continue;
        if (const auto hash = entry::parse_hash(*item.text())) into.insert(*hash);
    }
}

Erased named_by(const std::vector<entry::Entry>& entries) {
    Erased named;
    for (const auto& entry : entries)
        for (const entry::Member& member : *entry.data.map())
            if (const auto cid = entry::commitment_of(member.value)) named.cids.insert(*cid);
    for (const entry::Hash& photo : photos_of(entries)) named.photos.insert(photo);
    return named;
}

void keep_common(std::set<entry::Hash>& some, const std::set<entry::Hash>& others) {
    std::erase_if(some, [&](const entry::Hash& hash) { return !others.contains(hash); });
}

void take_out(std::set<entry::Hash>& some, const std::set<entry::Hash>& others) {
    std::erase_if(some, [&](const entry::Hash& hash) { return others.contains(hash); });
}

} // namespace

Erased erased_by(const std::vector<entry::Entry>& entries) {
    Erased erased;
    for (const auto& entry : entries) {
        if (entry.kind != "erase") continue;
        add_names(entry, "values", erased.cids);
        add_names(entry, "photos", erased.photos);
    }
    if (erased.is_empty()) return erased;
    const Erased named = named_by(entries);
    keep_common(erased.cids, named.cids);
    keep_common(erased.photos, named.photos);
    return erased;
}

void Erasures::note(const std::vector<entry::Entry>& job) {
    Erased erased = erased_by(job), needed = named_by(job);
    take_out(needed.cids, erased.cids);
    take_out(needed.photos, erased.photos);
    erased_.cids.merge(erased.cids);
    erased_.photos.merge(erased.photos);
    needed_.cids.merge(needed.cids);
    needed_.photos.merge(needed.photos);
}

Erased Erasures::gone() const {
    Erased gone = erased_;
    take_out(gone.cids, needed_.cids);
    take_out(gone.photos, needed_.photos);
    return gone;
}

Erased gone_from(Connection& connection) {
    Erasures erasures;
    for (const std::string& job : jobs_in(connection)) erasures.note(entries_of(connection, job));
    return erasures.gone();
}

bool forget_values(Connection& connection, const Erased& erased) {
    bool held = false;
    for (const entry::Hash& cid : erased.cids) {
        const Bytes name{bytes_of(cid)};
        held = connection.one("SELECT 1 FROM secret WHERE cid = ?", {name}, [](const Row&) {}) || held;
        connection.run("DELETE FROM secret WHERE cid = ?", {name});
    }
    return held;
}

Done remove_photos(const std::string& folder, const Erased& erased) {
    for (const entry::Hash& photo : erased.photos) {
        if (auto done = remove_durably(folder + "/" + entry::hash_text(photo)); !done) return done;
    }
    return {};
}

} // namespace undersheet::book
