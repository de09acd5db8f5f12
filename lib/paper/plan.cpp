#include "paper/plan.h"

#include "base/text.h"
#include "job/queries.h"
#include "paper/deck_sections.h"
#include "paper/plan_sheet.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace undersheet::paper {
namespace {

using trade::Point;

constexpr double kLetter_mm = 4, kWord_mm = 3, kSmall_mm = 2.6; // sizes of letters
constexpr std::array kLabelOut_mm{3.4, 7.0, 10.6, 14.2, 17.8};  // from an edge to its label
constexpr double kInner_mm =
    6; // from a corner that points inwards to its letter: more room for the edges' own lines
constexpr double kOut_mm = 1.6;                      // from an edge to what is drawn along it
constexpr double kHatchStep_mm = 3.2, kHatch_mm = 2; // the strokes behind a wall
constexpr double kArrow_mm = 22, kNorth_mm = 6, kHead_mm = 3;
constexpr double kDegree = 3.14159265358979323846 / 180;

struct Way { // of length 1
    double x = 0, y = 0;
};

Way way(Spot from, Spot to) {
    const double length = std::hypot(to.x_mm - from.x_mm, to.y_mm - from.y_mm);
    return length == 0 ? Way{1, 0} : Way{(to.x_mm - from.x_mm) / length, (to.y_mm - from.y_mm) / length};
}
Spot moved(Spot from, Way along, double mm) { return {from.x_mm + along.x * mm, from.y_mm + along.y * mm}; }
// Outwards, to the right of an edge as it is walked; on paper down is positive.
Way outwards(Way along) { return {-along.y, along.x}; }
double apart(Spot a, Spot b) { return std::hypot(b.x_mm - a.x_mm, b.y_mm - a.y_mm); }

class PlanDrawer {
public:
    PlanDrawer(const Making& making, Drawing& drawing, const trade::Polygon& outline, bool is_small)
        : making_(making), roof_(making.job.roof), drawing_(drawing), outline_(outline),
          sheet_(drawing, outline, is_small) {}

    void draw(const PlanAbout& about) {
        for (const PlanShape& shape : about.shapes) make_room(shape); // before any letter is placed
        sections();
        openings();
        corners();
        edges();
        for (const PlanShape& shape : about.shapes) dashed(shape);
        scale_bar(about.note);
        north();
        for (const PlanMark& mark : about.marks) {
            sheet_.placed(sheet_.at(mark.at), mark.text, kWord_mm);
            drawing_.words.push_back(mark.says);
        }
        if (about.has_falls) falls(); // last: where on the roof it stands says nothing
        if (!about.says_all) drawing_.words = {making_.say("plan.said_above")};
    }

private:
    [[nodiscard]] Spot corner(std::size_t i) const { return sheet_.at(outline_[i % outline_.size()]); }

    void polygon(const trade::Polygon& points, Stroke stroke, Fill fill) {
        Path path{{}, true, stroke, fill};
        for (const Point& point : points) path.spots.push_back(sheet_.at(point));
        drawing_.shapes.emplace_back(std::move(path));
    }

    void make_room(const PlanShape& shape) {
        const std::size_t lines = shape.is_closed ? shape.points.size() : shape.points.size() - 1;
        for (std::size_t i = 0; i < lines; ++i)
            sheet_.keep_free(sheet_.at(shape.points[i]),
                             sheet_.at(shape.points[(i + 1) % shape.points.size()]));
    }

    void dashed(const PlanShape& shape) {
        Path path{{}, shape.is_closed, Stroke::dashed, Fill::none};
        for (const Point& point : shape.points) path.spots.push_back(sheet_.at(point));
        drawing_.shapes.emplace_back(std::move(path));
        if (!shape.says.empty()) drawing_.words.push_back(shape.says);
    }

    // One section is the deck itself and needs no line.
    void sections() {
        polygon(outline_, Stroke::none, Fill::tint);
        if (roof_.sections.size() < 2) return;
        for (const job::Section& section : roof_.sections) {
            if (section.outline.size() < 3) continue;
            polygon(section.outline, Stroke::fine, Fill::none);
            for (std::size_t i = 0; i < section.outline.size(); ++i) {
                const auto line = trade::edge(section.outline, i);
                sheet_.keep_free(sheet_.at(line.from), sheet_.at(line.to));
            }
            const std::string says = making_.say("plan.section", {{"label", section.label}});
            sheet_.placed(sheet_.at(trade::centre(section.outline)), says, kSmall_mm);
            drawing_.words.push_back(says);
        }
    }

