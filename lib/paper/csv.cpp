#include "paper/csv.h"

#include "paper/clean.h"
#include "paper/head.h"

#include <algorithm>

namespace undersheet::paper {
namespace {

using Fields = std::vector<std::string>;

bool is_csv_number(std::string_view text) {
    return text.find_first_not_of("0123456789.,+-") == std::string_view::npos &&
           text.find_first_of("+-", 1) == std::string_view::npos &&
           text.find_first_of("0123456789") != std::string_view::npos;
}

// What spreadsheets take for the beginning of a formula.
bool is_formula(std::string_view text) {
    return !text.empty() && std::string_view("=+-@\t\r").find(text.front()) != std::string_view::npos &&
           !is_csv_number(text);
}

std::string field(const std::string& text) {
    const std::string safe = (is_formula(text) ? "'" : "") + text;
    if (safe.find_first_of(",;\"\r\n") == std::string::npos) return safe;
    std::string quoted = "\"";
    for (const char c : safe) quoted += c == '"' ? "\"\"" : std::string(1, c);
    return quoted + "\"";
}

std::string name_of(const Table& table, const std::string& heading) {
    return table.caption.empty() ? heading : clean(table.caption);
}

void add_table(std::vector<Fields>& lines, const Table& table, const std::string& name) {
    Fields& head = lines.emplace_back(Fields{name});
    for (const Header& header : table.headers) head.push_back(clean(header.text));
    for (const Row& row : table.rows) {
        Fields& line = lines.emplace_back(Fields{name});
        for (const Text& cell : row.cells) line.push_back(clean(cell.words()));
        for (const Text& beneath : row.beneath) lines.push_back({name, clean(beneath.words())});
    }
}

void add_facts(std::vector<Fields>& lines, const std::vector<Fact>& facts, const std::string& name) {
    for (const Fact& fact : facts) lines.push_back({name, clean(fact.name), clean(fact.value.words())});
}

std::vector<Fields> lines_of(const Document& document, const Words& words) {
    std::vector<Fields> lines;
    add_facts(lines, head_facts(document.head, words), clean(document.head.name));
    std::string heading = document.head.name;
    for (const Block& block : document.blocks) {
        if (const auto* title = std::get_if<Heading>(&block)) heading = clean(title->text);
        if (const auto* facts = std::get_if<Facts>(&block)) add_facts(lines, facts->rows, heading);
        if (const auto* listing = std::get_if<Listing>(&block))
            for (const Text& point : listing->points) lines.push_back({heading, clean(point.words())});
        if (const auto* table = std::get_if<Table>(&block))
            add_table(lines, *table, name_of(*table, heading));
    }
    return lines;
}

} // namespace

std::string render_csv(const Document& document, const Words& words) {
    auto lines = lines_of(document, words);
    std::size_t widest = 1;
    for (const Fields& line : lines) widest = std::max(widest, line.size());
    std::string out = "\xEF\xBB\xBF";
    for (Fields& line : lines) {
        line.resize(widest);
        for (std::size_t i = 0; i < widest; ++i) out += (i == 0 ? "" : ",") + field(line[i]);
        out += "\r\n";
    }
    return out;
}

} // namespace undersheet::paper
