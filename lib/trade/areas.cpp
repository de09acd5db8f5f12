#include "trade/areas.h"

#include "trade/field_check.h"

#include <cmath>
#include <string>

namespace undersheet::trade {
namespace {

constexpr double kMost_mm = 100'000;
constexpr double kMm2_a_m2 = 1e6;

double to_whole_mm(double m) { return std::round(m * 1000) / 1000; }

// Sums of decimals are not exact in binary; a mm² is finer than anybody cuts.
double to_whole_mm2(double m2) { return std::round(m2 * kMm2_a_m2) / kMm2_a_m2; }

double product_m2(double a_mm, double b_mm) { return a_mm * b_mm / kMm2_a_m2; }

std::string row(const char* list, std::size_t index) { return list + ("[" + std::to_string(index) + "]"); }

std::optional<Fault> wrong_opening(const AreasInput& in) {
    FieldCheck check;
    for (std::size_t i = 0; i < in.kerbed.size(); ++i) {
        const std::string at = row("kerbed", i);
        check.above(at + ".size_x_mm", in.kerbed[i].size_x_mm, 0, kMost_mm)
            .above(at + ".size_y_mm", in.kerbed[i].size_y_mm, 0, kMost_mm)
            .between(at + ".upstand_mm", in.kerbed[i].upstand_mm, 0, kMost_mm);
    }
    for (std::size_t i = 0; i < in.squares_mm.size(); ++i)
        check.above(row("squares_mm", i), in.squares_mm[i], 0, kMost_mm);
    return check.fault();
}

std::optional<Fault> wrong_width(const StripWidths& widths) {
    return FieldCheck()
        .between("band_mm", widths.band_mm, 0, kMost_mm)
        .between("gutter_mm", widths.gutter_mm, 0, kMost_mm)
        .between("kerb_mm", widths.kerb_mm, 0, kMost_mm)
        .between("wall_mm", widths.wall_mm, 0, kMost_mm)
        .fault();
}

Done check(const AreasInput& in) {
    if (auto done = check_outline(in.outline); !done) return done;
    if (in.edges.size() != in.outline.size())
        return impossible("edges", "there is not one use for each edge", "give one an edge, from AB");
    if (const auto wrong = wrong_opening(in)) return *wrong;
    if (const auto wrong = wrong_width(in.widths)) return *wrong;
    return {};
}

double& length_of(Areas& areas, EdgeUse use) {
    if (use == EdgeUse::wall) return areas.wall_m;
    return use == EdgeUse::gutter ? areas.gutter_m : areas.kerb_m;
}

void add_edges(Areas& areas, const Polygon& outline, const std::vector<EdgeUse>& uses) {
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const double length_m = static_cast<double>(length_mm(edge(outline, i))) / 1000;
        areas.perimeter_m += length_m;
        length_of(areas, uses[i]) += length_m;
    }
    for (double* sum : {&areas.perimeter_m, &areas.gutter_m, &areas.kerb_m, &areas.wall_m})
        *sum = to_whole_mm(*sum);
}

void add_openings(Areas& areas, const AreasInput& in) {
    const double ring_mm = 2 * in.widths.band_mm;
    for (const Kerbed& opening : in.kerbed) {
        const double hole_m2 = product_m2(opening.size_x_mm, opening.size_y_mm);
        areas.holes_m2 += hole_m2;
        areas.rings_m2 += product_m2(opening.size_x_mm + ring_mm, opening.size_y_mm + ring_mm) - hole_m2;
        areas.upstands_m2 += product_m2(2 * (opening.size_x_mm + opening.size_y_mm), opening.upstand_mm);
    }
    for (const double side_mm : in.squares_mm) areas.squares_m2 += product_m2(side_mm, side_mm);
}

void add_strips(Areas& areas, const StripWidths& widths) {
    areas.gutters_m2 = areas.gutter_m * widths.gutter_mm / 1000;
    areas.kerbs_m2 = areas.kerb_m * widths.kerb_mm / 1000;
    areas.walls_m2 = areas.wall_m * widths.wall_mm / 1000;
}

void add_sums(Areas& areas) {
    areas.inside_m2 = areas.deck_m2 - areas.band_m2;
    areas.field_m2 = areas.inside_m2 - areas.holes_m2 - areas.rings_m2 - areas.squares_m2;
    areas.contact_m2 = areas.band_m2 + areas.rings_m2 + areas.squares_m2 + areas.walls_m2 +
                       areas.upstands_m2 + areas.gutters_m2 + areas.kerbs_m2;
}

void round_all(Areas& areas) {
    for (double* area : {&areas.deck_m2, &areas.band_m2, &areas.inside_m2, &areas.holes_m2, &areas.rings_m2,
                         &areas.squares_m2, &areas.field_m2, &areas.gutters_m2, &areas.kerbs_m2,
                         &areas.walls_m2, &areas.upstands_m2, &areas.contact_m2})
        *area = to_whole_mm2(*area);
}

} // namespace

std::int64_t length_mm(const Segment& segment) { return std::llround(length_m(segment) * 1000); }

Polygon in_whole_mm(const Polygon& outline) {
    Polygon whole;
    for (const Point corner : outline) whole.push_back({to_whole_mm(corner.x_m), to_whole_mm(corner.y_m)});
    return whole;
}

Result<Areas> areas(const AreasInput& in) {
    if (auto done = check(in); !done) return done.fault();
    const Polygon outline = in_whole_mm(in.outline);
    const auto band_m2 = band_area_m2(outline, in.widths.band_mm / 1000);
    if (!band_m2) return band_m2.fault();
    Areas found;
    found.deck_m2 = area_m2(outline);
    found.band_m2 = *band_m2;
    add_edges(found, outline, in.edges);
    add_openings(found, in);
    add_strips(found, in.widths);
    add_sums(found);
    round_all(found);
    if (found.field_m2 >= 0) return found;
    return impossible("kerbed", "the openings take more than the deck has inside its band",
                      "look at their sizes");
}

} // namespace undersheet::trade
