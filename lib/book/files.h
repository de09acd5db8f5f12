// Files that have to be there after the power fails: written under another name, synced, renamed, folder synced.
//
// Promises: a reader finds the whole file or none. Nothing here throws.
// Does not: lock. POSIX only; where a folder cannot be synced (WebAssembly) that step does nothing.
// Source of the order of steps: POSIX.1-2017 rename() and fsync().
#pragma once

#include "base/result.h"

#include <string>
#include <string_view>

namespace undersheet::book {

enum class Readers { everybody, owner }; // owner: mode 0600 from the first byte on

// Replaces a file of that name.
[[nodiscard]] Done write_durably(const std::string& path, std::string_view bytes, Readers readers);
// Files only: a pipe or device, in which reading could wait for ever, is refused.
[[nodiscard]] Result<std::string> read_whole(const std::string& path, std::size_t most_bytes);
[[nodiscard]] std::string read_start(const std::string& path, std::size_t bytes); // "" when it cannot be read
[[nodiscard]] std::string read_end(const std::string& path, std::size_t bytes); // "" when it is shorter, too
// Makes a file that was written elsewhere in the same folder appear under its name; refused when the name is taken.
[[nodiscard]] Done move_into_place(const std::string& from, const std::string& to);
[[nodiscard]] Done make_folder(const std::string& path);    // and syncs the one above; fine when it is there
[[nodiscard]] Done remove_durably(const std::string& path); // fine when it is not there
[[nodiscard]] std::string folder_of(const std::string& path);

// What the system said, in words that help on a roof: full, may not be written, is not there.
[[nodiscard]] Fault file_fault(int error_number, const std::string& path);

} // namespace undersheet::book
