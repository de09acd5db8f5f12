// What holds by itself of the rows of a damaged book, and what its notes say there was. Used by salvaging.cpp alone.
//
// Promises: what stands in `found` was checked as if it were to be taken in; the notes (head, local, an index) are believed by nobody and
//   only tell what to miss.
#pragma once

#include "book/taking.h"

#include <functional>
#include <optional>
#include <set>

namespace undersheet::book {

struct Remains {
    Incoming found = {};
    std::string office = {};  // "" where that row is lost
    std::int64_t refused = 0; // rows that look like entries and do not hold
    std::map<std::pair<std::string, std::string>, std::int64_t> last =
        {};                                           // job and device: the last number noted
    std::map<std::string, std::int64_t> written = {}; // device of this book: how many entries it had written
};

// The public key of a device whose key the file has lost; nothing where it is not to be had.
using KeyFinder = std::function<std::optional<entry::PublicKey>(const std::string& device)>;

[[nodiscard]] Remains remains_of(std::string_view file, const KeyFinder& find_key);

} // namespace undersheet::book
