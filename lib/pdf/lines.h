// Running text broken into lines of a width.
//
// Promises: no line is wider than asked, unless a single letter is; a word too long for its line is broken rather than cut off; a line
//   break somebody typed stays one; blanks at the end of a line are dropped, and several beside one another are one. No letter is lost.
// Threads: pure functions.
#pragma once

#include "pdf/font.h"

namespace undersheet::pdf {

struct Run {
    std::string text; // UTF-8, only characters that the font draws; '\n' breaks the line
    Face face = Face::regular;
    double grey = 0;
    bool is_struck = false;
};

struct Line {
    std::vector<Run> runs;
    double width_pt = 0;
};

[[nodiscard]] std::vector<Line> broken(const std::vector<Run>& runs, double size_pt, double width_pt);

// How wide the text is where nothing breaks it but its own line breaks, and how wide its longest word is.
struct Widths {
    double whole_pt = 0, word_pt = 0;
};
[[nodiscard]] Widths widths_of(const std::vector<Run>& runs, double size_pt);

} // namespace undersheet::pdf
