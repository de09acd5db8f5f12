// How near the air is to leaving dew on the deck: the dew point, and how far the deck surface stands above
// it.
//
// Promises: the dew point over liquid water at every temperature (never the frost point), within 0.03 K of
//   the ASHRAE formulas from 0 °C up; a doubt only where both instruments' own doubts were given.
// From: Magnus form, docs/formulas.md#air.
// Does not: say whether bonding may start. The margin that is wanted is a limit of the method.
#pragma once

#include "base/result.h"

#include <optional>

namespace undersheet::trade {

// Constants of es = e0 * exp(a T / (b + T)), saturation over liquid water.
struct Magnus {
    double e0_pa;
    double a;
    double b_c;
};
// WMO-No. 8 (2018) annex 4.B; found in a second text that cites it.
inline constexpr Magnus kMagnusWmo{611.2, 17.62, 243.12};
// Alduchov & Eskridge 1996; a and b found in a second text that cites it, e0 from memory, not confirmed.
inline constexpr Magnus kMagnusAlduchovEskridge{610.94, 17.625, 243.04};
// ISO 13788; from memory, not confirmed.
inline constexpr Magnus kMagnus13788{610.5, 17.269, 237.3};

struct AirInput {
    double air_c = 0;  // -45 to 60
    double rh_pct = 0; // above 0, at most 100
    std::optional<double> surface_c = {};
    std::optional<double> air_u_k = {};  // standard uncertainty; a "± limit" has u = limit / 1.732
    std::optional<double> rh_u_pct = {}; // the same for the humidity
};

struct Air {
    double dew_point_c = 0;
    std::optional<double> margin_k = {};      // surface less dew point; negative where dew forms
    std::optional<double> dew_point_u_k = {}; // standard uncertainty, first order (JCGM 100)
};

[[nodiscard]] Result<Air> air(const AirInput& in, const Magnus& magnus = kMagnusWmo);

// Saturation pressure of water vapour over liquid water; no check of its input.
[[nodiscard]] double saturation_pa(double air_c, const Magnus& magnus = kMagnusWmo);

} // namespace undersheet::trade
