// Is this file a book, and may there be one here? And making an empty one.
//
// Promises: a file that is no book is never written to; a book that could not be made leaves nothing behind.
// Does not: know entries or keys.
#pragma once

#include "book/connection.h"

#include <functional>

namespace undersheet::book {

[[nodiscard]] Done check_file(const std::string& path); // a file that can be read and is not empty
// SQLite opens the files beside a book by itself, and waits for whoever writes into a pipe of such a name.
[[nodiscard]] Done check_beside(const std::string& path);
[[nodiscard]] Done check_free(const std::string& path); // no such file yet, in a folder that is there
void check_is_book(Connection& connection); // ours, of a version we know, with nothing strange in it
void check_is_writable(Connection& connection);

// Makes a file at `path`: `fill` under another name, then the name it is to have. Refused when the name is taken.
void make_file(const std::string& path, const std::function<void(const std::string& part)>& fill);

// Makes a book at `path`: an empty one under another name, then `fill` on that name, then the name it is to have.
void make_book(const std::string& path, const std::string& office, int wait_ms,
               const std::function<void(const std::string& part)>& fill);

} // namespace undersheet::book
