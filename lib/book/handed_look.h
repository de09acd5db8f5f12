// A hand-over file looked at as `verify` looks at a book.
//
// Promises: what would keep the file from being taken into an empty book is a failure or a fault here; so is whatever a book
//   made of it would be found to lack. Nothing is written.
#pragma once

#include "book/book.h"

namespace undersheet::book {

[[nodiscard]] HandedLook look_at_handed(const std::string& path);

} // namespace undersheet::book
