#include "desk/shape.h"

#include "base/text.h"
#include "trade/polygon.h"

#include <algorithm>
#include <utility>

namespace undersheet::desk {
namespace {

using entry::Place;
using entry::PlaceForm;

constexpr const char* kTakeBack = "withdraw the edge that is wrong first; undersheet history prints its name";

bool is_of_two_corners(const Place& place) {
    return place.form == PlaceForm::pair || place.form == PlaceForm::along;
}

// Kinds that can be anywhere, and tapes, may name a diagonal.
bool speaks_of_edges(const method::Kind& kind) {
    const bool anywhere =
        std::find(kind.places.begin(), kind.places.end(), PlaceForm::line) != kind.places.end();
    return !anywhere && kind.name != "tape";
}

std::vector<std::string> edge_names(const job::Roof& roof) {
    std::vector<std::string> names;
    for (const auto& edge : roof.edges) names.push_back(edge.name);
    return names;
}

std::vector<std::string> edges_at(const job::Roof& roof, const std::string& corner) {
    std::vector<std::string> names;
    for (const auto& edge : roof.edges) {
        if (edge.a == corner || edge.b == corner) names.push_back(edge.name);
    }
    return names;
}

Done edge_fits(const job::Roof& roof, const Place& place) {
    if (roof.edge(place.a + place.b) != nullptr) return {};
    if (roof.closed()) {
        return Fault{Code::outline_crosses,
                     place.a + place.b + " is no edge of this roof, whose corners run " +
                         joined(roof.corners, " "),
                     {},
                     kTakeBack};
    }
    for (const auto& corner : {place.a, place.b}) {
        const auto there = edges_at(roof, corner);
        if (there.size() < 2) continue;
        return Fault{Code::outline_crosses,
                     "corner " + corner + " has the edges " + joined(there, " and ") +
                         "; with a third the outline would cross itself",
                     {},
                     kTakeBack};
    }
    return {};
}

Done lies_on_an_edge(const job::Roof& roof, const Place& place) {
    if (!roof.closed() || roof.edge(place.a + place.b) != nullptr) return {};
    return Fault{Code::place_not_on_roof,
                 place.a + place.b + " is no edge of this roof",
                 {},
                 "it has the edges " + joined(edge_names(roof), " ")};
}

trade::Polygon ground_of(const entry::Value& outline) {
    trade::Polygon ground;
    if (outline.list() == nullptr) return ground;
    for (const auto& corner : *outline.list()) {
        const auto place = entry::parse_place(corner.text() == nullptr ? std::string() : *corner.text());
        if (place) ground.push_back({place->x_m.value(), place->y_m.value()});
    }
    return ground;
}

Done outline_fits(const entry::Value& outline) {
    const auto ground = ground_of(outline);
    if (ground.size() < 3) return {}; // the catalogue says how many it needs
    if (!trade::crossing_edges(ground)) return {};
    return Fault{Code::outline_crosses, "the line through these corners crosses itself", "section outline",
                 "give the corners in order, walking round the section"};
}

} // namespace

Done fits_the_shape(const job::Roof& roof, const method::Kind& kind, const Place& place,
                    const entry::Value& data) {
    if (const auto* outline = kind.name == "section" ? data.find("outline") : nullptr)
        return outline_fits(*outline);
    if (!is_of_two_corners(place)) return {};
    if (kind.name == "edge") return edge_fits(roof, place);
    return speaks_of_edges(kind) ? lies_on_an_edge(roof, place) : Done{};
}

Place named_as_on(const job::Roof& roof, Place place) {
    const auto* edge = place.form == PlaceForm::pair ? roof.edge(place.a + place.b) : nullptr;
    if (edge != nullptr && edge->name != place.a + place.b) std::swap(place.a, place.b);
    return place;
}

} // namespace undersheet::desk
