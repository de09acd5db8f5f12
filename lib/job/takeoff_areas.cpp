// The areas each adhesive goes on, as lines of the take-off.
#include "base/text.h"
#include "job/takeoff_making.h"

namespace undersheet::job {
namespace {

trade::EdgeUse use_of(const CountedEdge& edge) {
    if (edge.kind == "wall") return trade::EdgeUse::wall;
    return edge.kind == "gutter" ? trade::EdgeUse::gutter : trade::EdgeUse::kerb;
}

trade::AreasInput areas_input(const Making& making) {
    trade::AreasInput in{.outline = making.roof.outline,
                         .edges = {},
                         .widths = {.band_mm = making.rate("band_mm"),
                                    .gutter_mm = making.rate("contact_gutter_mm"),
                                    .kerb_mm = making.rate("contact_kerb_mm"),
                                    .wall_mm = making.rate("contact_wall_mm")}};
    for (const CountedEdge& edge : making.roof.edges) in.edges.push_back(use_of(edge));
    for (const CountedOpening& opening : making.roof.openings) {
        if (stands_on_curb(opening.type))
            in.kerbed.push_back({opening.size_x_mm, opening.size_y_mm, opening.upstand_mm});
        else
            in.squares_mm.push_back(making.rate(opening.type + "_square_mm"));
    }
    return in;
}

struct AreaRow {
    const char *name, *title, *unit;
    double amount;
    Working working;
    std::vector<std::string_view> keys = {};
};

std::string strip(double length_m, const Making& making, std::string_view key) {
    return in_words(length_m, "m") + " x " + shortest(making.rate(key), 1) + " mm";
}

std::size_t inner_count(const trade::Polygon& outline) {
    std::size_t inner = 0;
    for (const double angle : trade::angles_deg(outline)) inner += angle > 180 ? 1 : 0;
    return inner;
}

Working band_working(const Making& making) {
    const std::size_t inner = inner_count(making.roof.outline);
    return {strip(making.made.areas.perimeter_m, making, "band_mm") + ", less what " +
            counted(making.roof.outline.size() - inner, "outer corner counts", "outer corners count") +
            " twice, and what " + counted(inner, "inner one leaves", "inner ones leave") + " out"};
}

std::vector<AreaRow> area_rows(const Making& making) {
    const trade::Areas& a = making.made.areas;
    return {
        {"deck", "deck", "m2", a.deck_m2, {"from the taped outline, corners on whole mm"}},
        {"perimeter", "all edges", "m", a.perimeter_m, {}},
        {"gutter_edges", "gutter edges", "m", a.gutter_m, {}},
        {"kerb_edges", "kerb edges", "m", a.kerb_m, {}},
        {"wall_edges", "wall edges", "m", a.wall_m, {}},
        {"band", "band", "m2", a.band_m2, band_working(making), {"band_mm"}},
        {"rings",
         "rings round rooflights",
         "m2",
         a.rings_m2,
         {"the band's width on all four sides"},
         {"band_mm"}},
        {"squares",
         "squares of outlets and pipes",
         "m2",
         a.squares_m2,
         {},
         {"outlet_square_mm", "pipe_square_mm", "flue_square_mm"}},
        {"field",
         "field",
         "m2",
         a.field_m2,
         {in_words(a.deck_m2, "m2") + " - band " + in_words(a.band_m2, "m2") + " = " +
              in_words(a.inside_m2, "m2"),
          "- openings " + in_words(a.holes_m2, "m2") + " - rings " + in_words(a.rings_m2, "m2") +
              " - squares " + in_words(a.squares_m2, "m2")}},
        {"wall_strips",
         "strips up the walls",
         "m2",
         a.walls_m2,
         {strip(a.wall_m, making, "contact_wall_mm")},
         {"contact_wall_mm"}},
        {"upstands", "upstands of rooflights", "m2", a.upstands_m2, {"girth x height recorded"}},
        {"gutter_strips",
         "strips over the gutter plates",
         "m2",
         a.gutters_m2,
         {strip(a.gutter_m, making, "contact_gutter_mm")},
         {"contact_gutter_mm"}},
        {"kerb_strips",
         "strips over the kerbs",
         "m2",
         a.kerbs_m2,
         {strip(a.kerb_m, making, "contact_kerb_mm")},
         {"contact_kerb_mm"}},
        {"contact",
         "contact adhesive, one face",
         "m2",
         a.contact_m2,
         {"band + rings + squares + walls + upstands + gutter plates + kerbs"}},
    };
}

} // namespace

Done add_areas(Making& making) {
    auto found = trade::areas(areas_input(making));
    if (!found) return found.fault();
    making.made.areas = *found;
    for (AreaRow& row : area_rows(making)) {
        making.made.lines.push_back({.section = "areas",
                                     .name = row.name,
                                     .title = row.title,
                                     .amount = in_millionths(row.amount),
                                     .unit = row.unit,
                                     .working = std::move(row.working),
                                     .allowances = making.rows(row.keys)});
    }
    return {};
}

} // namespace undersheet::job
