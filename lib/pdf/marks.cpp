#include "pdf/marks.h"

namespace undersheet::pdf {

Mark moved(Mark mark, double right_pt, double down_pt) {
    const auto move = [&](Point& point) {
        point.x_pt += right_pt;
        point.y_pt += down_pt;
    };
    if (auto* letters = std::get_if<Letters>(&mark)) move(letters->at);
    if (auto* shown = std::get_if<Shown>(&mark)) move(shown->corner);
    if (auto* path = std::get_if<Path>(&mark))
        for (Point& point : path->points) move(point);
    return mark;
}

} // namespace undersheet::pdf
