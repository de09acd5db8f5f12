// Finds the book that a command is about and opens the desk on it: --book, else UNDERSHEET_BOOK, else the data folder.
#pragma once

#include "cli/arguments.h"
#include "cli/reading.h"
#include "desk/desk.h"

namespace undersheet::cli {

[[nodiscard]] desk::BookAt book_at(const Arguments& arguments); // UNDERSHEET_CLOCK sets its clock
[[nodiscard]] Result<desk::Desk> open_desk(const Arguments& arguments);
[[nodiscard]] desk::Asked
asked(const Arguments& arguments); // --job, --by (else UNDERSHEET_BY), --when, --supplement

// Written beside it first and then put in its place, so a paper is never half there. "-" is stdout.
[[nodiscard]] Done write_file(const std::string& path, std::string_view bytes);

} // namespace undersheet::cli
