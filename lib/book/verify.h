// Checks a whole book from its bytes: nothing it says about itself is believed.
//
// Promises: every row of `entry` is hashed, read in its strict form, compared with its columns, its signature checked under
//   the key that makes its device's name, its place in the chains and its lam worked out again; every personal value still
//   held is checked against its commitment, every photograph that an entry names against its hash; look-up rows are counted again. A damaged file gives faults, not a failure.
// Does not: notice that the newest entries of another device were taken away; nothing inside a book can show that.
#pragma once

#include "book/book.h"
#include "book/connection.h"

namespace undersheet::book {

[[nodiscard]] Verified verify_book(Connection& connection, const std::string& photo_folder);

} // namespace undersheet::book
