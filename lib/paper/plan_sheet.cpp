#include "paper/plan_sheet.h"

#include "base/text.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace undersheet::paper {
namespace {

constexpr double kMostHeight_mm = 130, kMostSmall_mm = 100;
constexpr double kSide_mm = 26, kTop_mm = 12, kFoot_mm = 20; // for what stands round the roof
constexpr double kPlanLetterWidth = 0.58;                    // of the size of letters
constexpr double kRingStep = 0.8; // of the size of letters, from one ring of spots to the next
constexpr double kFar_mm = 4;     // from here on a line leads back
constexpr double kUp = 0.3;       // of the size of letters, from the line they stand on to their middle
constexpr std::array<int, 12> kScales{5, 10, 20, 25, 50, 75, 100, 125, 150, 200, 250, 500};

Box bounds_of(const trade::Polygon& outline) {
    Box box{outline[0].x_m, outline[0].y_m, outline[0].x_m, outline[0].y_m};
    for (const auto& corner : outline) {
        box.left_mm = std::min(box.left_mm, corner.x_m);
        box.right_mm = std::max(box.right_mm, corner.x_m);
        box.top_mm = std::min(box.top_mm, corner.y_m);
        box.bottom_mm = std::max(box.bottom_mm, corner.y_m);
    }
    return box;
}

// The largest drawing that fits; a roof too large for all of the row is drawn at a scale of its own.
double scale_for(double wide_m, double high_m, double most_high_mm) {
    const double wide_mm = kFullDrawing_mm - 2 * kSide_mm, high_mm = most_high_mm - kTop_mm - kFoot_mm;
    const double least = std::max(1000 * wide_m / wide_mm, 1000 * high_m / high_mm);
    const auto* found =
        std::find_if(kScales.begin(), kScales.end(), [&](int scale) { return scale >= least; });
    return found == kScales.end() ? std::ceil(least / 100) * 100 : *found;
}

Box box_of(Spot at, double wide_mm, double size_mm, Anchor anchor) {
    double left = at.x_mm;
    if (anchor == Anchor::middle) left -= wide_mm / 2;
    if (anchor == Anchor::end) left -= wide_mm;
    return {left, at.y_mm - size_mm * 0.8, left + wide_mm, at.y_mm + size_mm * 0.25};
}

bool is_within(Spot spot, const Box& box) {
    return box.left_mm < spot.x_mm && spot.x_mm < box.right_mm && box.top_mm < spot.y_mm &&
           spot.y_mm < box.bottom_mm;
}

// The first spot of a line, from its beginning, that is outside of all the boxes; its end if there is none.
template <class Inside>
Spot first_outside(Spot from, Spot to, Inside inside) {
    constexpr int kSteps = 60;
    for (int i = 0; i < kSteps; ++i) {
        const double share = static_cast<double>(i) / kSteps;
        const Spot spot{from.x_mm + (to.x_mm - from.x_mm) * share, from.y_mm + (to.y_mm - from.y_mm) * share};
        if (!inside(spot)) return spot;
    }
    return to;
}

bool do_meet(const Box& a, const Box& b) {
    return a.left_mm < b.right_mm && b.left_mm < a.right_mm && a.top_mm < b.bottom_mm &&
           b.top_mm < a.bottom_mm;
}

// Where a line from afar meets the letters round `middle`.
Spot short_of(Spot middle, Spot from, double half_wide_mm, double half_high_mm) {
    const double x_mm = from.x_mm - middle.x_mm, y_mm = from.y_mm - middle.y_mm;
    const double of_width = x_mm == 0 ? 1 : half_wide_mm / std::fabs(x_mm);
    const double of_height = y_mm == 0 ? 1 : half_high_mm / std::fabs(y_mm);
    const double share = std::min({of_width, of_height, 1.0});
    return {middle.x_mm + x_mm * share, middle.y_mm + y_mm * share};
}

} // namespace

double width_of(const std::string& text, double size_mm) {
    return static_cast<double>(character_count(text)) * size_mm * kPlanLetterWidth;
}

PlanSheet::PlanSheet(Drawing& drawing, const trade::Polygon& outline, bool is_small)
    : drawing_(drawing), outline_(outline) {
    const Box roof = bounds_of(outline);
    const double wide_m = roof.right_mm - roof.left_mm, high_m = roof.bottom_mm - roof.top_mm;
    scale_ = scale_for(wide_m, high_m, is_small ? kMostSmall_mm : kMostHeight_mm);
    height_mm_ = kTop_mm + mm_of(high_m) + kFoot_mm;
    const double left_mm = (kFullDrawing_mm - mm_of(wide_m)) / 2;
    origin_ = {left_mm - mm_of(roof.left_mm), kTop_mm + mm_of(high_m) + mm_of(roof.top_mm)};
    drawing_.width_mm = kFullDrawing_mm;
    drawing_.height_mm = height_mm_;
}

Spot PlanSheet::at(trade::Point point) const {
    return {origin_.x_mm + mm_of(point.x_m), origin_.y_mm - mm_of(point.y_m)};
}

