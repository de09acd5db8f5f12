#include "job/takeoff_roof.h"

#include "base/text.h"
#include "trade/areas.h"

#include <algorithm>

namespace undersheet::job {
namespace {

// What is missing, and how it is recorded.
struct Lack {
    Worded what;
    std::string record;
};
using Lacks = std::vector<Lack>;

Fault too_thin(const Lacks& lacks) {
    std::vector<Worded> what;
    std::vector<std::string> record;
    for (const Lack& lack : lacks) {
        what.push_back(lack.what);
        if (std::find(record.begin(), record.end(), lack.record) == record.end())
            record.push_back(lack.record);
    }
    const Worded all = worded("the record lacks {things}", {{"things", worded_list(what)}});
    return {Code::record_too_thin, all.text, "take-off", "undersheet record " + joined(record, "; "), all};
}

bool counts(const Job& job, const std::string& name) {
    const Part* part = job.part(name);
    return part != nullptr && part->is_called_for();
}

bool is_known_kind(const std::string& kind) { return kind == "gutter" || kind == "kerb" || kind == "wall"; }

// Corners that an edge should leave from (or come to) and none does.
std::vector<std::string> loose_corners(const std::vector<Edge>& edges, std::string Edge::*from,
                                       std::string Edge::*to) {
    std::vector<std::string> loose;
    for (const Edge& edge : edges) {
        const auto goes_on = [&](const Edge& other) { return other.*from == edge.*to; };
        if (std::none_of(edges.begin(), edges.end(), goes_on)) loose.push_back(edge.*to);
    }
    return loose;
}

Worded corners_worded(const std::vector<std::string>& corners) {
    std::vector<Worded> all;
    for (const std::string& corner : corners) all.push_back(typed(corner));
    if (all.empty()) return typed("A");
    return all.size() == 2 ? worded("{all} and {next}", {{"all", all[0]}, {"next", all[1]}})
                           : worded_list(all);
}

void open_edges(const Roof& roof, Lacks& lacks) {
    if (roof.edges.empty()) {
        lacks.push_back({"every edge", "edge kind=gutter --at AB"});
        return;
    }
    const auto ends = loose_corners(roof.edges, &Edge::a, &Edge::b);
    const auto starts = loose_corners(roof.edges, &Edge::b, &Edge::a);
    if (ends.size() == 1 && starts.size() == 1) {
        const std::string name = ends.front() + starts.front();
        lacks.push_back({worded("the edge {edge}", {{"edge", typed(name)}}), "edge kind=wall --at " + name});
        return;
    }
    lacks.push_back({worded("edges that go round from A to A: they are loose at {corners}",
                            {{"corners", corners_worded(ends)}}),
                     "edge kind=wall --at …"});
}

void edge_kinds(const Roof& roof, Lacks& lacks) {
    for (const Edge& edge : roof.edges) {
        if (is_known_kind(edge.kind)) continue;
        lacks.push_back({worded("what edge {edge} is: gutter, kerb or wall", {{"edge", typed(edge.name)}}),
                         "edge kind=gutter --at " + edge.name});
    }
}

void outline(const Roof& roof, Lacks& lacks) {
    if (roof.outline || !roof.closed()) return;
    const Worded why = roof.outline_says.empty() ? Worded("an outline: there is no tape")
                                                 : worded("an outline: the tapes do not fix it, {why}",
                                                          {{"why", roof.outline_says_as}});
    lacks.push_back({why, "tape m=… --at AB"});
}

struct SizeAsked {
    const char *field, *of;
};
constexpr SizeAsked kSizes[] = {{"size_x_mm", "size_x_mm of {opening}"},
                                {"size_y_mm", "size_y_mm of {opening}"},
                                {"upstand_mm", "upstand_mm of {opening}"}};

void size(const Reading& opening, const SizeAsked& asked, Lacks& lacks) {
    if (opening.number(asked.field)) return;
    lacks.push_back({worded(asked.of, {{"opening", typed(opening.label)}}),
                     "opening label=" + opening.label + " " + asked.field + "=…"});
}

void openings(const Job& job, Lacks& lacks) {
    for (const Reading* opening : job.all("opening")) {
        if (opening->word("type").empty() || opening->not_looked("type"))
            lacks.push_back({worded("what the opening {opening} is", {{"opening", typed(opening->label)}}),
                             "opening label=" + opening->label + " type=rooflight"});
        if (!stands_on_curb(opening->word("type"))) continue;
        for (const SizeAsked& asked : kSizes) size(*opening, asked, lacks);
    }
}

Lacks lacks_of(const Job& job) {
    Lacks lacks;
    if (!job.roof.closed()) open_edges(job.roof, lacks);
    edge_kinds(job.roof, lacks);
    outline(job.roof, lacks);
    openings(job, lacks);
    return lacks;
}

std::set<std::string> work_along(const Job& job, const std::string& edge) {
    std::set<std::string> work;
    for (const Part& part : job.parts) {
        if (part.what == edge && part.is_called_for()) work.insert(part.stage);
    }
    return work;
}

std::vector<CountedEdge> edges_of(const Job& job, const trade::Polygon& outline) {
    std::vector<CountedEdge> edges;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Edge& edge = job.roof.edges[i];
        edges.push_back({.name = edge.name,
                         .kind = edge.kind,
                         .length_mm = trade::length_mm(trade::edge(outline, i)),
                         .is_slope = edge.abutment == "pitched_roof",
                         .work = work_along(job, edge.name)});
    }
    return edges;
}

// Who supplies it is free text; nothing said, or "us", is us.
bool is_ours(const Reading& opening) {
    const std::string by = lower_ascii(opening.word("supplied_by"));
    return by.empty() || by == "us";
}

std::vector<CountedOpening> openings_of(const Job& job) {
    std::vector<CountedOpening> openings;
    for (const Reading* opening : job.all("opening")) {
        openings.push_back({.label = opening->label,
                            .type = opening->word("type"),
                            .size_x_mm = opening->number("size_x_mm").value_or(0),
                            .size_y_mm = opening->number("size_y_mm").value_or(0),
                            .upstand_mm = opening->number("upstand_mm").value_or(0),
                            .is_ours = is_ours(*opening),
                            .is_done_by_us = counts(job, "openings/" + opening->label)});
    }
    return openings;
}

bool is_at_opening(const Roof& roof, const std::string& what) {
    return std::any_of(roof.openings.begin(), roof.openings.end(),
                       [&](const Opening& opening) { return what.starts_with(opening.label + "-"); });
}

PatchSort sort_of(const Roof& roof, const std::string& what) {
    const bool corner = std::find(roof.corners.begin(), roof.corners.end(), what) != roof.corners.end();
    if (corner) return roof.is_inner(what) ? PatchSort::inner : PatchSort::wall;
    return is_at_opening(roof, what) ? PatchSort::opening : PatchSort::extra;
}

std::vector<CountedPatch> patches_of(const Job& job) {
    std::vector<CountedPatch> patches;
    for (const Part& part : job.parts) {
        if (part.stage == "patches" && part.is_called_for())
            patches.push_back({part.what, sort_of(job.roof, part.what)});
    }
    return patches;
}

void count_corners(const Job& job, CountedRoof& counted) {
    const auto& edges = job.roof.edges;
    for (std::size_t i = 0; i < edges.size(); ++i) {
        const Edge& before = edges[(i + edges.size() - 1) % edges.size()];
        const std::string& corner = edges[i].a;
        if (before.is_free() != edges[i].is_free()) counted.stop_ends.push_back(corner);
        if (!counts(job, "corners/" + corner)) continue;
        (job.roof.is_inner(corner) ? counted.inner_corners : counted.outer_corners).push_back(corner);
    }
}

} // namespace

double metres_of(const CountedRoof& roof, const std::string& stage) {
    std::int64_t mm = 0;
    for (const CountedEdge& edge : roof.edges) mm += edge.has(stage) ? edge.length_mm : 0;
    return static_cast<double>(mm) / 1000;
}

bool stands_on_curb(std::string_view opening_type) { return opening_type == "rooflight"; }

Result<CountedRoof> counted_roof(const Job& job) {
    if (const Lacks lacks = lacks_of(job); !lacks.empty()) return too_thin(lacks);
    CountedRoof counted;
    counted.outline = trade::in_whole_mm(job.roof.polygon());
    counted.edges = edges_of(job, counted.outline);
    counted.openings = openings_of(job);
    counted.patches = patches_of(job);
    count_corners(job, counted);
    return counted;
}

} // namespace undersheet::job
