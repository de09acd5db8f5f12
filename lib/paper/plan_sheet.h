// The sheet a plan is drawn on: where a point of the roof lies on paper, and room for labels that do not cover one another.
//
// Promises: the largest scale of the usual row at which the roof fits; a label is moved off what stands there already, and a
//   fine line leads back to its place when it had to go far, across no letters where there is a way round them. One that finds no room is drawn where it belongs all the same.
// Does not: know a roof. Threads: plain values.
#pragma once

#include "paper/drawing.h"
#include "trade/polygon.h"

namespace undersheet::paper {

struct Box { // on paper, in mm
    double left_mm = 0, top_mm = 0, right_mm = 0, bottom_mm = 0;
};

class PlanSheet {
public:
    // The roof's outline decides the scale and the height of the drawing.
    PlanSheet(Drawing& drawing, const trade::Polygon& outline, bool is_small);

    [[nodiscard]] Spot at(trade::Point point) const;
    [[nodiscard]] bool is_on_roof(Spot spot) const;
    [[nodiscard]] double scale() const { return scale_; } // 50 for 1:50
    [[nodiscard]] double mm_of(double metres) const { return 1000 * metres / scale_; }
    [[nodiscard]] double height_mm() const { return height_mm_; } // with the lines under the roof

    // A label that stands where it is told to, and one that makes way, on the roof rather than beside it.
    void fixed(Spot at, const std::string& text, Anchor anchor, double size_mm);
    void placed(Spot near, const std::string& text, double size_mm);
    // A label for a line: at the first of these spots where it covers nothing, else at the first; gives which.
    Spot along(const std::vector<Spot>& spots, const std::vector<std::string>& lines, Anchor anchor,
               double size_mm);
    [[nodiscard]] bool is_free(const Box& box) const;
    void keep_free(const Box& box) { taken_.push_back(box); }
    void keep_free(Spot from, Spot to); // a line

private:
    struct Leader { // from the place to its letters
        Spot from = {}, to = {};
        bool is_drawn = false;
    };
    struct Ring {
        Spot near = {};
        double wide_mm = 0, size_mm = 0;
    };
    struct Wanted {
        bool on_roof = true, leads_clear = true;
    };
    [[nodiscard]] std::optional<Spot> spot_round(const Ring& ring, Wanted wanted) const;
    [[nodiscard]] Leader leader_to(Spot there, const Ring& ring) const;
    [[nodiscard]] bool crosses_letters(const Leader& leader) const;

    Drawing& drawing_;
    const trade::Polygon& outline_;
    double scale_ = 0, height_mm_ = 0;
    Spot origin_ = {};                           // of the roof's 0,0
    std::vector<Box> taken_ = {}, letters_ = {}; // the second are among the first
};

[[nodiscard]] double width_of(const std::string& text, double size_mm); // about, in the middling of fonts

} // namespace undersheet::paper
