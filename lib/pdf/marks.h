// Pages before they are a PDF file: letters, lines and pictures at their places, and what the file says of itself.
//
// Promises: lengths in points (1/72 inch), counted right and down from the top left corner. Everything is black, white or grey.
// Does not: know papers; lib/paper sets them. Does not check that a mark lies on its page; the tests do.
// Threads: plain values.
#pragma once

#include "pdf/font.h"
#include "pdf/picture.h"

#include <variant>

namespace undersheet::pdf {

struct Point {
    double x_pt = 0, y_pt = 0;
};

struct Letters {
    Point at;         // where the line the letters stand on begins
    std::string text; // UTF-8, only characters that the font draws
    Face face = Face::regular;
    double size_pt = 10;
    double grey = 0; // 0 is black, 1 is white
};

struct Path {
    std::vector<Point> points;
    bool is_closed = false;
    double line_pt = 0; // 0 draws no line
    bool is_dashed = false;
    double line_grey = 0;
    bool is_filled = false;
    double fill_grey = 1;
};

struct Shown { // a picture, stretched over this rectangle
    Point corner;
    double width_pt = 0, height_pt = 0;
    std::size_t picture = 0; // of File::pictures
};

using Mark = std::variant<Letters, Path, Shown>;

[[nodiscard]] Mark moved(Mark mark, double right_pt, double down_pt);

struct Page {
    std::vector<Mark> marks;
};

struct Bookmark {
    int level = 1; // one below the last, at most
    std::string title;
    std::size_t page = 0;
    double down_pt = 0;
};

struct File {
    double width_pt = 0, height_pt = 0;
    std::vector<Page> pages;
    std::vector<Bookmark> bookmarks = {};
    std::vector<Picture> pictures = {};
    std::string title = {}, author = {}, subject = {};
    std::string language = {}; // BCP 47
};

} // namespace undersheet::pdf
