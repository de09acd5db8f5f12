#include "desk/reckon_places.h"

#include "desk/reckon_topics.h"

namespace undersheet::desk {

trade::Polygon polygon_of(const entry::Value& of) {
    trade::Polygon polygon;
    for (const entry::Value& corner : of.list_of("outline"))
        polygon.push_back({number(corner, "x_m"), number(corner, "y_m")});
    return polygon;
}

trade::Point point_of(const entry::Value& pair) {
    const entry::List& both = *pair.list();
    return {both[0].number()->value(), both[1].number()->value()};
}

} // namespace undersheet::desk
