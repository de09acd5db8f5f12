#include "trade/heat.h"

#include "trade/field_check.h"
#include "trade/metres.h"

#include <algorithm>
#include <string>

namespace undersheet::trade {
namespace {

constexpr double kSecondsPerDay = 86'400;
constexpr double kGramsPerKg = 1000;
constexpr double kDry_g_m2 = 1e-6; // less than this in a month is rounding, not water

std::string layer_field(std::size_t layer, const char* member) {
    return "layers[" + std::to_string(layer) + "]." + member;
}

// A resistance is given whole or as thickness and conductivity, never both ways.
std::optional<Fault> wrong_way(const Layer& layer, std::size_t index) {
    const bool in_parts = layer.thickness_mm || layer.conductivity_w_mk;
    if (layer.r_m2k_w && in_parts) {
        return impossible(layer_field(index, "r_m2k_w"), "given twice over",
                          "give it, or thickness_mm with conductivity_w_mk");
    }
    if (layer.r_m2k_w || (layer.thickness_mm && layer.conductivity_w_mk)) return std::nullopt;
    const char* missing = !in_parts ? "r_m2k_w" : layer.thickness_mm ? "conductivity_w_mk" : "thickness_mm";
    return impossible(layer_field(index, missing), "missing",
                      "give r_m2k_w, or thickness_mm with conductivity_w_mk");
}

std::optional<Fault> wrong_layer(const Layer& layer, std::size_t index) {
    if (auto wrong = wrong_way(layer, index)) return wrong;
    return FieldCheck()
        .between(layer_field(index, "r_m2k_w"), layer.r_m2k_w, 0, 100)
        .above(layer_field(index, "thickness_mm"), layer.thickness_mm, 0, 5000)
        .above(layer_field(index, "conductivity_w_mk"), layer.conductivity_w_mk, 0, 500)
        .above(layer_field(index, "sd_m"), layer.sd_m, 0, 100'000)
        .fault();
}

std::optional<Fault> wrong_layers(const std::vector<Layer>& layers) {
    if (layers.empty()) return impossible("layers", "there is no layer", "give at least one, inside first");
    for (std::size_t i = 0; i < layers.size(); ++i) {
        if (auto wrong = wrong_layer(layers[i], i)) return wrong;
        if (layers[i].sd_m.has_value() == layers[0].sd_m.has_value()) continue;
        const std::size_t without = layers[i].sd_m ? 0 : i;
        return impossible(layer_field(without, "sd_m"), "missing", "give it for every layer or for none");
    }
    return std::nullopt;
}

std::optional<double> air_of(const std::optional<Climate>& climate) {
    return climate ? std::optional(climate->air_c) : std::nullopt;
}
std::optional<double> rh_of(const std::optional<Climate>& climate) {
    return climate ? std::optional(climate->rh_pct) : std::nullopt;
}

std::optional<Fault> wrong_field(const HeatInput& in) {
    if (auto wrong = wrong_layers(in.layers)) return wrong;
    if (in.inside.has_value() != in.outside.has_value()) {
        return impossible(in.inside ? "outside" : "inside", "missing", "give both climates or neither");
    }
    return FieldCheck()
        .between("rsi", in.rsi, 0, 5)
        .between("rse", in.rse, 0, 5)
        .between("inside.air_c", air_of(in.inside), -45, 60)
        .between("inside.rh_pct", rh_of(in.inside), 0, 100)
        .between("outside.air_c", air_of(in.outside), -45, 60)
        .between("outside.rh_pct", rh_of(in.outside), 0, 100)
        .fault();
}

double resistance_m2k_w(const Layer& layer) {
    return layer.r_m2k_w ? *layer.r_m2k_w : *layer.thickness_mm / kMmPerM / *layer.conductivity_w_mk;
}

double resistance_m2k_w(const HeatInput& in) {
    double sum = in.rsi + in.rse;
    for (const auto& layer : in.layers) sum += resistance_m2k_w(layer);
    return sum;
}

// A foil may have no resistance; the whole roof may not.
std::optional<Fault> wrong_sum(const HeatInput& in) {
    if (resistance_m2k_w(in) > 0) return std::nullopt;
    return impossible("layers", "they do not resist heat at all", "give rsi, rse or a layer a resistance");
}

double vapour_pa(const Climate& climate, const HeatRule& rule) {
    return climate.rh_pct / 100 * saturation_pa(climate.air_c, rule.saturation);
}

std::vector<Interface> temperatures(const HeatInput& in, double u_w_m2k, const HeatRule& rule) {
    const double flow_w_m2 = u_w_m2k * (in.inside->air_c - in.outside->air_c);
    std::vector<Interface> found;
    double t_c = in.inside->air_c - flow_w_m2 * in.rsi;
    found.push_back({t_c, saturation_pa(t_c, rule.saturation)});
    for (const auto& layer : in.layers) {
        t_c -= flow_w_m2 * resistance_m2k_w(layer);
        found.push_back({t_c, saturation_pa(t_c, rule.saturation)});
    }
    return found;
}

// A point of the vapour diagram: pressure over the thickness of still air passed so far.
struct Knot {
    std::size_t interface = 0;
    double sd_m = 0;
    double pa = 0;
};

double slope(const Knot& from, const Knot& to) { return (to.pa - from.pa) / (to.sd_m - from.sd_m); }

// Ceilings that vapour may not pass: saturation inside the roof, the air's own vapour at its two faces.
std::vector<Knot> ceilings(const HeatInput& in, const std::vector<Interface>& found, const HeatRule& rule) {
    std::vector<Knot> knots;
    double sd_m = 0;
    for (std::size_t i = 0; i < found.size(); ++i) {
        if (i > 0) sd_m += *in.layers[i - 1].sd_m;
        knots.push_back({i, sd_m, found[i].saturation_pa});
    }
    knots.front().pa = std::min(knots.front().pa, vapour_pa(*in.inside, rule));
    knots.back().pa = std::min(knots.back().pa, vapour_pa(*in.outside, rule));
    return knots;
}

// A string pulled tight under the ceilings touches those where it has to bend: the lower hull of the knots.
std::vector<Knot> taut_line(const std::vector<Knot>& knots) {
    std::vector<Knot> line;
    for (const auto& knot : knots) {
        while (line.size() >= 2 && slope(line[line.size() - 2], line.back()) >= slope(line.back(), knot))
            line.pop_back();
        line.push_back(knot);
    }
    return line;
}

// Water settles at a bend: more vapour comes in along the steeper side than leaves along the flatter one.
std::vector<Condensate> condensate_of(const std::vector<Knot>& line, const HeatRule& rule) {
    const double g_per_slope =
        rule.vapour_permeability_kg_m_s_pa * kGramsPerKg * kSecondsPerDay * rule.month_days;
    std::vector<Condensate> found;
    for (std::size_t i = 1; i + 1 < line.size(); ++i) {
        const double g_m2 = g_per_slope * (slope(line[i], line[i + 1]) - slope(line[i - 1], line[i]));
        if (g_m2 > kDry_g_m2) found.push_back({line[i].interface, g_m2});
    }
    return found;
}

double height_at(const std::vector<Knot>& line, double sd_m) {
    std::size_t next = 1;
    while (next + 1 < line.size() && line[next].sd_m < sd_m) ++next;
    return line[next - 1].pa + slope(line[next - 1], line[next]) * (sd_m - line[next - 1].sd_m);
}

void add_vapour(const HeatInput& in, const HeatRule& rule, Heat& out) {
    auto& found = *out.interfaces;
    const std::vector<Knot> knots = ceilings(in, found, rule);
    const std::vector<Knot> line = taut_line(knots);
    const double inside_pa = vapour_pa(*in.inside, rule);
    const double outside_pa = vapour_pa(*in.outside, rule);
    for (std::size_t i = 0; i < found.size(); ++i) {
        found[i].vapour_pa = inside_pa + (outside_pa - inside_pa) * knots[i].sd_m / knots.back().sd_m;
        found[i].settled_pa = height_at(line, knots[i].sd_m);
    }
    out.condensate = condensate_of(line, rule);
    out.inside_face_wet = inside_pa > found.front().saturation_pa;
}

} // namespace

Result<Heat> heat(const HeatInput& in, const HeatRule& rule) {
    if (const auto wrong = wrong_field(in)) return *wrong;
    if (const auto wrong = wrong_sum(in)) return *wrong;
    Heat out;
    out.u_w_m2k = 1 / resistance_m2k_w(in);
    if (!in.inside) return out;
    out.frsi = 1 - out.u_w_m2k * in.rsi;
    out.interfaces = temperatures(in, out.u_w_m2k, rule);
    if (in.layers.front().sd_m) add_vapour(in, rule, out);
    return out;
}

} // namespace undersheet::trade
