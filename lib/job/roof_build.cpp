#include "job/roof_build.h"

#include "base/text.h"

#include <algorithm>
#include <utility>

namespace undersheet::job {
namespace {

// "0.5,2.25"
std::optional<trade::Point> point_of(std::string_view text) {
    const auto place = entry::parse_place(text);
    if (!place || place->form != entry::PlaceForm::point) return std::nullopt;
    return trade::Point{place->x_m.value(), place->y_m.value()};
}

std::vector<Edge> edges_from(const std::vector<Reading>& readings) {
    std::vector<Edge> edges;
    for (const Reading& reading : readings) {
        if (reading.kind != "edge" || reading.place.form != entry::PlaceForm::pair) continue;
        edges.push_back({.name = reading.place.a + reading.place.b,
                         .a = reading.place.a,
                         .b = reading.place.b,
                         .kind = reading.word("kind"),
                         .behind = reading.word("behind"),
                         .abutment = {}});
    }
    return edges;
}

// Follows the edges from A until they come back to it; an order only when every edge was used once.
std::vector<Edge> in_order(std::vector<Edge> edges) {
    std::vector<Edge> ordered;
    std::string at = "A";
    for (std::size_t i = 0; i < edges.size(); ++i) {
        const auto next =
            std::find_if(edges.begin(), edges.end(), [&](const Edge& edge) { return edge.a == at; });
        if (next == edges.end()) return {};
        ordered.push_back(*next);
        at = next->b;
        if (at == "A") break;
    }
    return at == "A" && ordered.size() == edges.size() && ordered.size() >= 3 ? ordered : std::vector<Edge>{};
}

// Somebody who walks round a roof may call the last edge AD and not DA: where one edge turned makes them go round, and only
// that one, it is meant so. It keeps the name it was recorded by.
std::vector<Edge> with_one_turned(const std::vector<Edge>& edges) {
    std::vector<Edge> found;
    for (std::size_t i = 0; i < edges.size(); ++i) {
        std::vector<Edge> tried = edges;
        std::swap(tried[i].a, tried[i].b);
        tried = in_order(std::move(tried));
        if (tried.empty()) continue;
        if (!found.empty()) return {};
        found = std::move(tried);
    }
    return found;
}

void add_abutments(Roof& roof, const std::vector<Reading>& readings) {
    for (const Reading& reading : readings) {
        if (reading.kind != "abutment") continue;
        for (Edge& edge : roof.edges) {
            if (edge.is_called(reading.place.a + reading.place.b)) edge.abutment = reading.word("type");
        }
    }
}

Section section_from(const Reading& reading) {
    Section section{.label = reading.label,
                    .edges = reading.data.texts_of("edges"),
                    .holds = reading.data.texts_of("holds"),
                    .order = reading.number("order").value_or(0),
                    .outline = {}};
    for (const auto& corner : reading.data.texts_of("outline")) {
        if (const auto point = point_of(corner)) section.outline.push_back(*point);
    }
    return section;
}

std::vector<Section> sections_from(const std::vector<Reading>& readings) {
    std::vector<Section> sections;
    for (const Reading& reading : readings) {
        if (reading.kind == "section") sections.push_back(section_from(reading));
    }
    std::stable_sort(sections.begin(), sections.end(),
                     [](const Section& a, const Section& b) { return a.order < b.order; });
    return sections;
}

std::vector<Opening> openings_from(const std::vector<Reading>& readings) {
    std::vector<Opening> openings;
    for (const Reading& reading : readings) {
        if (reading.kind != "opening") continue;
        Opening opening{.label = reading.label, .type = reading.word("type"), .at = {}};
        opening.reach_m =
            std::max(reading.number("size_x_mm").value_or(0), reading.number("size_y_mm").value_or(0)) / 2000;
        if (reading.place.form == entry::PlaceForm::point) {
            opening.at = trade::Point{reading.place.x_m.value(), reading.place.y_m.value()};
        }
        openings.push_back(std::move(opening));
    }
    return openings;
}

// With no section recorded the whole deck is laid as one: it touches every edge and holds every opening.
Section whole_deck(const Roof& roof) {
    Section section{.label = "1", .edges = {}, .holds = {}, .order = 1, .outline = {}};
    for (const Edge& edge : roof.edges) section.edges.push_back(edge.name);
    for (const Opening& opening : roof.openings) section.holds.push_back(opening.label);
    return section;
}

void add_labels(Roof& roof, const std::vector<Reading>& readings) {
    for (const Reading& reading : readings) {
        if (reading.label.empty() || reading.place.form == entry::PlaceForm::nowhere) continue;
        if (reading.place.form == entry::PlaceForm::label) continue;
        roof.labels.try_emplace(reading.label, entry::place_text(reading.place));
    }
}

// The computation counts its tapes; a person knows them by their corners.
Worded tapes_meant(const std::string& where, const std::vector<trade::TapedLength>& tapes) {
    for (std::size_t i = 0; i < tapes.size(); ++i) {
        if (!where.starts_with("tapes[" + std::to_string(i) + "]")) continue;
        return worded("the tape {pair}", {{"pair", typed(tapes[i].from + tapes[i].to)}});
    }
    return where;
}

void say_why(Roof& roof, const Fault& fault, const std::vector<trade::TapedLength>& tapes) {
    Fault meant = fault;
    if (fault.where == "tapes") meant.where.clear(); // all of them: what is said round it has named them
    const Worded where = tapes_meant(fault.where, tapes);
    if (!meant.where.empty()) meant.where = where.text;
    roof.outline_says_as = fault_worded(meant, where);
    roof.outline_says = roof.outline_says_as.text;
}

void solve_outline(Roof& roof, const std::vector<Reading>& readings, const method::Method& method) {
    trade::OutlineInput in{.corners = roof.corners, .tapes = {}, .sd_mm = method.limit("tape_sd_mm")};
    for (const Reading& reading : readings) {
        if (reading.kind != "tape") continue;
        const auto m = reading.number("m");
        if (!m) continue;
        in.tapes.push_back({.from = reading.place.a, .to = reading.place.b, .m = *m, .sd_mm = {}});
    }
    if (roof.corners.empty() || in.tapes.empty()) return;
    auto solved = trade::outline(in);
    if (solved)
        roof.outline = *std::move(solved);
    else
        say_why(roof, solved.fault(), in.tapes);
}

} // namespace

Roof build_roof(const std::vector<Reading>& readings, const method::Method& method) {
    Roof roof;
    roof.near_m = method.limit("place_near_m");
    roof.edges = edges_from(readings);
    auto ordered = in_order(roof.edges);
    if (ordered.empty()) ordered = with_one_turned(roof.edges);
    if (!ordered.empty()) {
        roof.edges = std::move(ordered);
        for (const Edge& edge : roof.edges) roof.corners.push_back(edge.a);
    }
    add_abutments(roof, readings);
    roof.openings = openings_from(readings);
    roof.sections = sections_from(readings);
    if (roof.sections.empty()) roof.sections.push_back(whole_deck(roof));
    for (const Reading& reading : readings) {
        if (reading.kind != "patch") continue;
        roof.extra_patches.push_back(reading.label.empty() ? entry::place_text(reading.place)
                                                           : reading.label);
    }
    add_labels(roof, readings);
    solve_outline(roof, readings, method);
    return roof;
}

} // namespace undersheet::job
