#include "trade/air.h"

#include "trade/field_check.h"

#include <cmath>

namespace undersheet::trade {
namespace {

// WMO-No. 8 gives its constants for -45 to 60 °C over water.
constexpr double kLeastAir_c = -45;
constexpr double kMostAir_c = 60;

std::optional<Fault> wrong_field(const AirInput& in) {
    return FieldCheck()
        .between("air_c", in.air_c, kLeastAir_c, kMostAir_c)
        .above("rh_pct", in.rh_pct, 0, 100)
        .between("surface_c", in.surface_c, -60, 120)
        .between("air_u_k", in.air_u_k, 0, 20)
        .between("rh_u_pct", in.rh_u_pct, 0, 100)
        .fault();
}

// g = ln(RH/100) + aT/(b+T); the dew point is b g / (a - g).
double magnus_exponent(const AirInput& in, const Magnus& m) {
    return std::log(in.rh_pct / 100) + m.a * in.air_c / (m.b_c + in.air_c);
}

// Both readings enter through g: dTd/dg = ab/(a-g)^2, dg/dT = ab/(b+T)^2, dg/dRH = 1/RH.
double dew_point_u(const AirInput& in, const Magnus& m, double g) {
    const double per_g = m.a * m.b_c / ((m.a - g) * (m.a - g));
    const double from_air = m.a * m.b_c / ((m.b_c + in.air_c) * (m.b_c + in.air_c)) * *in.air_u_k;
    const double from_rh = *in.rh_u_pct / in.rh_pct;
    return per_g * std::hypot(from_air, from_rh);
}

} // namespace

double saturation_pa(double air_c, const Magnus& magnus) {
    return magnus.e0_pa * std::exp(magnus.a * air_c / (magnus.b_c + air_c));
}

Result<Air> air(const AirInput& in, const Magnus& magnus) {
    if (const auto wrong = wrong_field(in)) return *wrong;
    const double g = magnus_exponent(in, magnus);
    Air out;
    out.dew_point_c = magnus.b_c * g / (magnus.a - g);
    if (in.surface_c) out.margin_k = *in.surface_c - out.dew_point_c;
    if (in.air_u_k && in.rh_u_pct) out.dew_point_u_k = dew_point_u(in, magnus, g);
    return out;
}

} // namespace undersheet::trade
