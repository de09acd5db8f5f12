#include "trade/rain.h"

#include "trade/field_check.h"
#include "trade/metres.h"

#include <cmath>

namespace undersheet::trade {
namespace {

std::optional<Fault> wrong_rain(const RainInput& in) {
    return FieldCheck()
        .above("roof_m2", in.roof_m2, 0, 100'000)
        .between("wall_m2", in.wall_m2, 0, 100'000)
        .above("rate_l_s_m2", in.rate_l_s_m2, 0, 1)
        .fault();
}

double length_per_depth(const Gutter& gutter) { return *gutter.length_m * kMmPerM / *gutter.depth_mm; }

std::optional<Fault> wrong_length(const Gutter& gutter, const RainRule& rule) {
    if (!gutter.length_m && !gutter.depth_mm) return std::nullopt;
    if (!gutter.length_m) return impossible("gutter.length_m", "missing", "give it together with depth_mm");
    if (!gutter.depth_mm) return impossible("gutter.depth_mm", "missing", "give it together with length_m");
    const double most_m = rule.long_gutter.back().length_per_depth * *gutter.depth_mm / kMmPerM;
    return FieldCheck().between("gutter.length_m", gutter.length_m, 0, most_m).fault();
}

std::optional<Fault> wrong_gutter(const Gutter& gutter, const RainRule& rule) {
    if (!gutter.coefficient) {
        return impossible("gutter.coefficient", "missing, and no published one is settled",
                          "give the one your code or the maker states for this shape");
    }
    const auto wrong = FieldCheck()
                           .above("gutter.area_mm2", gutter.area_mm2, 0, 1'000'000)
                           .above("gutter.coefficient", gutter.coefficient, 0, 0.001)
                           .above("gutter.length_m", gutter.length_m, 0, 1000)
                           .above("gutter.depth_mm", gutter.depth_mm, 0, 1000)
                           .fault();
    return wrong ? wrong : wrong_length(gutter, rule);
}

double long_gutter_factor(const Gutter& gutter, const RainRule& rule) {
    if (!gutter.length_m) return 1;
    const double ratio = length_per_depth(gutter);
    const auto& rows = rule.long_gutter;
    if (ratio <= rows.front().length_per_depth) return rows.front().factor;
    std::size_t next = 1;
    while (next + 1 < rows.size() && ratio > rows[next].length_per_depth) ++next;
    const auto& [low_ratio, low] = rows[next - 1];
    const auto& [high_ratio, high] = rows[next];
    return low + (high - low) * (ratio - low_ratio) / (high_ratio - low_ratio);
}

double capacity_l_s(const Gutter& gutter, const RainRule& rule) {
    return rule.design_share * *gutter.coefficient * std::pow(gutter.area_mm2, 1.25) *
           long_gutter_factor(gutter, rule);
}

} // namespace

Result<Rain> rain(const RainInput& in, const RainRule& rule) {
    if (const auto wrong = wrong_rain(in)) return *wrong;
    Rain out;
    out.flow_l_s = in.rate_l_s_m2 * (in.roof_m2 + rule.wall_share * in.wall_m2.value_or(0));
    if (!in.gutter) return out;
    if (const auto wrong = wrong_gutter(*in.gutter, rule)) return *wrong;
    out.capacity_l_s = capacity_l_s(*in.gutter, rule);
    out.enough = *out.capacity_l_s >= out.flow_l_s;
    return out;
}

} // namespace undersheet::trade
