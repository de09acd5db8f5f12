// What the shells need to finish a command by the tab key: commands, options, kinds, fields and their words.
//
// Promises: written from the table of commands and the catalogue of kinds, so it never knows less than the program.
// Does not: look into a book; parts and findings of a job are not known to the shell.
#pragma once

#include <string>

namespace undersheet::cli {

[[nodiscard]] std::string bash_completion();
[[nodiscard]] std::string zsh_completion();
[[nodiscard]] std::string fish_completion();

} // namespace undersheet::cli
