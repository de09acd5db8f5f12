// A word that is not known, and the one that was probably meant.
//
// Promises: at most two slips away, or the only word that begins with what was typed; else nothing is guessed.
// Does not: choose. It only says what could be typed.
// Threads: pure functions.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace undersheet::method {

[[nodiscard]] std::string probably_meant(std::string_view word,
                                         const std::vector<std::string>& known); // "" for none

// "did you mean plywood3? there are osb3, plywood3": for the end of a fault.
[[nodiscard]] std::string did_you_mean(std::string_view word, const std::vector<std::string>& known);

// What somebody typed, fit to be printed inside one line: cut at 60 bytes, odd bytes as '?'.
[[nodiscard]] std::string shown(std::string_view typed);

} // namespace undersheet::method
