#include "paper/svg.h"

#include "base/decimal.h"
#include "base/text.h"

namespace undersheet::paper {
namespace {

std::string mm(double value) { return shortest(value, 2); }

std::string points(const std::vector<Spot>& spots) {
    std::vector<std::string> pairs;
    for (const Spot& spot : spots) pairs.push_back(mm(spot.x_mm) + "," + mm(spot.y_mm));
    return joined(pairs, " ");
}

Literal stroke_class(Stroke stroke) {
    switch (stroke) {
    case Stroke::none:
        return Literal(" class=\"no-line");
    case Stroke::fine:
        return Literal(" class=\"fine");
    case Stroke::heavy:
        return Literal(" class=\"heavy");
    case Stroke::dashed:
        return Literal(" class=\"dashed");
    case Stroke::line:
        break;
    }
    return Literal(" class=\"line");
}

Literal fill_class(Fill fill) {
    switch (fill) {
    case Fill::tint:
        return Literal(" tint\"");
    case Fill::ink:
        return Literal(" ink\"");
    case Fill::paper:
        return Literal(" paper\"");
    case Fill::none:
        break;
    }
    return Literal("\"");
}

Literal anchor_name(Anchor anchor) {
    switch (anchor) {
    case Anchor::middle:
        return Literal(" text-anchor=\"middle\"");
    case Anchor::end:
        return Literal(" text-anchor=\"end\"");
    case Anchor::start:
        break;
    }
    return Literal("");
}

struct ShapeMarkup {
    Markup operator()(const Path& path) const {
        Markup out;
        out.raw(path.is_closed ? Literal("<polygon") : Literal("<polyline")).raw(stroke_class(path.stroke));
        out.raw(fill_class(path.fill));
        return out.attribute("points", points(path.spots)).raw("/>\n");
    }
    Markup operator()(const Label& label) const {
        Markup out;
        out.raw("<text").attribute("x", mm(label.at.x_mm)).attribute("y", mm(label.at.y_mm));
        out.attribute("font-size", mm(label.size_mm)).raw(anchor_name(label.anchor)).raw(">");
        return out.text(label.text).raw("</text>\n");
    }
};

} // namespace

Markup svg(const Drawing& drawing) {
    Markup out;
    out.raw("<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\"");
    out.attribute("viewBox", "0 0 " + mm(drawing.width_mm) + " " + mm(drawing.height_mm));
    out.attribute("aria-label", drawing.title + ". " + joined(drawing.words, "; ")).raw(">\n");
    for (const Shape& shape : drawing.shapes) out.add(std::visit(ShapeMarkup{}, shape));
    return out.raw("</svg>\n");
}

} // namespace undersheet::paper
