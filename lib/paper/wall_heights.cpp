#include "paper/wall_heights.h"

#include "job/queries.h"
#include "paper/plan_sheet.h"

#include <algorithm>

namespace undersheet::paper {
namespace {

// In mm on paper; 176 is what A4 leaves between its margins.
constexpr double kHeight = 44;
constexpr double kWallLeft = 16, kRight = 170, kDeck = 36, kTop = 8;
constexpr double kLetter = 3.4, kFigure = 2.8, kAbove = 1.2, kBelow = 4;
constexpr const char* kThreshold = "door_threshold"; // has a limit of its own

struct Height {
    double along_m = 0, mm = 0;
    const job::Reading* reading = nullptr;
};

std::vector<Height> heights_along(const Making& making, const job::Edge& edge, trade::Point from) {
    std::vector<Height> heights;
    for (const job::Reading* reading : job::heights_at(making.job, edge)) {
        const auto at = job::locate(making.job.roof, reading->place);
        if (at) heights.push_back({trade::distance_m(from, *at), *reading->number("height_mm"), reading});
    }
    std::stable_sort(heights.begin(), heights.end(),
                     [](const Height& a, const Height& b) { return a.along_m < b.along_m; });
    return heights;
}

class HeightDrawer {
public:
    HeightDrawer(const Making& making, Drawing& drawing, double length_m, double most_mm)
        : making_(making), drawing_(drawing), length_m_(length_m), most_mm_(most_mm) {}

    void deck(const job::Edge& edge) {
        drawing_.line({kWallLeft, kDeck}, {kRight, kDeck}, Stroke::heavy);
        drawing_.label({kWallLeft, kDeck + kBelow + kLetter}, edge.a, Anchor::middle, kLetter);
        drawing_.label({kRight, kDeck + kBelow + kLetter}, edge.b, Anchor::middle, kLetter);
    }

    void limit(const method::Limit& limit) {
        const double y = up(limit.value);
        drawing_.line({kWallLeft, y}, {kRight, y}, Stroke::dashed);
        const std::string figure = making_.words.number(limit.value, 0);
        drawing_.label({kWallLeft - 1.5, y + kFigure / 3}, figure, Anchor::end, kFigure);
        drawing_.words.push_back(
            making_.say("walls.limit", {{"mm", figure}, {"source", making_.words.text(limit.source)}}));
    }

    void chase(const std::vector<Height>& heights) {
        Path line{{}, false, Stroke::line};
        double room_from = 0; // figures that have no room stand in the words only
        for (const Height& height : heights) {
            const Spot top{right(height.along_m), up(height.mm)};
            line.spots.push_back(top);
            drawing_.line({top.x_mm, kDeck}, top, Stroke::fine);
            const std::string figure = making_.said.bare(*height.reading, "height_mm");
            const double half = width_of(figure, kFigure) / 2 + kAbove;
            drawing_.words.push_back(making_.say(
                "walls.height_at", {{"mm", figure}, {"place", making_.said.place(height.reading->place)}}));
            if (top.x_mm - half < room_from) continue;
            drawing_.label({top.x_mm, top.y_mm - kAbove}, figure, Anchor::middle, kFigure);
            room_from = top.x_mm + half;
        }
        if (line.spots.size() > 1) drawing_.shapes.emplace_back(std::move(line));
    }

private:
    [[nodiscard]] double right(double along_m) const {
        return kWallLeft + (kRight - kWallLeft) * std::clamp(along_m / length_m_, 0.0, 1.0);
    }
    [[nodiscard]] double up(double mm) const {
        return kDeck - (kDeck - kTop) * std::clamp(mm / most_mm_, 0.0, 1.0);
    }

    const Making& making_;
    Drawing& drawing_;
    double length_m_, most_mm_;
};

std::optional<trade::Point> corner_at(const Making& making, const std::string& name) {
    const auto place = entry::parse_place(name);
    return place ? job::locate(making.job.roof, *place) : std::nullopt;
}

} // namespace

std::optional<Drawing> wall_heights(const Making& making, const job::Edge& edge) {
    const auto from = corner_at(making, edge.a), to = corner_at(making, edge.b);
    if (!from || !to) return std::nullopt;
    const auto heights = heights_along(making, edge, *from);
    const double length_m = trade::distance_m(*from, *to);
    if (heights.empty() || length_m <= 0) return std::nullopt;
    const method::Limit* limit =
        making.setting.method.find_limit(edge.abutment == kThreshold ? "threshold_mm" : "chase_height_mm");
    double most_mm = limit == nullptr ? 1 : limit->value;
    for (const Height& height : heights) most_mm = std::max(most_mm, height.mm);
    Drawing drawing{making.say("walls.drawn", {{"edge", edge.name}}), kFullDrawing_mm, kHeight};
    HeightDrawer drawer(making, drawing, length_m, most_mm);
    drawer.deck(edge);
    if (limit != nullptr) drawer.limit(*limit);
    drawer.chase(heights);
    return drawing;
}

} // namespace undersheet::paper