    void openings() {
        for (const job::Reading* opening : making_.job.all("opening")) {
            const auto at = job::locate(roof_, opening->place);
            if (!at) continue;
            const double x_m =
                opening->number("size_x_mm").value_or(opening->number("bore_mm").value_or(0)) / 1000;
            const double y_m =
                opening->number("size_y_mm").value_or(opening->number("bore_mm").value_or(0)) / 1000;
            box({at->x_m - x_m / 2, at->y_m + y_m / 2}, sheet_.mm_of(x_m), sheet_.mm_of(y_m));
            const std::string type = making_.said.value(*opening, "type");
            const std::string says = opening->label + (type.empty() ? "" : " " + type);
            sheet_.placed(sheet_.at(*at), says, kSmall_mm);
            drawing_.words.push_back(says + ": " + making_.said.place(opening->place));
        }
    }

    void box(Point upper_left, double wide_mm, double high_mm) {
        const Spot a = sheet_.at(upper_left), c{a.x_mm + wide_mm, a.y_mm + high_mm};
        drawing_.rectangle(a, wide_mm, high_mm, Stroke::line, Fill::paper);
        const Spot b{c.x_mm, a.y_mm}, d{a.x_mm, c.y_mm};
        for (const auto& [from, to] : {std::pair{a, b}, {b, c}, {c, d}, {d, a}}) sheet_.keep_free(from, to);
    }

    void edges() {
        for (std::size_t i = 0; i < outline_.size(); ++i) {
            const std::string name = roof_.corners[i] + roof_.corners[(i + 1) % roof_.corners.size()];
            const job::Edge* edge = roof_.edge(name);
            draw_edge(corner(i), corner(i + 1), edge == nullptr ? "" : edge->kind);
            label_edge(i, name, edge == nullptr ? "" : edge->kind);
        }
    }

    // A gutter has a second line before it, a wall has strokes behind it, a kerb is a double line.
    void draw_edge(Spot from, Spot to, const std::string& kind) {
        const Way along = way(from, to), out = outwards(along);
        drawing_.line(from, to, Stroke::heavy);
        sheet_.keep_free(from, to);
        if (kind == "gutter") {
            drawing_.line(moved(from, out, kOut_mm), moved(to, out, kOut_mm), Stroke::dashed);
            sheet_.keep_free(moved(from, out, kOut_mm), moved(to, out, kOut_mm));
        } else if (kind == "wall") {
            for (double at = kHatchStep_mm / 2; at + kHatch_mm <= apart(from, to); at += kHatchStep_mm) {
                const Spot foot = moved(from, along, at);
                drawing_.line(foot, moved(moved(foot, out, kHatch_mm), along, kHatch_mm), Stroke::fine);
            }
        } else {
            drawing_.line(moved(from, out, kOut_mm / 2), moved(to, out, kOut_mm / 2), Stroke::fine);
        }
    }

    void label_edge(std::size_t i, const std::string& name, const std::string& kind) {
        const Spot from = corner(i), to = corner(i + 1);
        const Way out = outwards(way(from, to));
        const double length_m = trade::distance_m(outline_[i], outline_[(i + 1) % outline_.size()]);
        const std::string length = making_.say("m", {{"n", making_.words.number(length_m, 2)}});
        const std::string what = kind.empty() ? name : name + " " + making_.said.choice("kind", kind);
        const bool is_steep = std::fabs(out.x) > std::fabs(out.y);
        const double down_mm = !is_steep && out.y > 0 ? kWord_mm * 0.8 : 0;
        const auto on = [&](double share) {
            return Spot{from.x_mm + (to.x_mm - from.x_mm) * share, from.y_mm + (to.y_mm - from.y_mm) * share};
        };
        std::vector<Spot> spots;
        for (const double out_mm : kLabelOut_mm) {
            for (const double share : {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.0, 1.0, -0.2, 1.2}) {
                const Spot spot = moved(on(share), out, out_mm);
                spots.push_back({spot.x_mm, spot.y_mm + down_mm});
            }
        }
        const std::vector<std::string> lines =
            is_steep ? std::vector{what, length} : std::vector{what + ", " + length};
        const Anchor anchor = !is_steep ? Anchor::middle : out.x > 0 ? Anchor::start : Anchor::end;
        const Spot at = sheet_.along(spots, lines, anchor, kWord_mm);
        if (apart(at, on(0.5)) > kLabelOut_mm[1])
            drawing_.line(on(0.5), moved(at, out, -kOut_mm), Stroke::fine);
        drawing_.words.push_back(making_.say(kind == "gutter" ? "plan.low_edge" : "plan.edge",
                                             {{"edge", what}, {"length", length}}));
    }

