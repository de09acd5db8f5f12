#include "paper/pdf_columns.h"
#include "paper/pdf_setter.h"

#include <algorithm>

namespace undersheet::paper {

using namespace style;

namespace {

struct Place {
    double left_pt = 0, width_pt = 0;
};

const Look& look_of(std::size_t column) { return column == 0 ? kRowName : kCell; }

ColumnNeed need_of(PdfSetter& setter, const Table& table, std::size_t column) {
    const Header& header = table.headers[column];
    const pdf::Widths name = pdf::widths_of(setter.runs(header.text, kColumn), kColumn.style.size_pt);
    ColumnNeed need{name.whole_pt, name.word_pt};
    for (const Row& row : table.rows) {
        if (column >= row.cells.size()) continue;
        const Look& look = look_of(column);
        const pdf::Widths cell = pdf::widths_of(setter.runs(row.cells[column], look), look.style.size_pt);
        need.whole_pt = std::max(need.whole_pt, cell.whole_pt);
        need.least_pt =
            std::max(need.least_pt, header.column == Column::figures ? cell.whole_pt : cell.word_pt);
    }
    return need;
}

std::vector<Place> places_of(PdfSetter& setter, const Table& table) {
    const std::size_t count = table.headers.size();
    std::vector<ColumnNeed> needs;
    for (std::size_t i = 0; i < count; ++i) needs.push_back(need_of(setter, table, i));
    // With very many columns the gaps give way before the words do.
    const double gap_pt = std::min(kColumnGap_pt, kWidth_pt / static_cast<double>(count) / 4);
    std::vector<Place> places;
    double left_pt = 0;
    for (const double width_pt : column_widths(needs, kWidth_pt - gap_pt * static_cast<double>(count - 1))) {
        places.push_back({left_pt, width_pt});
        left_pt += width_pt + gap_pt;
    }
    return places;
}

pdf::Strip line_under(double grey) {
    pdf::Strip strip = pdf::gap(kCellAir_pt);
    strip.marks.emplace_back(pdf::rule(0, kWidth_pt, kCellAir_pt, kHair_pt, grey));
    return strip;
}

pdf::Strips header_strips(PdfSetter& setter, const Table& table, const std::vector<Place>& places) {
    std::vector<pdf::Beside> cells;
    std::size_t most = 0;
    for (std::size_t i = 0; i < table.headers.size(); ++i) {
        const bool is_figures = table.headers[i].column == Column::figures;
        cells.push_back({places[i].left_pt, setter.lines(table.headers[i].text, kColumn, places[i].width_pt,
                                                         is_figures ? pdf::Align::right : pdf::Align::left)});
        most = std::max(most, cells.back().strips.size());
    }
    // Short headers stand level with the last line of the long ones.
    for (pdf::Beside& cell : cells)
        cell.strips.insert(cell.strips.begin(), most - cell.strips.size(),
                           pdf::gap(kColumn.style.leading_pt));
    pdf::Strips strips = pdf::beside(cells, kMostWhole_pt);
    strips.push_back(line_under(kQuiet));
    return kept_together(std::move(strips));
}

pdf::Strips row_strips(PdfSetter& setter, const Table& table, const Row& row,
                       const std::vector<Place>& places) {
    std::vector<pdf::Beside> cells;
    for (std::size_t i = 0; i < std::min(places.size(), row.cells.size()); ++i) {
        const bool is_figures = table.headers[i].column == Column::figures;
        cells.push_back({places[i].left_pt, setter.lines(row.cells[i], look_of(i), places[i].width_pt,
                                                         is_figures ? pdf::Align::right : pdf::Align::left)});
    }
    pdf::Strips strips{pdf::gap(kCellAir_pt)};
    pdf::add(strips, pdf::beside(cells, kMostWhole_pt));
    if (!row.beneath.empty()) strips.push_back(pdf::gap(1.5));
    for (const Text& line : row.beneath)
        pdf::add(strips,
                 pdf::beside({{kIndent_pt, setter.lines(line, kBeneath, kWidth_pt - kIndent_pt)}}, 0));
    strips.push_back(line_under(kLine));
    return kept_together(std::move(strips));
}

} // namespace

void set_table(PdfSetter& setter, const Table& table) {
    if (!table.caption.empty()) {
        pdf::Group caption{setter.lines(table.caption, kQuietBody, kWidth_pt), kBlock_pt};
        caption.keeps_next = true;
        setter.add(std::move(caption));
    }
    if (table.headers.empty()) return;
    const std::vector<Place> places = places_of(setter, table);
    pdf::Group header{header_strips(setter, table, places), table.caption.empty() ? kBlock_pt : 3};
    header.keeps_next = !table.rows.empty();
    // A header that would fill the page overleaf is not said again there.
    std::optional<std::size_t> again;
    if (height_of(header.strips) <= kMostWhole_pt / 2) {
        again = setter.story.headers.size();
        setter.story.headers.push_back(header.strips);
    }
    setter.add(std::move(header));
    for (const Row& row : table.rows) {
        pdf::Group group{row_strips(setter, table, row, places)};
        group.header = again;
        setter.add(std::move(group));
    }
}

} // namespace undersheet::paper
