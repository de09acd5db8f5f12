// What a session does with hand-over files, and with what was erased.
#include "book/files.h"
#include "book/handing.h"
#include "book/journal.h"
#include "book/merging.h"
#include "book/photos.h"
#include "book/session.h"

namespace undersheet::book {
namespace {

// The photographs are on the disk before the entries that name them; when nothing is kept in the end, they go again.
class PhotosTaken {
public:
    explicit PhotosTaken(std::string folder) : folder_(std::move(folder)) {}
    PhotosTaken(const PhotosTaken&) = delete;
    PhotosTaken& operator=(const PhotosTaken&) = delete;
    ~PhotosTaken() {
        Erased again{{}, {new_.begin(), new_.end()}};
        if (!is_over_) static_cast<void>(remove_photos(folder_, again)); // best effort: they harm nobody
    }

    void take(HandedFile& from, const std::vector<entry::Hash>& photos, const Erased& erased) {
        for (const entry::Hash& photo : photos) {
            if (erased.photos.contains(photo) || read_photo_file(folder_, photo).ok()) continue;
            value_or_trouble(keep_photo_file(folder_, from.photo(photo)));
            new_.push_back(photo);
        }
    }
    [[nodiscard]] std::int64_t count() const { return static_cast<std::int64_t>(new_.size()); }
    void keep() { is_over_ = true; }

private:
    std::string folder_;
    std::vector<entry::Hash> new_ = {};
    bool is_over_ = false;
};

} // namespace

Taken Session::take(const std::string& handed) {
    must_be_writing();
    const auto file = HandedFile::open(handed);
    const Incoming incoming = file->read();
    PhotosTaken photos(photo_folder_);
    Merged merged;
    in_one_go([&] {
        merged = merge(connected(), incoming, handed);
        action_->ids = merged.ids;
        photos.take(*file, incoming.photos, merged.erased);
        return Done();
    });
    photos.keep();
    merged.taken.photos = photos.count();
    if (merged.taken.was_older_copy) {
        signer_.reset();
        device_ = local(connected(), "device");
    }
    merged.taken.has_erased = merged.has_forgotten;
    drop_erased(merged.erased, merged.has_forgotten);
    return std::move(merged.taken);
}

Handed Session::hand(std::string_view job, const std::string& to) {
    find_key();
    HandWhat what{{}, {}, photo_folder_, around_.world.clock().text};
    if (job.empty()) {
        what.jobs = jobs_in(connected());
        what.office = office_;
    } else {
        what.jobs = {std::string(job)};
    }
    return write_handed(connected(), what, *signer_, to);
}

// Deleted rows are overwritten at once (secure_delete), but what a page held before its cells moved is only gone when the
// file is written anew.
void Session::drop_erased(const Erased& erased, bool has_forgotten) {
    if (has_forgotten) connected().compact();
    done_or_trouble(remove_photos(photo_folder_, erased));
}

void Session::forget_erased() {
    const Erased erased = gone_from(connected());
    in_one_go([&] {
        forget_values(connected(), erased);
        return Done();
    });
    drop_erased(erased, true);
}

} // namespace undersheet::book
