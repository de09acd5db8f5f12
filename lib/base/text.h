// Small things done to text: is it text at all, cut it, join it, fold its case, write bytes as hexadecimal.
//
// Promises: works on bytes; only ASCII letters change case, so a name in any script survives.
// Does not: normalise Unicode (that would alter what was typed).
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace undersheet {

[[nodiscard]] bool is_utf8(std::string_view bytes); // well-formed, no surrogates, nothing past U+10FFFF
[[nodiscard]] bool has_control_characters(std::string_view text); // any below U+0020 but newline, or U+007F
// Takes no room and shows nothing, yet turns text round, splits it or stands between letters that then look like others:
// U+202E, U+200B, a soft hyphen. Not the joiners and variant selectors that scripts and emoji are written with.
[[nodiscard]] bool is_unseen(char32_t code);
[[nodiscard]] bool
is_joiner(char32_t code); // U+200C, U+200D and what selects a variant of the character before it

struct UnseenCharacter {
    char32_t code;
    std::size_t at; // counted in characters, from 1
};
enum class Joiners { allowed, unseen };
[[nodiscard]] std::optional<UnseenCharacter> find_unseen(std::string_view text,
                                                         Joiners joiners); // the first of them
[[nodiscard]] std::string without_unseen(std::string_view text);           // joiners stay
[[nodiscard]] std::string code_name(char32_t code);                        // "U+202E"

[[nodiscard]] std::size_t character_count(std::string_view utf8); // code points

struct Character {
    char32_t code;
    std::string_view bytes;
};
// One character off the front of `text`; a byte that begins none is U+FFFD and is taken alone.
[[nodiscard]] Character take_character(std::string_view& text);

[[nodiscard]] std::string_view trimmed(std::string_view text);
[[nodiscard]] std::string lower_ascii(std::string_view text);
[[nodiscard]] std::vector<std::string> split(std::string_view text,
                                             char at); // "a||b" gives three; "" gives one empty
[[nodiscard]] std::string counted(std::size_t count, std::string_view one,
                                  std::string_view many); // "3 entries"
[[nodiscard]] std::string joined(const std::vector<std::string>& pieces, std::string_view between);
[[nodiscard]] std::string replaced(std::string text, std::string_view what,
                                   std::string_view by); // every occurrence

[[nodiscard]] std::string hex(std::span<const std::uint8_t> bytes); // lower case
[[nodiscard]] std::optional<std::vector<std::uint8_t>>
unhex(std::string_view digits); // lower case only, even length

// How many single-letter slips (change, drop, add) lie between two words; for "did you mean".
[[nodiscard]] std::size_t slips_between(std::string_view a, std::string_view b);
// The word of `known` nearest to `word`, if it is at most two slips away; else empty.
[[nodiscard]] std::string nearest_word(std::string_view word, const std::vector<std::string>& known);

} // namespace undersheet
