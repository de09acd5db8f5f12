// The roof as the record knows it: corners, edges, sections, openings, and what touches what.
//
// Promises: the order of corners is followed from the edge records, starting at A; coordinates are there only when the tapes
//   fix them. With no section recorded the whole deck is section 1.
// Does not: judge. Coordinates come from trade/outline. Lengths in metres, A at 0,0 and x along AB.
#pragma once

#include "entry/place.h"
#include "job/worded.h"
#include "trade/outline.h"
#include "trade/polygon.h"

#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace undersheet::job {

struct Edge {
    std::string name, a, b;       // "AB"; see is_called
    std::string kind;             // gutter, kerb, wall
    std::string behind, abutment; // what stands behind it; the type from the abutment record
    [[nodiscard]] bool is_free() const { return kind != "wall"; }
    // Both ways round; `name` is the one it was recorded by, `a` and `b` the way the corners run.
    [[nodiscard]] bool is_called(std::string_view pair) const { return pair == a + b || pair == b + a; }
};

struct Section {
    std::string label;
    std::vector<std::string> edges, holds; // edges touched, openings held
    double order = 0;
    std::vector<trade::Point> outline; // may be empty
};

struct Opening {
    std::string label, type;
    std::optional<trade::Point> at;
    double reach_m = 0; // from its middle to its farther side
};

struct Roof {
    std::vector<std::string> corners; // anticlockwise from A; empty until the edges close
    std::vector<Edge> edges;          // in that order when they close
    std::vector<Section> sections;    // in laying order
    std::vector<Opening> openings;
    std::vector<std::string> extra_patches; // places from patch records
    std::optional<trade::Outline> outline;  // when the tapes fix it
    double near_m = 0;                      // two places this near count as touching (a limit of the method)
    std::string outline_says;               // why there is none: which tape to take next, or what is wrong
    Worded outline_says_as;                 // the same, for another language
    std::map<std::string, std::string> labels; // label -> written place, from the readings that carry one

    [[nodiscard]] bool closed() const { return !corners.empty(); }
    [[nodiscard]] const Edge* edge(std::string_view name) const; // "BA" finds AB
    [[nodiscard]] std::optional<trade::Point> corner_at(std::string_view corner) const;
    [[nodiscard]] std::vector<trade::Point> polygon() const;    // empty without coordinates
    [[nodiscard]] bool is_inner(std::string_view corner) const; // reflex; false without coordinates
};

// Which things of the roof a part or a place has to do with; two that share one of them touch.
struct Footprint {
    std::set<std::string> corners, edges, sections, openings;
    bool everywhere = false;
};
[[nodiscard]] bool touch(const Footprint& a, const Footprint& b);
[[nodiscard]] Footprint footprint_of_part(const Roof& roof, std::string_view part);
[[nodiscard]] Footprint footprint_of_place(const Roof& roof, const entry::Place& place);

// The label before the dash where that is an opening: "R1-1" is the first patch at R1; else "".
[[nodiscard]] std::string opening_of_patch(const Roof& roof, const std::string& what);

// Where a place lies, when coordinates tell. A pair gives its middle.
[[nodiscard]] std::optional<trade::Point> locate(const Roof& roof, const entry::Place& place);
// Metres from the place to the part's edge, corner, opening or section; nothing when either has no coordinates.
[[nodiscard]] std::optional<double> metres_to_part(const Roof& roof, const entry::Place& place,
                                                   std::string_view part);

// A fault when the place names a corner, edge or label this roof does not have (once the edges are recorded).
[[nodiscard]] Done place_is_on(const Roof& roof, const entry::Place& place);

} // namespace undersheet::job