bool PlanSheet::is_on_roof(Spot spot) const {
    return trade::contains(outline_, trade::Point{(spot.x_mm - origin_.x_mm) * scale_ / 1000,
                                                  (origin_.y_mm - spot.y_mm) * scale_ / 1000});
}

bool PlanSheet::is_free(const Box& box) const {
    return std::none_of(taken_.begin(), taken_.end(), [&](const Box& other) { return do_meet(box, other); });
}

void PlanSheet::fixed(Spot at, const std::string& text, Anchor anchor, double size_mm) {
    letters_.push_back(box_of(at, width_of(text, size_mm), size_mm, anchor));
    keep_free(letters_.back());
    drawing_.label(at, text, anchor, size_mm);
}

void PlanSheet::keep_free(Spot from, Spot to) {
    constexpr double kStep_mm = 1.5, kHalf_mm = 0.8;
    const double length_mm = std::hypot(to.x_mm - from.x_mm, to.y_mm - from.y_mm);
    const int steps = std::max(1, static_cast<int>(length_mm / kStep_mm));
    for (int i = 0; i <= steps; ++i) {
        const double x_mm = from.x_mm + (to.x_mm - from.x_mm) * i / steps;
        const double y_mm = from.y_mm + (to.y_mm - from.y_mm) * i / steps;
        keep_free(Box{x_mm - kHalf_mm, y_mm - kHalf_mm, x_mm + kHalf_mm, y_mm + kHalf_mm});
    }
}

Spot PlanSheet::along(const std::vector<Spot>& spots, const std::vector<std::string>& lines, Anchor anchor,
                      double size_mm) {
    const double down_mm = size_mm * 1.25;
    double wide_mm = 0;
    for (const std::string& line : lines) wide_mm = std::max(wide_mm, width_of(line, size_mm));
    const auto found = std::find_if(spots.begin(), spots.end(), [&](Spot spot) {
        Box box = box_of(spot, wide_mm, size_mm, anchor);
        box.bottom_mm += down_mm * static_cast<double>(lines.size() - 1);
        return is_free(box);
    });
    const Spot chosen = found == spots.end() ? spots.front() : *found;
    Spot at = chosen;
    for (const std::string& line : lines) {
        fixed(at, line, anchor, size_mm);
        at.y_mm += down_mm;
    }
    return chosen;
}

// The nearest free spot round a place, going outwards ring by ring.
std::optional<Spot> PlanSheet::spot_round(const Ring& ring, Wanted wanted) const {
    constexpr int kRings = 8, kWays = 12;
    constexpr double kTurn = 2 * 3.14159265358979323846 / kWays;
    for (int i = 0; i <= kRings; ++i) {
        for (int way = 0; way < (i == 0 ? 1 : kWays); ++way) {
            const double off_mm = i * ring.size_mm * kRingStep, wide_mm = i == 0 ? 0 : ring.wide_mm / 4;
            const Spot there{ring.near.x_mm + std::cos(way * kTurn) * (off_mm + wide_mm),
                             ring.near.y_mm + std::sin(way * kTurn) * off_mm};
            if (wanted.on_roof && !is_on_roof(there)) continue;
            if (!is_free(box_of(there, ring.wide_mm, ring.size_mm, Anchor::middle))) continue;
            if (!wanted.leads_clear || !crosses_letters(leader_to(there, ring))) return there;
        }
    }
    return std::nullopt;
}

// A place under other letters is led to from where they end.
PlanSheet::Leader PlanSheet::leader_to(Spot there, const Ring& ring) const {
    const double up_mm = ring.size_mm * kUp;
    const Spot near{ring.near.x_mm, ring.near.y_mm - up_mm}, middle{there.x_mm, there.y_mm - up_mm};
    const double far_mm = std::hypot(middle.x_mm - near.x_mm, middle.y_mm - near.y_mm);
    const Spot to = short_of(middle, near, ring.wide_mm / 2, ring.size_mm / 2);
    const Spot from = first_outside(near, to, [&](Spot spot) {
        return std::any_of(letters_.begin(), letters_.end(),
                           [&](const Box& box) { return is_within(near, box) && is_within(spot, box); });
    });
    return {from, to, far_mm >= kFar_mm + ring.wide_mm / 4};
}

bool PlanSheet::crosses_letters(const Leader& leader) const {
    if (!leader.is_drawn) return false;
    return std::any_of(letters_.begin(), letters_.end(), [&](const Box& box) {
        const Spot met =
            first_outside(leader.from, leader.to, [&](Spot spot) { return !is_within(spot, box); });
        return is_within(met, box);
    });
}

void PlanSheet::placed(Spot near, const std::string& text, double size_mm) {
    const Ring ring{{near.x_mm, near.y_mm + size_mm * kUp}, width_of(text, size_mm), size_mm};
    std::optional<Spot> found;
    for (const Wanted wanted : {Wanted{true, true}, {false, true}, {true, false}, {false, false}})
        if (!found) found = spot_round(ring, wanted);
    const Spot there = found.value_or(ring.near);
    const Leader leader = leader_to(there, ring);
    if (leader.is_drawn) drawing_.line(leader.from, leader.to, Stroke::fine);
    fixed(there, text, Anchor::middle, size_mm);
}

} // namespace undersheet::paper
