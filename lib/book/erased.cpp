#include "book/erased.h"

#include "book/files.h"
#include "book/journal.h"

namespace undersheet::book {
namespace {

void add_names(const entry::Entry& entry, std::string_view field, std::set<entry::Hash>& into) {
    for (const auto& item : entry.data.list_of(field)) {
        if (item.text() == nullptr) continue;
        if (const auto hash = entry::parse_hash(*item.text())) into.insert(*hash);
    }
}

} // namespace

Erased erased_by(const std::vector<entry::Entry>& entries) {
    Erased erased;
    for (const auto& entry : entries) {
        if (entry.kind != "erase") continue;
        add_names(entry, "values", erased.cids);
        add_names(entry, "photos", erased.photos);
    }
    return erased;
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
