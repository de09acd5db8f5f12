// How wide the columns of a table are, by what stands in them.
//
// Promises: together exactly as wide as asked. A column of figures is as wide as its widest figure and a word is not broken, as long as
//   there is room for that; what is left over is shared out by how much stands in each column.
// Threads: pure function.
#pragma once

#include "paper/document.h"
#include "pdf/lines.h"

namespace undersheet::paper {

struct ColumnNeed {
    double whole_pt = 0; // nothing broken
    double least_pt = 0; // only between words; a column of figures is not broken at all
};

[[nodiscard]] std::vector<double> column_widths(const std::vector<ColumnNeed>& needs, double width_pt);

} // namespace undersheet::paper