    // A letter stands outside its corner, past what lies on it; at one that points inwards that is the far side of both edges.
    void corners() {
        for (std::size_t i = 0; i < outline_.size(); ++i) {
            const Spot here = corner(i);
            const Way before = outwards(way(corner(i + outline_.size() - 1), here));
            const Way after = outwards(way(here, corner(i + 1)));
            const Way out = way({0, 0}, {before.x + after.x, before.y + after.y});
            std::vector<Spot> spots;
            for (double past_mm = 0; past_mm <= kLetter_mm; ++past_mm) {
                const double out_mm = past_mm + (roof_.is_inner(roof_.corners[i]) ? kInner_mm : kLetter_mm);
                const Spot at = moved(here, out, out_mm);
                spots.push_back({at.x_mm, at.y_mm + kLetter_mm * 0.35});
            }
            sheet_.along(spots, {roof_.corners[i]}, Anchor::middle, kLetter_mm);
        }
    }

    // Finished levels tell more than those of the bare deck.
    void falls() {
        for (const job::Surface surface : {job::Surface::finished, job::Surface::before_covering}) {
            const auto fall = job::fall_of(making_.job, making_.setting.method, surface);
            if (!fall) continue;
            const std::string says = fall_words(making_, fall->falls.plane.fall_1_in);
            if (fall->falls.plane.toward_deg) arrow(*fall->falls.plane.toward_deg, says);
            drawing_.words.push_back(making_.say("plan.fall", {{"fall", says}}));
            return;
        }
    }

    void arrow(double toward_deg, const std::string& says) {
        const Way down{std::cos(toward_deg * kDegree), -std::sin(toward_deg * kDegree)};
        const Spot middle = room_for_arrow(down);
        pointer(middle, down, kArrow_mm);
        sheet_.keep_free(arrow_box(middle, down));
        sheet_.placed(middle, says, kWord_mm);
    }

    [[nodiscard]] static Box arrow_box(Spot middle, Way down) {
        const double wide_mm = std::fabs(down.x) * kArrow_mm / 2 + 1,
                     high_mm = std::fabs(down.y) * kArrow_mm / 2 + 1;
        return {middle.x_mm - wide_mm, middle.y_mm - high_mm, middle.x_mm + wide_mm, middle.y_mm + high_mm};
    }

    // The free spot nearest to the middle of the roof.
    [[nodiscard]] Spot room_for_arrow(Way down) const {
        constexpr double kStep_mm = 2;
        const Spot centre = sheet_.at(trade::centre(outline_));
        Spot best = centre;
        double best_mm = drawing_.width_mm;
        for (double y_mm = 0; y_mm < drawing_.height_mm; y_mm += kStep_mm) {
            for (double x_mm = 0; x_mm < drawing_.width_mm; x_mm += kStep_mm) {
                const Spot spot{x_mm, y_mm};
                const double off_mm = apart(spot, centre);
                if (off_mm >= best_mm || !sheet_.is_on_roof(spot) || !sheet_.is_free(arrow_box(spot, down)))
                    continue;
                best = spot;
                best_mm = off_mm;
            }
        }
        return best;
    }

