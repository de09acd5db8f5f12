// What lies on the roof with an extent of its own: patches, and water that would stand.
#include "paper/plan.h"

#include "base/text.h"
#include "job/ponds.h"
#include "job/queries.h"
#include "trade/metres.h"

#include <algorithm>
#include <array>

namespace undersheet::paper {
namespace {

using trade::Point;

trade::Polygon square_round(Point middle, double side_m) {
    const double half_m = side_m / 2;
    return {{middle.x_m - half_m, middle.y_m - half_m},
            {middle.x_m + half_m, middle.y_m - half_m},
            {middle.x_m + half_m, middle.y_m + half_m},
            {middle.x_m - half_m, middle.y_m + half_m}};
}

// "R1-1" to "R1-4" go round from the front left; an only patch goes all round and is drawn in the middle.
std::optional<Point> patch_at_opening(const Making& making, const std::string& label,
                                      const std::string& what) {
    const auto openings = making.job.all("opening");
    const auto found = std::find_if(openings.begin(), openings.end(),
                                    [&](const job::Reading* opening) { return opening->label == label; });
    const auto middle =
        found == openings.end() ? std::nullopt : job::locate(making.job.roof, (*found)->place);
    if (!middle || making.setting.method.patches_per((*found)->word("type")) == 1) return middle;
    const double x_m = (*found)->number("size_x_mm").value_or(0) / trade::kMmPerM / 2;
    const double y_m = (*found)->number("size_y_mm").value_or(0) / trade::kMmPerM / 2;
    const std::array<Point, 4> corners{{{middle->x_m - x_m, middle->y_m - y_m},
                                        {middle->x_m + x_m, middle->y_m - y_m},
                                        {middle->x_m + x_m, middle->y_m + y_m},
                                        {middle->x_m - x_m, middle->y_m + y_m}}};
    const auto number = static_cast<std::size_t>(what.back() - '1');
    return number < corners.size() ? corners[number] : *middle;
}

std::optional<Point> patch_at(const Making& making, const std::string& what) {
    const std::string label = job::opening_of_patch(making.job.roof, what);
    if (!label.empty()) return patch_at_opening(making, label, what);
    const auto place = entry::parse_place(what);
    return place ? job::locate(making.job.roof, *place) : std::nullopt;
}

bool is_same(Point a, Point b) { return trade::distance_m(a, b) < trade::kHair_m; }

// Segments in no order as lines that go on as far as they can, so that their dashes do.
std::vector<PlanShape> lines_of(std::vector<trade::Segment> segments) {
    std::vector<PlanShape> lines;
    while (!segments.empty()) {
        trade::Polygon line{segments.back().from, segments.back().to};
        segments.pop_back();
        for (bool grew = true; grew;) {
            const auto next = std::find_if(segments.begin(), segments.end(), [&](const trade::Segment& one) {
                return is_same(one.from, line.back()) || is_same(one.to, line.back()) ||
                       is_same(one.from, line.front()) || is_same(one.to, line.front());
            });
            grew = next != segments.end();
            if (!grew) break;
            const bool at_end = is_same(next->from, line.back()) || is_same(next->to, line.back());
            const Point meets = at_end ? line.back() : line.front();
            const Point on = is_same(next->from, meets) ? next->to : next->from;
            line.insert(at_end ? line.end() : line.begin(), on);
            segments.erase(next);
        }
        lines.push_back({std::move(line), false});
    }
    return lines;
}

// What the method's own limits let stand is not drawn: levels are good to a few mm.
bool is_too_deep(const Making& making, const job::StandingWater& water) {
    const auto findings = job::findings_on(making.judgement, *water.deepest);
    return std::any_of(findings.begin(), findings.end(), [&](const job::Finding* finding) {
        const method::Rule* rule = making.setting.method.rule(finding->rule);
        return rule != nullptr && rule->worked == "ponds";
    });
}

} // namespace

void add_patches_to(const Making& making, PlanAbout& about) {
    const double side_m = making.setting.method.limit("patch_width_mm") / trade::kMmPerM;
    std::vector<std::string> names;
    for (const job::Part& part : making.job.parts) {
        if (part.stage != "patches" || !part.is_called_for()) continue;
        const auto at = patch_at(making, part.what);
        if (!at) continue;
        about.shapes.push_back({square_round(*at, side_m)});
        names.push_back(part.what);
    }
    if (names.empty()) return;
    about.shapes.back().says = making.say("plan.patches", {{"places", joined(names, ", ")}});
    about.add_note(making.say("plan.patches_note"));
}

void add_ponds_to(const Making& making, PlanAbout& about) {
    bool is_any = false;
    for (const job::StandingWater& water : job::standing_water(making.job)) {
        if (!is_too_deep(making, water)) continue;
        is_any = true;
        for (PlanShape& line : lines_of(water.pond.shore)) about.shapes.push_back(std::move(line));
    }
    if (is_any) about.add_note(making.say("plan.ponds_note"));
}

} // namespace undersheet::paper
