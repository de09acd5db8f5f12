#include "trade/moisture.h"

#include "trade/field_check.h"

#include <algorithm>
#include <cmath>

namespace undersheet::trade {
namespace {

double correction_pct(double board_c, const MoistureRule& rule) {
    const double below_k = rule.reference_c - board_c;
    if (std::fabs(below_k) <= rule.dead_band_k) return 0;
    return below_k * (below_k > 0 ? rule.pct_per_k_below : rule.pct_per_k_above);
}

MeterReach reach_of(double reading_pct, const MeterRange& range) {
    if (reading_pct < range.least_pct) return MeterReach::below;
    if (reading_pct > range.most_pct) return MeterReach::above;
    return MeterReach::within;
}

std::optional<Fault> wrong_field(const MoistureInput& in, const MoistureRule& rule, const MeterRange& range) {
    return FieldCheck()
        .between("reading_pct", in.reading_pct, 0, 200) // dry-basis moisture of wet wood can pass 100 %
        .between("board_c", in.board_c, -40, 90)
        .between("rule.pct_per_k_below", rule.pct_per_k_below, 0, 2)
        .between("rule.pct_per_k_above", rule.pct_per_k_above, 0, 2)
        .between("rule.reference_c", rule.reference_c, -40, 90)
        .between("rule.dead_band_k", rule.dead_band_k, 0, 100)
        .between("range.least_pct", range.least_pct, 0, range.most_pct)
        .fault();
}

} // namespace

MoistureRule practice_moisture_rule() {
    return {"0.15 % per K from 20 °C", "practice; the meter's own booklet overrides it", 0.15, 0.15, 20, 0};
}

MoistureRule five_degree_moisture_rule() {
    return {"0.5 % per 5 °C from 20 °C, beyond 5 °C", "meter makers' manuals", 0.1, 0.1, 20, 5};
}

MoistureRule no_moisture_rule() { return {"none", "the meter corrects by itself", 0, 0, 20, 0}; }

Result<Moisture> moisture(const MoistureInput& in, const MoistureRule& rule, const MeterRange& range) {
    if (const auto wrong = wrong_field(in, rule, range)) return *wrong;
    Moisture out;
    out.judged_pct = in.reading_pct;
    if (in.board_c) {
        out.corrected_pct = std::max(0.0, in.reading_pct + correction_pct(*in.board_c, rule));
        out.judged_corrected = *out.corrected_pct > in.reading_pct;
        out.judged_pct = std::max(in.reading_pct, *out.corrected_pct);
    }
    out.reach = reach_of(in.reading_pct, range);
    out.believable = out.reach == MeterReach::within;
    return out;
}

} // namespace undersheet::trade
