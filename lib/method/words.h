// Words and text as people type them: yes and no, one of the words of a field, "not looked", free text.
//
// Promises: capitals do not matter in a word, blanks and hyphens stand for underscores; a word that is not known is
//   refused with the nearest one and the whole list.
// Does not: change free text.
// Threads: pure functions.
#pragma once

#include "base/text.h"
#include "method/kinds.h"

namespace undersheet::method {

// "not_looked" or "cant_reach" when that is what was typed ("not looked", "can't reach"), else "".
[[nodiscard]] std::string_view gap_word(std::string_view typed);

[[nodiscard]] Result<std::string> yes_or_no(std::string_view typed); // yes, y, true; no, n, false
[[nodiscard]] Result<std::string> one_of_choices(const Field& field, std::string_view typed);

// Text at all: not empty, UTF-8, at most 4000 characters, no control characters and none that is not seen but joiners;
// only `words` may have several lines.
[[nodiscard]] Done check_text(const Field& field, std::string_view typed);
[[nodiscard]] Done check_seen(std::string_view typed, Joiners joiners);      // two names must not look alike
[[nodiscard]] Done check_length(const Field& field, std::string_view typed); // not under `shortest`

} // namespace undersheet::method
