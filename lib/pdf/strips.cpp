#include "pdf/strips.h"

#include <algorithm>

namespace undersheet::pdf {
namespace {

// Of the size: how far below the middle of its line a letter stands, so that capitals are in the middle; where a struck line runs.
constexpr double kDrop = 0.32, kStrike = 0.25, kStrikeLine = 0.06;

Strip set_line(const Line& line, Style style, double left_pt) {
    Strip strip{style.leading_pt};
    const double base_pt = style.leading_pt / 2 + kDrop * style.size_pt;
    double x_pt = left_pt;
    for (const Run& run : line.runs) {
        const double wide_pt = font(run.face).width_pt(run.text, style.size_pt);
        strip.marks.emplace_back(Letters{{x_pt, base_pt}, run.text, run.face, style.size_pt, run.grey});
        if (run.is_struck)
            strip.marks.emplace_back(rule(x_pt, x_pt + wide_pt, base_pt - kStrike * style.size_pt,
                                          kStrikeLine * style.size_pt, run.grey));
        x_pt += wide_pt;
    }
    return strip;
}

void lay_over(Strip& under, const Strip& over, double left_pt, double down_pt) {
    for (const Mark& mark : over.marks) under.marks.push_back(moved(mark, left_pt, down_pt));
    under.height_pt = std::max(under.height_pt, down_pt + over.height_pt);
}

} // namespace

Strips set_lines(const std::vector<Run>& runs, Style style, double width_pt, Align align) {
    Strips strips;
    for (const Line& line : broken(runs, style.size_pt, width_pt))
        strips.push_back(set_line(line, style, align == Align::right ? width_pt - line.width_pt : 0));
    return strips;
}

Strips beside(const std::vector<Beside>& columns, double most_pt) {
    Strip whole;
    std::size_t rows = 0;
    for (const Beside& column : columns) {
        lay_over(whole, joined(column.strips), column.left_pt, 0);
        rows = std::max(rows, column.strips.size());
    }
    if (whole.height_pt <= most_pt) return rows == 0 ? Strips() : Strips{std::move(whole)};
    Strips strips(rows);
    for (std::size_t row = 0; row < rows; ++row)
        for (const Beside& column : columns)
            if (row < column.strips.size()) lay_over(strips[row], column.strips[row], column.left_pt, 0);
    return strips;
}

double height_of(const Strips& strips) {
    double height_pt = 0;
    for (const Strip& strip : strips) height_pt += strip.height_pt;
    return height_pt;
}

Strip joined(const Strips& strips) {
    Strip one;
    for (const Strip& strip : strips) lay_over(one, strip, 0, one.height_pt);
    return one;
}

void add(Strips& to, Strips more) {
    for (Strip& strip : more) to.push_back(std::move(strip));
}

Strip gap(double height_pt) { return {height_pt}; }

Path rule(double left_pt, double right_pt, double down_pt, double line_pt, double grey) {
    return {{{left_pt, down_pt}, {right_pt, down_pt}}, false, line_pt, false, grey};
}

} // namespace undersheet::pdf
