// Typed text made fit to print: what cannot be shown, or would turn the rest of the page round, is replaced.
//
// Promises: the answer is UTF-8; control characters but the line break, and characters that nobody sees, like those that
//   switch the writing direction of everything after them, become U+FFFD, so that no name looks like another; joiners,
//   soft hyphens, the marks of one direction and every other character of every script stay.
//   columns() is the room a text takes in a terminal: two for Chinese, Japanese, Korean and emoji, none for accents
//   that sit on the letter before (Unicode Standard Annex 11 and the combining blocks, the common ranges only).
// Does not: change the order of right-to-left text; the terminal or browser does that.
#pragma once

#include <string>
#include <string_view>

namespace undersheet::paper {

[[nodiscard]] std::string clean(std::string_view text);
[[nodiscard]] std::size_t columns(std::string_view text);
[[nodiscard]] bool has_right_to_left(std::string_view text);

} // namespace undersheet::paper
