#include "paper/text_layout.h"

#include "base/text.h"
#include "paper/clean.h"

#include <algorithm>
#include <numeric>
#include <optional>

namespace undersheet::paper {

namespace {

constexpr std::size_t kBetweenColumns = 2;
constexpr std::size_t kNarrowestWords = 10; // a column of words is not squeezed below this

using Cells = std::vector<std::string>;

// As many characters off the front as fit, at least one.
std::string_view taken(std::string_view& text, std::size_t width) {
    std::string_view rest = text;
    std::size_t used = 0, size = 0;
    while (!rest.empty()) {
        const std::string_view character = take_character(rest).bytes;
        used += columns(character);
        if (size > 0 && used > width) break;
        size += character.size();
    }
    const std::string_view piece = text.substr(0, size);
    text.remove_prefix(size);
    return piece;
}

void wrap_line(std::string_view line, std::size_t width, std::vector<std::string>& out) {
    std::string current;
    for (const std::string& word : split(line, ' ')) {
        if (word.empty()) continue;
        std::string_view rest = word;
        if (!current.empty() && columns(current) + 1 + columns(word) <= width) {
            current.append(" ").append(word);
            continue;
        }
        if (!current.empty()) out.push_back(std::move(current));
        while (columns(rest) > width) out.emplace_back(taken(rest, width));
        current = rest;
    }
    out.push_back(std::move(current));
}

std::string filled_up(const std::string& text, std::size_t width, Column column) {
    const std::string blanks(width - std::min(width, columns(text)), ' ');
    return column == Column::figures ? blanks + text : text + blanks;
}

std::size_t longest_word(const std::string& text) {
    std::size_t longest = 0;
    for (const std::string& word : split(replaced(text, "\n", " "), ' '))
        longest = std::max(longest, columns(word));
    return longest;
}

std::size_t longest_line(const std::string& text) {
    std::size_t longest = 0;
    for (const std::string& line : split(text, '\n')) longest = std::max(longest, columns(line));
    return longest;
}

Cells cells_of(const Row& row, std::size_t count) {
    Cells cells;
    for (const Text& cell : row.cells) cells.push_back(plain_words(cell));
    cells.resize(count);
    return cells;
}

std::size_t total(const std::vector<std::size_t>& widths) {
    return std::accumulate(widths.begin(), widths.end(), kBetweenColumns * (widths.size() - 1));
}

// The widest header and cell of each column, by the longest line or the longest word of a cell.
template <std::size_t (*longest)(const std::string&)>
std::vector<std::size_t> widths_by(const Table& table) {
    std::vector<std::size_t> widths;
    for (const Header& header : table.headers) widths.push_back(longest_word(clean(header.text)));
    for (const Row& row : table.rows) {
        const Cells cells = cells_of(row, widths.size());
        for (std::size_t i = 0; i < cells.size(); ++i) widths[i] = std::max(widths[i], longest(cells[i]));
    }
    return widths;
}

// The widest column of words that is wider than its least; nullptr when there is none.
std::size_t* widest_over(const Table& table, const std::vector<std::size_t>& least,
                         std::vector<std::size_t>& widths) {
    std::size_t* widest = nullptr;
    for (std::size_t i = 0; i < widths.size(); ++i)
        if (table.headers[i].column == Column::words && widths[i] > least[i] &&
            (widest == nullptr || widths[i] > *widest))
            widest = &widths[i];
    return widest;
}

// Takes one blank after the other from the widest column of words, and cuts no word while another column has blanks to
// give; nothing when the page is still too narrow.
std::optional<std::vector<std::size_t>> fitting_widths(const Table& table, std::size_t page) {
    std::vector<std::size_t> widths = widths_by<longest_line>(table);
    const std::vector<std::size_t> narrowest(widths.size(), kNarrowestWords);
    std::vector<std::size_t> whole_words = widths_by<longest_word>(table);
    for (std::size_t& least : whole_words) least = std::max(least, kNarrowestWords);
    while (total(widths) > page) {
        std::size_t* widest = widest_over(table, whole_words, widths);
        if (widest == nullptr) widest = widest_over(table, narrowest, widths);
        if (widest == nullptr) return std::nullopt;
        --*widest;
    }
    return widths;
}

std::string across(const Cells& cells, const std::vector<std::size_t>& widths, const Table& table) {
    std::vector<std::vector<std::string>> columns_of_lines;
    std::size_t height = 0;
    for (std::size_t i = 0; i < widths.size(); ++i) {
        columns_of_lines.push_back(wrapped(cells[i], widths[i]));
        height = std::max(height, columns_of_lines.back().size());
    }
    std::string out;
    for (std::size_t line = 0; line < height; ++line) {
        std::string row;
        for (std::size_t i = 0; i < widths.size(); ++i) {
            const auto& lines = columns_of_lines[i];
            row += filled_up(line < lines.size() ? lines[line] : "", widths[i], table.headers[i].column);
            row += std::string(kBetweenColumns, ' ');
        }
        row.erase(row.find_last_not_of(' ') + 1);
        out += row + "\n";
    }
    return out;
}

std::string beneath(const Row& row, std::size_t page) {
    std::string out;
    for (const Text& line : row.beneath) out += set_in("    ", plain_words(line), page);
    return out;
}

std::string in_columns(const Table& table, const std::vector<std::size_t>& widths, std::size_t page) {
    Cells headers, rules;
    for (std::size_t i = 0; i < widths.size(); ++i) {
        headers.push_back(clean(table.headers[i].text));
        rules.emplace_back(widths[i], '-');
    }
    std::string out = across(headers, widths, table) + across(rules, widths, table);
    for (const Row& row : table.rows)
        out += across(cells_of(row, widths.size()), widths, table) + beneath(row, page);
    return out;
}

std::string row_by_row(const Table& table, std::size_t page) {
    std::string out;
    for (const Row& row : table.rows) {
        const Cells cells = cells_of(row, table.headers.size());
        for (std::size_t i = 0; i < cells.size(); ++i)
            if (!cells[i].empty())
                out += set_in(i == 0 ? "" : "  ", clean(table.headers[i].text) + ": " + cells[i], page);
        out += beneath(row, page);
    }
    return out;
}

} // namespace

std::vector<std::string> wrapped(std::string_view text, std::size_t width) {
    std::vector<std::string> out;
    for (const std::string& line : split(text, '\n')) wrap_line(line, width, out);
    return out;
}

std::string set_in(std::string_view first, std::string_view text, std::size_t width) {
    std::string out;
    const std::string blanks(columns(first), ' ');
    for (const std::string& line : wrapped(text, width - blanks.size())) {
        out += out.empty() ? std::string(first) : blanks;
        out += line + "\n";
    }
    return out;
}

std::string plain_words(const Text& text) {
    std::string out;
    for (const Run& run : text.runs)
        out += run.weight == Weight::struck ? "~" + clean(run.text) + "~" : clean(run.text);
    return out;
}

std::string table_lines(const Table& table, std::size_t width) {
    if (table.headers.empty()) return {};
    const auto widths = fitting_widths(table, width);
    return widths ? in_columns(table, *widths, width) : row_by_row(table, width);
}

} // namespace undersheet::paper
