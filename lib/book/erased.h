// What entries of kind "erase" take away: personal values and photographs, by name.
//
// Promises: whoever has such an entry holds none of what it names, whatever comes in from older files.
// Does not: touch the journal. Bodies, signatures and chains stay as they were.
#pragma once

#include "book/connection.h"
#include "entry/entry.h"

#include <set>

namespace undersheet::book {

struct Erased {
    std::set<entry::Hash> cids = {}, photos = {};
};

[[nodiscard]] Erased erased_by(const std::vector<entry::Entry>& entries);

// Takes the values away. Photographs are files: remove_photos, once the action is over.
// True when there was something to take away.
bool forget_values(Connection& connection, const Erased& erased);
[[nodiscard]] Done remove_photos(const std::string& folder, const Erased& erased);

} // namespace undersheet::book