    // As long as fits a quarter of the sheet, in a round length.
    void scale_bar(const std::string& note) {
        constexpr std::array<double, 6> kLengths_m{20, 10, 5, 2, 1, 0.5};
        const double y_mm = sheet_.height_mm() - 7;
        const auto* found = std::find_if(kLengths_m.begin(), kLengths_m.end(),
                                         [&](double m) { return sheet_.mm_of(m) <= drawing_.width_mm / 4; });
        const double length_m = found == kLengths_m.end() ? kLengths_m.back() : *found;
        const double wide_mm = sheet_.mm_of(length_m);
        drawing_.rectangle({0.5, y_mm}, wide_mm / 2, 1.4, Stroke::fine, Fill::ink);
        drawing_.rectangle({0.5 + wide_mm / 2, y_mm}, wide_mm / 2, 1.4, Stroke::fine, Fill::paper);
        const std::string length =
            making_.say("m", {{"n", making_.words.number(length_m, length_m < 1 ? 1 : 0)}});
        const std::string says =
            making_.say("plan.scale", {{"scale", std::to_string(static_cast<int>(sheet_.scale()))}});
        sheet_.fixed({wide_mm + 2, y_mm + 1.9}, length + "; " + says, Anchor::start, kSmall_mm);
        if (!note.empty()) sheet_.fixed({0.5, y_mm + 5.6}, note, Anchor::start, kSmall_mm);
        if (!note.empty())
            drawing_.words.push_back(note.substr(0, note.size() - (note.ends_with('.') ? 1 : 0)));
    }

    // By the compass held along the first edge, if anybody did.
    void north() {
        const job::Reading* site = making_.job.latest("site");
        const auto bearing_deg = site == nullptr ? std::nullopt : site->number("ab_bearing_deg");
        if (!bearing_deg) return;
        const Way edge = way(corner(0), corner(1));
        const double turn = *bearing_deg * kDegree; // against the clock, and down is positive
        const Way up{edge.x * std::cos(turn) + edge.y * std::sin(turn),
                     edge.y * std::cos(turn) - edge.x * std::sin(turn)};
        const Spot middle{drawing_.width_mm - kNorth_mm * 1.5, sheet_.height_mm() - kNorth_mm * 1.2};
        pointer(middle, up, kNorth_mm);
        const Spot letter = moved(middle, up, kNorth_mm / 2 + kSmall_mm * 0.8);
        sheet_.fixed({letter.x_mm, letter.y_mm + kSmall_mm * 0.35}, making_.say("plan.north_letter"),
                     Anchor::middle, kSmall_mm);
        drawing_.words.push_back(making_.say("plan.north", {{"edge", roof_.corners[0] + roof_.corners[1]},
                                                            {"deg", making_.words.number(*bearing_deg, 0)}}));
    }

    void pointer(Spot middle, Way along, double long_mm) {
        const Way across = outwards(along);
        const Spot tail = moved(middle, along, -long_mm / 2), tip = moved(middle, along, long_mm / 2);
        const Spot neck = moved(tip, along, -kHead_mm);
        drawing_.line(tail, neck, Stroke::line);
        drawing_.shapes.emplace_back(
            Path{{tip, moved(neck, across, kHead_mm / 3), moved(neck, across, -kHead_mm / 3)},
                 true,
                 Stroke::none,
                 Fill::ink});
    }

    const Making& making_;
    const job::Roof& roof_;
    Drawing& drawing_;
    const trade::Polygon& outline_;
    PlanSheet sheet_;
};

} // namespace

std::optional<Drawing> roof_plan(const Making& making, const PlanAbout& about) {
    const trade::Polygon outline = making.job.roof.polygon();
    if (outline.size() < 3) return std::nullopt;
    Drawing drawing{.title = making.say(about.title_key)};
    PlanDrawer(making, drawing, outline, about.is_small).draw(about);
    return drawing;
}

void add_plan(Making& making, const PlanAbout& about) {
    auto drawing = roof_plan(making, about);
    if (drawing) {
        making.paper.heading(drawing->title, 3);
        making.paper.add(std::move(*drawing));
        return;
    }
    const std::string why = making.said.again(making.job.roof.outline_says_as);
    making.sentence(why.empty() ? "plan.none" : "plan.none_because", {{"why", why}});
}

} // namespace undersheet::paper
