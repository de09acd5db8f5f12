// Plain text set in columns: wrapping, filling up, and tables that fit the page width.
//
// Promises: no line is wider than asked, counted as a terminal counts (clean.h); a word that is too long for its line is
//   broken rather than cut off; a line break somebody typed stays one. Nothing is left out, whatever the width.
// A table whose columns cannot be narrowed enough is written row by row, each cell after its header's words.
#pragma once

#include "paper/document.h"

#include <string>
#include <string_view>
#include <vector>

namespace undersheet::paper {

constexpr std::size_t kPageColumns = 80;

[[nodiscard]] std::vector<std::string> wrapped(std::string_view text, std::size_t width);
// Wrapped, with `first` before the first line and as many blanks before the others.
[[nodiscard]] std::string set_in(std::string_view first, std::string_view text,
                                 std::size_t width = kPageColumns);

// Running text as plain words: what is struck stands between ~ and ~.
[[nodiscard]] std::string plain_words(const Text& text);

[[nodiscard]] std::string table_lines(const Table& table, std::size_t width = kPageColumns);

} // namespace undersheet::paper
