#include "job/derive_parts.h"

#include <algorithm>

namespace undersheet::job {
namespace {

using method::Method;
using method::Stage;

class Deriver {
public:
    Deriver(const Roof& roof, const Method& method) : roof_(roof), method_(method) {}

    std::vector<Part> all() {
        for (const Stage& stage : method_.stages()) derive(stage);
        return std::move(parts_);
    }

private:
    void derive(const Stage& stage) {
        if (stage.per == "roof" || stage.per == "job") add(stage, "");
        if (stage.per == "section") {
            for (const Section& section : roof_.sections) add(stage, section.label);
        }
        if (stage.per == "opening") {
            for (const Opening& opening : roof_.openings) add(stage, opening.label);
        }
        if (stage.per.ends_with("_edge")) per_edge(stage);
        if (stage.per == "patch_place") patches(stage);
        if (stage.per == "trim_corner") trim_corners(stage);
    }

    void per_edge(const Stage& stage) {
        for (const Edge& edge : roof_.edges) {
            const bool fits = stage.per == "free_edge" ? edge.is_free() : stage.per == edge.kind + "_edge";
            if (stage.per == "chased_edge")
                chase(stage, edge);
            else if (fits)
                add(stage, edge.name);
        }
    }

    // A wall whose sheet ends without a chase still shows in the list, with the reason why there is none.
    void chase(const Stage& stage, const Edge& edge) {
        if (edge.is_free()) return;
        const auto& chased = method_.chased_abutments();
        const bool needed =
            edge.abutment.empty() || std::find(chased.begin(), chased.end(), edge.abutment) != chased.end();
        Part& part = add(stage, edge.name);
        if (needed) return;
        part.state = State::not_needed;
        part.note = no_chase_at(edge.abutment).text;
    }

    // Where an edge meets a wall, at inner corners, at openings, and wherever a patch record asks for one.
    void patches(const Stage& stage) {
        for (std::size_t i = 0; i < roof_.corners.size(); ++i) {
            const Edge& before = roof_.edges[(i + roof_.edges.size() - 1) % roof_.edges.size()];
            const bool wall = !before.is_free() || !roof_.edges[i].is_free();
            if (wall || roof_.is_inner(roof_.corners[i])) add(stage, roof_.corners[i]);
        }
        for (const Opening& opening : roof_.openings) {
            for (int n = 1; n <= method_.patches_per(opening.type); ++n)
                add(stage, opening.label + "-" + std::to_string(n));
        }
        for (const auto& extra : roof_.extra_patches) {
            const std::string name = stage.name + "/" + extra;
            if (std::none_of(parts_.begin(), parts_.end(),
                             [&](const Part& part) { return part.name == name; }))
                add(stage, extra);
        }
    }

    // A corner piece joins two trims; a wall on either side has none.
    void trim_corners(const Stage& stage) {
        for (std::size_t i = 0; i < roof_.corners.size(); ++i) {
            const Edge& before = roof_.edges[(i + roof_.edges.size() - 1) % roof_.edges.size()];
            if (before.is_free() && roof_.edges[i].is_free()) add(stage, roof_.corners[i]);
        }
    }

    Part& add(const Stage& stage, const std::string& what) {
        Part part;
        part.name = what.empty() ? stage.name : stage.name + "/" + what;
        part.stage = stage.name;
        part.what = what;
        parts_.push_back(std::move(part));
        return parts_.back();
    }

    const Roof& roof_;
    const Method& method_;
    std::vector<Part> parts_;
};

} // namespace

std::vector<Part> derive_parts(const Roof& roof, const Method& method) { return Deriver(roof, method).all(); }

} // namespace undersheet::job
