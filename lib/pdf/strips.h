// Strips: what lies one under the other on a page and is never cut through: a line of text, a row of a table, a row of pictures.
//
// Promises: what was set goes on in the order it was given; nothing is moved out of its column.
// Threads: pure functions.
#pragma once

#include "pdf/lines.h"
#include "pdf/marks.h"

namespace undersheet::pdf {

struct Strip {
    double height_pt = 0;
    std::vector<Mark> marks = {}; // from the strip's own top left corner
};
using Strips = std::vector<Strip>;

struct Style {
    double size_pt = 10;
    double leading_pt = 13; // from one line to the next
};
enum class Align { left, right };

[[nodiscard]] Strips set_lines(const std::vector<Run>& runs, Style style, double width_pt,
                               Align align = Align::left);

struct Beside {
    double left_pt = 0;
    Strips strips;
};
// Columns side by side, their tops level. One strip when it is no higher than `most_pt`; else one for each line, so that it can go on
// overleaf.
[[nodiscard]] Strips beside(const std::vector<Beside>& columns, double most_pt);

[[nodiscard]] double height_of(const Strips& strips);
[[nodiscard]] Strip joined(const Strips& strips); // as one that is not cut through
void add(Strips& to, Strips more);
[[nodiscard]] Strip gap(double height_pt);
[[nodiscard]] Path rule(double left_pt, double right_pt, double down_pt, double line_pt, double grey);

} // namespace undersheet::pdf
