// Falls and standing water from spot levels.
#include "desk/own.h"
#include "desk/reckon_places.h"
#include "desk/reckon_topics.h"

#include "trade/drains.h"
#include "trade/ponds.h"

#include <set>

namespace undersheet::desk {
namespace {

using entry::List;
using entry::Value;
using trade::Level;

Fault wrong(std::string where, std::string what, std::string clears) {
    return {Code::value_impossible, std::move(what), std::move(where), std::move(clears)};
}

std::string item(const char* list, std::size_t i) {
    return std::string(list) + "[" + std::to_string(i) + "]";
}

// Each on the roof, and no two at one place.
Result<std::vector<Level>> levels_of(const Value& in, const trade::Polygon& outline, double near_m) {
    std::vector<Level> levels;
    std::set<std::pair<double, double>> seen;
    for (const Value& row : in.list_of("levels")) {
        const Level level{number(row, "x_m"), number(row, "y_m"), number(row, "z_mm")};
        const std::string name = item("levels", levels.size());
        if (!seen.insert({level.x_m, level.y_m}).second)
            return wrong(name, "stands where another does", "give each place one height");
        if (!trade::contains(outline, trade::Point{level.x_m, level.y_m}, near_m))
            return wrong(name, "lies outside the outline", "give places in metres from corner A");
        levels.push_back(level);
    }
    return levels;
}

Result<trade::Segment> drain_of(const Value& row, const std::string& name) {
    const Value *from = row.find("from"), *to = row.find("to"), *at = row.find("at");
    const bool is_line = from != nullptr && to != nullptr && at == nullptr;
    const bool is_outlet = at != nullptr && from == nullptr && to == nullptr;
    if (is_line) return trade::Segment{point_of(*from), point_of(*to)};
    if (is_outlet) return trade::Segment{point_of(*at), point_of(*at)};
    return wrong(name, "is neither a line nor a point", "give from and to, or at");
}

// The levels that let the water go, and for each drain how it was taken.
struct Drains {
    std::vector<std::size_t> levels = {};
    Value told = List{};
};

Result<Drains> drains_of(const Value& in, const std::vector<Level>& levels, double near_m) {
    Drains drains;
    std::size_t i = 0;
    for (const Value& row : in.list_of("drains")) {
        const auto segment = drain_of(row, item("drains", i++));
        if (!segment) return segment.fault();
        const auto found = trade::drain_levels(levels, *segment, {.near_m = near_m});
        drains.levels.insert(drains.levels.end(), found.levels.begin(), found.levels.end());
        Value told;
        told.set("levels", static_cast<std::int64_t>(found.levels.size()));
        put(told, "away_m", found.away_m);
        drains.told.push(std::move(told));
    }
    return drains;
}

Value plane_value(const trade::Plane& plane) {
    Value out;
    put(out, "fall_1_in", plane.fall_1_in);
    put(out, "toward_deg", plane.toward_deg);
    put(out, "rms_mm", plane.rms_mm);
    return out;
}

Value end_value(const Level& level) {
    Value out;
    put(out, "x_m", level.x_m);
    put(out, "y_m", level.y_m);
    put(out, "z_mm", level.z_mm);
    return out;
}

Value step_value(const std::vector<Level>& levels, const trade::Step& step) {
    Value out;
    out.set("from", end_value(levels[step.lower])).set("to", end_value(levels[step.upper]));
    put(out, "along_m", step.along_m);
    put(out, "rise_mm", step.rise_mm);
    put(out, "fall_1_in", trade::fall_1_in(step.along_m, step.rise_mm));
    put(out, "run_m", step.run_m);
    put(out, "run_rise_mm", step.run_rise_mm);
    put(out, "run_1_in", trade::fall_1_in(step.run_m, step.run_rise_mm));
    return out;
}

Value flattest_value(const std::vector<Level>& levels, const trade::Step& step) {
    const Level &lower = levels[step.run_lower], &upper = levels[step.run_upper];
    Value out;
    put(out, "fall_1_in", trade::fall_1_in(step.run_m, step.run_rise_mm));
    put(out, "x_m", (lower.x_m + upper.x_m) / 2);
    put(out, "y_m", (lower.y_m + upper.y_m) / 2);
    return out;
}

Value ponds_value(const std::vector<Level>& levels, const std::vector<trade::Pond>& ponds) {
    Value list = List{};
    for (const trade::Pond& pond : ponds) {
        Value row;
        put(row, "x_m", levels[pond.deepest].x_m);
        put(row, "y_m", levels[pond.deepest].y_m);
        put(row, "depth_mm", pond.depth_mm);
        put(row, "area_m2", pond.area_m2);
        put(row, "litres", pond.litres);
        list.push(std::move(row));
    }
    return list;
}

Value answer_of(const std::vector<Level>& levels, const trade::Falls& found) {
    Value steps = List{};
    for (const trade::Step& step : found.steps) steps.push(step_value(levels, step));
    Value out;
    out.set("plane", plane_value(found.plane)).set("steps", std::move(steps));
    if (found.flattest) out.set("flattest", flattest_value(levels, found.steps[*found.flattest]));
    return out;
}

Result<Value> falls(const Value& in) {
    const auto outline = polygon_of(in);
    if (auto done = trade::check_outline(outline); !done) return done.fault();
    const double near_m = own_method().limit("place_near_m");
    const auto levels = levels_of(in, outline, near_m);
    if (!levels) return levels.fault();
    auto drains = drains_of(in, *levels, near_m);
    if (!drains) return drains.fault();
    const auto found =
        trade::falls(*levels, {own_method().limit("fall_base_m"), own_method().limit("fall_line_deg")});
    if (!found) return found.fault();
    const auto ponds = trade::ponds({.levels = *levels, .outline = outline, .drains = drains->levels});
    if (!ponds) return ponds.fault();
    Value out = answer_of(*levels, *found);
    out.set("ponds", ponds_value(*levels, *ponds)).set("drains", std::move(drains->told));
    return out;
}

} // namespace

std::vector<Topic> falls_topics() { return {{"falls", falls}}; }

} // namespace undersheet::desk
