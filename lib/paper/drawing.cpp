#include "paper/drawing.h"

#include <utility>

namespace undersheet::paper {

Drawing& Drawing::rectangle(Spot corner, double width, double height, Stroke stroke, Fill fill) {
    const double right = corner.x_mm + width, bottom = corner.y_mm + height;
    shapes.emplace_back(
        Path{{corner, {right, corner.y_mm}, {right, bottom}, {corner.x_mm, bottom}}, true, stroke, fill});
    return *this;
}

Drawing& Drawing::line(Spot from, Spot to, Stroke stroke) {
    shapes.emplace_back(Path{{from, to}, false, stroke, Fill::none});
    return *this;
}

Drawing& Drawing::label(Spot at, std::string text, Anchor anchor, double size_mm) {
    shapes.emplace_back(Label{at, std::move(text), anchor, size_mm});
    return *this;
}

} // namespace undersheet::paper
