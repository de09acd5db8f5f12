// A drawing before it is SVG or a page: lines and labels, in mm on paper.
//
// Promises: a drawing says in words what it shows, line by line; whoever cannot see it, and whoever reads plain text, misses nothing.
// Does not: know what is drawn, or any colour: what is different is drawn with another line and has a label.
// Threads: plain values.
#pragma once

#include <string>
#include <variant>
#include <vector>

namespace undersheet::paper {

struct Spot { // right and down from the top left corner
    double x_mm = 0, y_mm = 0;
};

enum class Stroke { none, fine, line, heavy, dashed };
enum class Fill { none, tint, ink, paper }; // of a small drawing, a code, black and white in any light

struct Path {
    std::vector<Spot> spots;
    bool is_closed = false;
    Stroke stroke = Stroke::line;
    Fill fill = Fill::none;
};

enum class Anchor { start, middle, end };

struct Label {
    Spot at; // on the line the letters stand on
    std::string text;
    Anchor anchor = Anchor::start;
    double size_mm = 3;
};

using Shape = std::variant<Path, Label>;

// As wide as what A4 leaves between its margins.
inline constexpr double kFullDrawing_mm = 176;

// A drawing as narrow as this is shown as large as it is, not as wide as the page.
inline constexpr double kSmallDrawing_mm = 60;

struct Drawing {
    std::string title;
    double width_mm = 0, height_mm = 0;
    std::vector<Shape> shapes = {};
    std::vector<std::string> words = {};

    Drawing& rectangle(Spot corner, double width_mm, double height_mm, Stroke stroke = Stroke::line,
                       Fill fill = Fill::none);
    Drawing& line(Spot from, Spot to, Stroke stroke = Stroke::line);
    Drawing& label(Spot at, std::string text, Anchor anchor = Anchor::start, double size_mm = 3);
};

} // namespace undersheet::paper
