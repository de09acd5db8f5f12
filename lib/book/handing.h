// Writes a hand-over file: the evidence of some jobs, or of the whole book, as one plain SQLite file.
//
// Promises: the file is there whole and sealed, or not at all; what was erased is not in it. A job is handed with every entry
//   its entries stand on, so that the file can be taken by itself.
// Faults: book_damaged where a method or catalogue that a job is judged by is missing, for nobody could take the file.
// Does not: hand over anything of this device alone (where it stands, its key).
#pragma once

#include "book/book.h"
#include "book/connection.h"
#include "book/seal.h"

#include <vector>

namespace undersheet::book {

struct HandWhat {
    std::vector<std::string> jobs = {}; // in ascending order
    std::string office = {};            // set when the whole book is handed
    std::string photo_folder = {};
    std::string clock = {};
};

[[nodiscard]] Handed write_handed(Connection& from, const HandWhat& what, const entry::Signer& signer,
                                  const std::string& path);

// Over everything in a hand-over file that is no entry, for its seal: the SHA-256 of one line for each photograph, key,
// personal value and text, "<table> <name>\n", in ascending order. A sealed file cannot lose or gain one unnoticed.
[[nodiscard]] entry::Hash rest_of(Connection& handed);

// Photographs that entries name and nobody has erased.
// The method and the catalogue that an opening names; nothing for other entries.
[[nodiscard]] std::vector<entry::Hash> texts_pinned_by(const entry::Entry& entry);
[[nodiscard]] std::vector<entry::Hash> photos_of(const std::vector<entry::Entry>& entries);

} // namespace undersheet::book
