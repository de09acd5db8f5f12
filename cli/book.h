// Finds the book that a command is about and opens the desk on it: --book, else UNDERSHEET_BOOK, else the data folder.
#pragma once

#include "cli/arguments.h"
#include "desk/desk.h"

namespace undersheet::cli {

[[nodiscard]] desk::BookAt book_at(const Arguments& arguments); // UNDERSHEET_CLOCK sets its clock
[[nodiscard]] Result<desk::Desk> open_desk(const Arguments& arguments);
[[nodiscard]] desk::Asked
asked(const Arguments& arguments); // --job, --by (else UNDERSHEET_BY), --when, --supplement

// A whole file, or stdin for "-". `what` names it in the fault: "photograph", "method file".
// More than that nobody feeds: it is the largest photograph that the book keeps. What is smaller has limits of its own.
inline constexpr std::size_t kMostFileBytes = 32U << 20U;
[[nodiscard]] Result<std::string> read_file(const std::string& path, std::string_view what);
// Written beside it first and then put in its place, so a paper is never half there. "-" is stdout.
[[nodiscard]] Done write_file(const std::string& path, std::string_view bytes);

} // namespace undersheet::cli
