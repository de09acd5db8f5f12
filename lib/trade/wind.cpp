#include "trade/wind.h"

#include "trade/field_check.h"

#include <algorithm>
#include <cmath>

namespace undersheet::trade {
namespace {

std::optional<double> member(bool given, double value) { return given ? std::optional(value) : std::nullopt; }

std::optional<Fault> wrong_field(const WindInput& in) {
    if (!in.speed_ms && !in.deck && !in.site) {
        return impossible("speed_ms", "there is nothing to work out", "give speed_ms, deck or site");
    }
    const WindDeck deck = in.deck.value_or(WindDeck{});
    const WindSite site = in.site.value_or(WindSite{});
    const bool has_deck = in.deck.has_value();
    const bool has_site = in.site.has_value();
    return FieldCheck()
        .between("speed_ms", in.speed_ms, 0, 150)
        .above("deck.b_m", member(has_deck, deck.b_m), 0, 1000)
        .above("deck.d_m", member(has_deck, deck.d_m), 0, 1000)
        .above("deck.h_m", member(has_deck, deck.h_m), 0, 500)
        .above("site.vb_ms", member(has_site, site.vb_ms), 0, 150)
        .above("site.z_m", member(has_site, site.z_m), 0, 500)
        .above("site.z0_m", member(has_site, site.z0_m), 0, 10)
        // The speed goes with ln(z / z0): the lowest height counted has to stand clear of the roughness.
        .above("site.zmin_m", member(has_site, site.zmin_m), site.z0_m, 100)
        .fault();
}

int beaufort(double speed_ms, const WindRule& rule) {
    return static_cast<int>(
        std::upper_bound(rule.beaufort_from_ms.begin(), rule.beaufort_from_ms.end(), speed_ms) -
        rule.beaufort_from_ms.begin());
}

double pressure_pa(double speed_ms, const WindRule& rule) {
    return rule.air_density_kg_m3 * speed_ms * speed_ms / 2;
}

// e is the width that the flow round the edges takes up. A shallow roof ends before a zone is full.
WindZones zone_areas_m2(const WindDeck& deck) {
    const double e = std::min(deck.b_m, 2 * deck.h_m);
    const double front = std::min(deck.d_m, e / 10);
    const double middle = std::min(deck.d_m, e / 2);
    return {2 * e / 4 * front, (deck.b_m - e / 2) * front, deck.b_m * (middle - front),
            deck.b_m * (deck.d_m - middle)};
}

// EN 1991-1-4 4.3 to 4.5: kr = 0.19 (z0/0.05)^0.07, cr = kr ln(z/z0), Iv = 1/ln(z/z0), qp = (1 + 7 Iv) cr^2 qb.
double peak_pa(const WindSite& site, const WindRule& rule) {
    const double logarithm = std::log(std::max(site.z_m, site.zmin_m) / site.z0_m);
    const double roughness = 0.19 * std::pow(site.z0_m / 0.05, 0.07) * logarithm;
    return (1 + 7 / logarithm) * roughness * roughness * pressure_pa(site.vb_ms, rule);
}

} // namespace

Result<Wind> wind(const WindInput& in, const WindRule& rule) {
    if (const auto wrong = wrong_field(in)) return *wrong;
    Wind out;
    if (in.speed_ms) {
        out.beaufort = beaufort(*in.speed_ms, rule);
        out.pressure_pa = pressure_pa(*in.speed_ms, rule);
    }
    if (in.deck) out.zones_m2 = zone_areas_m2(*in.deck);
    if (in.site) out.peak_pa = peak_pa(*in.site, rule);
    return out;
}

WindZones zone_pressure_pa(double peak_pa, const WindZones& coefficients) {
    return {peak_pa * coefficients.f, peak_pa * coefficients.g, peak_pa * coefficients.h,
            peak_pa * coefficients.i};
}

} // namespace undersheet::trade
