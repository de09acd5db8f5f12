#include "job/roof.h"

#include "base/text.h"

#include <algorithm>

namespace undersheet::job {
namespace {

using entry::Place;
using entry::PlaceForm;
using trade::Point;

bool shares(const std::set<std::string>& a, const std::set<std::string>& b) {
    return std::any_of(a.begin(), a.end(), [&](const std::string& item) { return b.contains(item); });
}

Footprint of_edge(const Edge& edge) {
    return {.corners = {edge.a, edge.b}, .edges = {edge.name}, .sections = {}, .openings = {}};
}

Footprint of_corner(const Roof& roof, const std::string& corner) {
    Footprint print{.corners = {corner}, .edges = {}, .sections = {}, .openings = {}};
    for (const Edge& edge : roof.edges) {
        if (edge.a == corner || edge.b == corner) print.edges.insert(edge.name);
    }
    return print;
}

Footprint of_section(const Section& section) {
    return {.corners = {},
            .edges = {section.edges.begin(), section.edges.end()},
            .sections = {section.label},
            .openings = {section.holds.begin(), section.holds.end()}};
}

Footprint of_opening(const Roof& roof, const std::string& label) {
    Footprint print{.corners = {}, .edges = {}, .sections = {}, .openings = {label}};
    for (const Section& section : roof.sections) {
        if (std::find(section.holds.begin(), section.holds.end(), label) != section.holds.end())
            print.sections.insert(section.label);
    }
    return print;
}

Footprint of_point(const Roof& roof, Point point) {
    Footprint print;
    for (const Edge& edge : roof.edges) {
        const auto a = roof.corner_at(edge.a);
        const auto b = roof.corner_at(edge.b);
        if (a && b && trade::distance_m(trade::Segment{*a, *b}, point) <= roof.near_m)
            print.edges.insert(edge.name);
    }
    for (const Section& section : roof.sections) {
        if (section.outline.empty() || trade::contains(section.outline, point, roof.near_m))
            print.sections.insert(section.label);
    }
    for (const Opening& opening : roof.openings) {
        if (opening.at && trade::distance_m(*opening.at, point) <= opening.reach_m + roof.near_m)
            print.openings.insert(opening.label);
    }
    return print;
}

Footprint of_label(const Roof& roof, const std::string& label) {
    const auto is_it = [&](const auto& thing) { return thing.label == label; };
    if (std::any_of(roof.openings.begin(), roof.openings.end(), is_it)) return of_opening(roof, label);
    const auto section = std::find_if(roof.sections.begin(), roof.sections.end(), is_it);
    if (section != roof.sections.end()) return of_section(*section);
    const auto written = roof.labels.find(label);
    if (written == roof.labels.end())
        return {.corners = {}, .edges = {}, .sections = {}, .openings = {}, .everywhere = true};
    const auto place = entry::parse_place(written->second);
    return place ? footprint_of_place(roof, *place) : Footprint{};
}

Footprint merged(Footprint a, const Footprint& b) {
    a.corners.insert(b.corners.begin(), b.corners.end());
    a.edges.insert(b.edges.begin(), b.edges.end());
    a.sections.insert(b.sections.begin(), b.sections.end());
    a.openings.insert(b.openings.begin(), b.openings.end());
    a.everywhere = a.everywhere || b.everywhere;
    return a;
}

std::optional<Point> place_point(const Place& place) { return Point{place.x_m.value(), place.y_m.value()}; }

Fault not_on_roof(const std::string& what, const Roof& roof) {
    std::vector<std::string> names;
    for (const Edge& edge : roof.edges) names.push_back(edge.name);
    return {Code::place_not_on_roof, what, {}, "this roof has the edges " + joined(names, " ")};
}

bool has_corner(const Roof& roof, const std::string& corner) {
    return std::find(roof.corners.begin(), roof.corners.end(), corner) != roof.corners.end();
}

} // namespace

const Edge* Roof::edge(std::string_view name) const {
    const auto found =
        std::find_if(edges.begin(), edges.end(), [&](const Edge& e) { return e.is_called(name); });
    return found == edges.end() ? nullptr : &*found;
}

std::optional<Point> Roof::corner_at(std::string_view corner) const {
    if (!outline) return std::nullopt;
    for (const auto& known : outline->corners) {
        if (known.label == corner) return Point{known.x_m, known.y_m};
    }
    return std::nullopt;
}

std::vector<Point> Roof::polygon() const { return outline ? trade::polygon(*outline) : std::vector<Point>{}; }

bool Roof::is_inner(std::string_view corner) const {
    if (!outline) return false;
    for (std::size_t i = 0; i < outline->corners.size(); ++i) {
        if (outline->corners[i].label == corner) return outline->angles_deg[i] > 180;
    }
    return false;
}

std::string opening_of_patch(const Roof& roof, const std::string& what) {
    const auto dash = what.rfind('-');
    if (dash == std::string::npos) return {};
    const std::string label = what.substr(0, dash);
    const bool known = std::any_of(roof.openings.begin(), roof.openings.end(),
                                   [&](const Opening& o) { return o.label == label; });
    return known ? label : std::string();
}

bool touch(const Footprint& a, const Footprint& b) {
    if (a.everywhere || b.everywhere) return true;
    return shares(a.corners, b.corners) || shares(a.edges, b.edges) || shares(a.sections, b.sections) ||
           shares(a.openings, b.openings);
}

Footprint footprint_of_part(const Roof& roof, std::string_view part) {
    const auto slash = part.find('/');
    if (slash == std::string_view::npos)
        return {.corners = {}, .edges = {}, .sections = {}, .openings = {}, .everywhere = true};
    const std::string stage(part.substr(0, slash));
    const std::string what(part.substr(slash + 1));
    if (stage == "field") return of_label(roof, what);
    if (const Edge* edge = roof.edge(what)) return of_edge(*edge);
    if (has_corner(roof, what)) return of_corner(roof, what);
    if (const std::string opening = opening_of_patch(roof, what); !opening.empty())
        return of_opening(roof, opening);
    return of_label(roof, what);
}

Footprint footprint_of_place(const Roof& roof, const Place& place) {
    switch (place.form) {
    case PlaceForm::nowhere:
        return {.corners = {}, .edges = {}, .sections = {}, .openings = {}, .everywhere = true};
    case PlaceForm::corner:
        return of_corner(roof, place.a);
    case PlaceForm::pair:
    case PlaceForm::along: {
        const Edge* edge = roof.edge(place.a + place.b);
        if (edge == nullptr) return merged(of_corner(roof, place.a), of_corner(roof, place.b));
        Footprint print{.corners = {}, .edges = {edge->name}, .sections = {}, .openings = {}};
        for (const Section& section : roof.sections) {
            if (std::find(section.edges.begin(), section.edges.end(), edge->name) != section.edges.end())
                print.sections.insert(section.label);
        }
        return print;
    }
    case PlaceForm::point:
        return of_point(roof, *place_point(place));
    case PlaceForm::line:
        return merged(of_point(roof, *place_point(place)),
                      of_point(roof, {place.x2_m.value(), place.y2_m.value()}));
    case PlaceForm::label:
        return of_label(roof, place.a);
    case PlaceForm::joint:
        return merged(of_label(roof, place.a), of_label(roof, place.b));
    }
    return {};
}

std::optional<Point> locate(const Roof& roof, const Place& place) {
    if (place.form == PlaceForm::point || place.form == PlaceForm::line) return place_point(place);
    if (place.form == PlaceForm::corner) return roof.corner_at(place.a);
    if (place.form == PlaceForm::label) {
        for (const Opening& opening : roof.openings) {
            if (opening.label == place.a && opening.at) return opening.at;
        }
        const auto written = roof.labels.find(place.a);
        const auto labelled =
            written == roof.labels.end() ? entry::parse_place("") : entry::parse_place(written->second);
        return labelled && labelled->form != PlaceForm::label ? locate(roof, *labelled) : std::nullopt;
    }
    const auto a = roof.corner_at(place.a);
    const auto b = roof.corner_at(place.b);
    if (!a || !b) return std::nullopt;
    const trade::Segment edge{*a, *b};
    const double length = trade::length_m(edge);
    const double share = place.form == PlaceForm::along && length > 0 ? place.x_m.value() / length : 0.5;
    return trade::point_along(edge, share);
}

std::optional<double> metres_to_part(const Roof& roof, const Place& place, std::string_view part) {
    const auto point = locate(roof, place);
    const auto slash = part.find('/');
    if (!point || slash == std::string_view::npos) return std::nullopt;
    const std::string what(part.substr(slash + 1));
    if (part.substr(0, slash) == "field") {
        for (const Section& section : roof.sections) {
            const auto ground = section.outline.empty() ? roof.polygon() : section.outline;
            if (section.label != what || ground.empty()) continue;
            return trade::contains(ground, *point) ? 0.0 : trade::distance_to_edges_m(ground, *point);
        }
        return std::nullopt;
    }
    if (const Edge* edge = roof.edge(what)) {
        const auto a = roof.corner_at(edge->a);
        const auto b = roof.corner_at(edge->b);
        return a && b ? std::optional(trade::distance_m(trade::Segment{*a, *b}, *point)) : std::nullopt;
    }
    const std::string opening = opening_of_patch(roof, what);
    const auto target = entry::parse_place(opening.empty() ? what : opening);
    const auto there = target ? locate(roof, *target) : std::nullopt;
    return there ? std::optional(trade::distance_m(*there, *point)) : std::nullopt;
}

Done place_is_on(const Roof& roof, const Place& place) {
    if (!roof.closed()) return {};
    const bool corners =
        place.form == PlaceForm::corner || place.form == PlaceForm::pair || place.form == PlaceForm::along;
    if (corners && !has_corner(roof, place.a)) return not_on_roof("this roof has no corner " + place.a, roof);
    if (corners && !place.b.empty() && !has_corner(roof, place.b))
        return not_on_roof("this roof has no corner " + place.b, roof);
    if (place.form == PlaceForm::along) {
        const auto a = roof.corner_at(place.a);
        const auto b = roof.corner_at(place.b);
        if (a && b && place.x_m.value() > trade::distance_m(*a, *b) + roof.near_m) {
            return not_on_roof("edge " + place.a + place.b + " is only " +
                                   fixed(trade::distance_m(*a, *b), 2) + " m long",
                               roof);
        }
    }
    const auto ground = roof.polygon();
    if (place.form == PlaceForm::point && !ground.empty() &&
        !trade::contains(ground, *place_point(place), roof.near_m)) {
        return not_on_roof("the point " + entry::place_text(place) + " lies off this roof", roof);
    }
    return {};
}

} // namespace undersheet::job
