// What entries of kind "erase" take away: personal values and photographs, by name.
//
// An entry speaks for its own job alone: it takes away what entries of that job name, and only what no other job needs.
// Promises: whoever has such entries of every job that names a thing does not hold it, whatever comes in from older files.
// Does not: touch the journal. Bodies, signatures and chains stay as they were.
#pragma once

#include "book/connection.h"
#include "entry/entry.h"

#include <set>

namespace undersheet::book {

struct Erased {
    std::set<entry::Hash> cids = {}, photos = {};
    [[nodiscard]] bool is_empty() const { return cids.empty() && photos.empty(); }
};

// Of one job: what its entries erased, among what they name.
[[nodiscard]] Erased erased_by(const std::vector<entry::Entry>& entries);

// Of several jobs: what is to be gone.
class Erasures {
public:
    void note(const std::vector<entry::Entry>& job);
    [[nodiscard]] Erased gone() const; // erased by a job, and needed by none
    [[nodiscard]] const Erased& needed() const { return needed_; }

private:
    Erased erased_ = {}, needed_ = {};
};

[[nodiscard]] Erased gone_from(Connection& connection);

// Takes the values away. Photographs are files: remove_photos, once the action is over.
// True when there was something to take away.
bool forget_values(Connection& connection, const Erased& erased);
[[nodiscard]] Done remove_photos(const std::string& folder, const Erased& erased);

} // namespace undersheet::book
