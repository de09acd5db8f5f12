#include "book/belongings.h"

#include "book/handing.h"

namespace undersheet::book {

using entry::Entry;
using entry::Hash;

void Belongings::note(const std::vector<Entry>& job) {
    erasures_.note(job);
    const Erased erased = erased_by(job);
    std::size_t openings = 0;
    for (const Entry& entry : job) {
        const About about{entry.hash, entry.device, entry.seq};
        if (entry.kind == "open" && ++openings > 1)
            add(about, "it opens a job that was opened before: two methods may be meant");
        if (entry.kind == "open") note_opening(entry, about);
        if (entry.kind == "photo") note_photo(entry, about, erased);
    }
}

void Belongings::note_opening(const Entry& entry, const About& about) {
    for (const char* pinned : {"method", "kinds"}) {
        const std::string name = entry.data.text_of(pinned);
        if (!name.empty() && !entry::parse_hash(name))
            add(about, std::string("its ") + pinned + " has a name that no text can have");
    }
    for (const Hash& text : texts_pinned_by(entry)) texts_.emplace(text, about);
}

void Belongings::note_photo(const Entry& entry, const About& about, const Erased& erased) {
    const auto photo = entry::parse_hash(entry.data.text_of("sha256"));
    if (photo)
        photos_.push_back({about, *photo, erased.photos.contains(*photo)});
    else
        add(about, "it names a photograph by what no photograph is called");
}

void Belongings::add(const About& about, std::string what) {
    faults_.push_back({about.entry, about.device, about.seq, std::move(what)});
}

void Belongings::check(const Holding& holding, Verified& into) const {
    into.faults.insert(into.faults.end(), faults_.begin(), faults_.end());
    const Erased gone = erasures_.gone();
    check_photos(holding, gone, into);
    check_values(holding, gone, into);
    for (const auto& [text, about] : texts_)
        if (!holding.text(text))
            into.faults.push_back(
                {about.entry, about.device, about.seq,
                 "the method or catalogue that its job is judged by is missing or was changed (" +
                     entry::short_name(text) + ")"});
}

void Belongings::check_photos(const Holding& holding, const Erased& gone, Verified& into) const {
    for (const Photo& photo : photos_) {
        const Done is_there = holding.photo(photo.hash);
        std::string what;
        if (photo.is_erased && gone.photos.contains(photo.hash) && is_there.ok())
            what = "its photograph was erased and is still here";
        else if (!photo.is_erased && !is_there.ok())
            what = is_there.fault().detail;
        else
            continue;
        into.faults.push_back({photo.about.entry, photo.about.device, photo.about.seq,
                               what + " (" + entry::short_name(photo.hash) + ")"});
    }
}

void Belongings::check_values(const Holding& holding, const Erased& gone, Verified& into) const {
    for (const Hash& cid : gone.cids)
        if (holding.value(cid))
            into.faults.push_back(
                {{},
                 {},
                 0,
                 "a personal value was erased and is still here (" + entry::short_name(cid) + ")"});
    for (const Hash& cid : erasures_.needed().cids)
        if (!holding.value(cid)) ++into.missing_personal;
}

} // namespace undersheet::book
