#include "book/handed_look.h"

#include "book/belongings.h"
#include "book/taking.h"

#include <algorithm>
#include <iterator>
#include <set>

namespace undersheet::book {
namespace {

using entry::ChainFault;
using entry::Hash;

Holding held_by(const Incoming& incoming) {
    std::set<Hash> photos(incoming.photos.begin(), incoming.photos.end()), values;
    for (const entry::Secret& secret : incoming.secrets) values.insert(secret.cid);
    const auto photo = [photos = std::move(photos)](const Hash& hash) -> Done {
        if (photos.contains(hash)) return {};
        return Fault{Code::photo_unreadable, "the photograph did not come with it", {}, {}};
    };
    return {photo, [values = std::move(values)](const Hash& cid) { return values.contains(cid); },
            [&incoming](const Hash& text) { return incoming.texts.contains(text); }};
}

void add(const std::vector<ChainFault>& faults, Verified& into) {
    into.faults.insert(into.faults.end(), faults.begin(), faults.end());
}

} // namespace

HandedLook look_at_handed(const std::string& path) {
    Incoming incoming = HandedFile::open(path)->read();
    HandedLook look;
    Belongings belongings;
    std::vector<entry::DeviceLink> links;
    for (const auto& [job, entries] : incoming.jobs) {
        add(entry::check_job(entries), look.verified);
        for (const entry::Entry& entry : entries) links.push_back(entry::device_link(entry));
        belongings.note(entries);
    }
    add(entry::check_devices(std::move(links), {}), look.verified);
    belongings.check(held_by(incoming), look.verified);
    look.verified.entries = incoming.seal.entries;
    look.verified.digest = incoming.seal.digest;
    for (auto& [job, entries] : incoming.jobs)
        look.entries.insert(look.entries.end(), std::make_move_iterator(entries.begin()),
                            std::make_move_iterator(entries.end()));
    return look;
}

} // namespace undersheet::book
