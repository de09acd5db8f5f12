#include "paper/pdf_setter.h"

#include "base/text.h"

#include <algorithm>

namespace undersheet::paper {

using namespace style;

namespace {

// The whole picture, as large as its column and its height allow.
pdf::Strip picture_strip(const pdf::Picture& picture, std::size_t at, double column_pt) {
    const double wide = picture.shown_width(), high = picture.shown_height();
    const double scale = std::min(column_pt / wide, kPictureHeight_pt / high);
    pdf::Strip strip{high * scale};
    strip.marks.emplace_back(pdf::Shown{{0, 0}, wide * scale, high * scale, at});
    return strip;
}

pdf::Strips figure(PdfSetter& setter, const Photograph& photograph, double column_pt) {
    pdf::Strips strips;
    std::string caption = photograph.caption;
    if (const auto at = setter.picture_of(photograph)) {
        strips.push_back(picture_strip(setter.pictures[*at], *at, column_pt));
        strips.push_back(pdf::gap(3));
    } else {
        caption += " " + setter.words.say(photograph.bytes.empty() ? "photograph.elsewhere"
                                                                   : "photograph.not_drawn");
    }
    pdf::add(strips, setter.lines(caption, kSmall, column_pt));
    return strips;
}

constexpr double kLine_mm = 0.25, kFine_mm = 0.12, kHeavy_mm = 0.7; // as html_style.cpp has them

double line_mm(Stroke stroke) {
    switch (stroke) {
    case Stroke::none:
        return 0;
    case Stroke::fine:
        return kFine_mm;
    case Stroke::heavy:
        return kHeavy_mm;
    case Stroke::line:
    case Stroke::dashed:
        break;
    }
    return kLine_mm;
}

double grey_of(Fill fill) { return fill == Fill::ink ? 0 : fill == Fill::tint ? kTint : 1; }

struct ShapeMarks {
    PdfSetter& setter;
    double scale; // points for one mm of the drawing
    pdf::Strip& strip;

    void operator()(const Path& path) const {
        pdf::Path drawn;
        for (const Spot& spot : path.spots) drawn.points.push_back({spot.x_mm * scale, spot.y_mm * scale});
        drawn.is_closed = path.is_closed;
        drawn.line_pt = line_mm(path.stroke) * kPt;
        drawn.line_grey = kInk;
        drawn.is_dashed = path.stroke == Stroke::dashed;
        drawn.is_filled = path.fill != Fill::none;
        drawn.fill_grey = grey_of(path.fill);
        strip.marks.emplace_back(std::move(drawn));
    }
    void operator()(const Label& label) const {
        const std::string text = setter.printable(label.text);
        const double size_pt = label.size_mm * scale;
        const double wide_pt = pdf::font(pdf::Face::regular).width_pt(text, size_pt);
        const double back = label.anchor == Anchor::end ? 1 : label.anchor == Anchor::middle ? 0.5 : 0;
        strip.marks.emplace_back(pdf::Letters{{label.at.x_mm * scale - back * wide_pt, label.at.y_mm * scale},
                                              text,
                                              pdf::Face::regular,
                                              size_pt,
                                              kInk});
    }
};

} // namespace

pdf::Strips picture_strips(PdfSetter& setter, const std::vector<Photograph>& taken, std::size_t across) {
    const double column_pt =
        (kWidth_pt - kColumnGap_pt * static_cast<double>(across - 1)) / static_cast<double>(across);
    pdf::Strips rows;
    for (std::size_t first = 0; first < taken.size(); first += across) {
        std::vector<pdf::Beside> columns;
        for (std::size_t i = first; i < std::min(first + across, taken.size()); ++i)
            columns.push_back({static_cast<double>(i - first) * (column_pt + kColumnGap_pt),
                               figure(setter, taken[i], column_pt)});
        if (!rows.empty()) rows.push_back(pdf::gap(8));
        pdf::add(rows, pdf::beside(columns, kMostWhole_pt));
    }
    return rows;
}

void set_drawing(PdfSetter& setter, const Drawing& drawing) {
    const double wide_pt = drawing.width_mm * kPt, high_pt = drawing.height_mm * kPt;
    const double fits =
        std::min({1.0, kWidth_pt / std::max(wide_pt, 1.0), kMostWhole_pt / std::max(high_pt, 1.0)});
    pdf::Strip strip{high_pt * fits};
    for (const Shape& shape : drawing.shapes) std::visit(ShapeMarks{setter, kPt * fits, strip}, shape);
    // A small one, a code to read, stays with the words that say what it is for.
    if (drawing.width_mm <= kSmallDrawing_mm && !setter.story.groups.empty())
        setter.story.groups.back().keeps_next = true;
    pdf::Group group;
    group.strips.push_back(std::move(strip));
    if (!drawing.words
             .empty()) // one run of text: the drawing has shown it, and should not leave the page for it
        pdf::add(group.strips, setter.lines(joined(drawing.words, "; "), kSmall, kWidth_pt));
    group.before_pt = kBlock_pt;
    setter.add(std::move(group));
}

} // namespace undersheet::paper
