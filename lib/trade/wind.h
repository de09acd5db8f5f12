// What the wind does to a loose sheet and to a flat roof: its force by name, its pressure, and how hard it pulls where.
//
// Promises: Beaufort force from the speed in m/s by half-open bands (5.5 is force 4, 8.0 is force 5); zone areas that add
//   up to the roof; the peak pressure of EN 1991-1-4 with the recommended values.
// From: docs/formulas.md#wind. The zones' geometry is from memory, not confirmed.
// Does not: design. National annexes use other charts, so the figures are a check only; an engineer decides.
#pragma once

#include "base/result.h"

#include <array>
#include <optional>

namespace undersheet::trade {

struct WindRule {
    // Least speed of force 1, 2, ... 12. WMO table, from memory, not confirmed. The tables in knots and mph are not exact
    // conversions of it.
    std::array<double, 12> beaufort_from_ms{0.3,  1.6,  3.4,  5.5,  8.0,  10.8,
                                            13.9, 17.2, 20.8, 24.5, 28.5, 32.7};
    double air_density_kg_m3 = 1.25; // EN 1991-1-4, found in a worked load sheet
};

struct WindDeck { // metres; the wind blows on side b
    double b_m = 0;
    double d_m = 0;
    double h_m = 0; // height of the roof above the ground
};

struct WindSite {
    double vb_ms = 0; // basic wind speed
    double z_m = 0;   // height of the roof; below zmin_m it counts as zmin_m
    double z0_m = 0;  // roughness length of the terrain
    double zmin_m = 0;
};

struct WindInput { // at least one of the three
    std::optional<double> speed_ms = {};
    std::optional<WindDeck> deck = {};
    std::optional<WindSite> site = {};
};

// One value for each zone: f the two windward corners, g the rest of that edge, h behind it, i the rest.
struct WindZones {
    double f = 0;
    double g = 0;
    double h = 0;
    double i = 0;
};

struct Wind {
    std::optional<int> beaufort = {};
    std::optional<double> pressure_pa = {}; // of that speed: half the density times its square
    std::optional<WindZones> zones_m2 = {};
    std::optional<double> peak_pa = {};
};

[[nodiscard]] Result<Wind> wind(const WindInput& in, const WindRule& rule = {});

// Pressure coefficients of a flat roof with sharp eaves for areas of 10 m2 and more, and for 1 m2 (one fixing's share).
// EN 1991-1-4 section 7.2, found in a second text; zone i is +0.2 as well.
inline constexpr WindZones kSharpEaves10{-1.8, -1.2, -0.7, -0.2};
inline constexpr WindZones kSharpEaves1{-2.5, -2.0, -1.2, -0.2};

// The pull on each zone, negative upwards; no check of its input.
[[nodiscard]] WindZones zone_pressure_pa(double peak_pa, const WindZones& coefficients);

} // namespace undersheet::trade
