// Places on a plan as the topics take them: {"x_m", "y_m"}, and [x, y].
#pragma once

#include "entry/value.h"
#include "trade/polygon.h"

namespace undersheet::desk {

[[nodiscard]] trade::Polygon polygon_of(const entry::Value& of); // its member "outline"
[[nodiscard]] trade::Point point_of(const entry::Value& pair);   // [x, y]

} // namespace undersheet::desk
