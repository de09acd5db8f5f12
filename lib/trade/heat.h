// How much heat a roof loses, how cold each layer gets, and whether water settles inside it in a cold month.
//
// Promises: steady flow straight through plane layers, named from the inside; interface 0 is the inside face. Where vapour
//   would pass saturation, the taut line under the saturation curve and the water that settles there (Glaser).
// From: ISO 6946 and ISO 13788 forms, docs/formulas.md#heat; constants from memory, not confirmed.
// Does not: design. No joists, no air moving through, no sun, no wood that soaks up water, no drying month; saturation over
//   liquid water also below 0 °C. A ventilated layer is not a layer: leave out what lies outside it.
#pragma once

#include "base/result.h"
#include "trade/air.h"

#include <optional>
#include <vector>

namespace undersheet::trade {

struct HeatRule {
    Magnus saturation = kMagnus13788;             // from memory, not confirmed
    double vapour_permeability_kg_m_s_pa = 2e-10; // of still air, ISO 13788, from memory, not confirmed
    double month_days = 30;
};

struct Layer {                          // either r_m2k_w, or thickness_mm and conductivity_w_mk
    std::optional<double> r_m2k_w = {}; // 0 for a foil
    std::optional<double> thickness_mm = {};
    std::optional<double> conductivity_w_mk = {};
    std::optional<double> sd_m = {}; // still air that slows vapour as much, above 0; for all layers or none
};

struct Climate {
    double air_c = 0;
    double rh_pct = 0;
};

struct HeatInput {
    std::vector<Layer> layers = {};     // inside first
    double rsi = 0;                     // m2K/W; heat upwards 0.10, from memory, not confirmed
    double rse = 0;                     // m2K/W; 0.04, found second-hand
    std::optional<Climate> inside = {}; // both climates or neither
    std::optional<Climate> outside = {};
};

struct Interface {
    double t_c = 0;
    double saturation_pa = 0;
    // The straight line from inside to outside, before any water settles.
    std::optional<double> vapour_pa = {};
    std::optional<double> settled_pa = {}; // the taut line: never above saturation
};

struct Condensate {
    std::size_t interface = 0;
    double g_m2_month = 0;
};

struct Heat {
    double u_w_m2k = 0;
    std::optional<double> frsi = {}; // (inside face - outside air) / (inside air - outside air)
    std::optional<std::vector<Interface>> interfaces = {};
    std::optional<std::vector<Condensate>> condensate = {}; // empty: none settles; left out: not worked out
    bool inside_face_wet = false;                           // vapour condenses on the room side already
};

[[nodiscard]] Result<Heat> heat(const HeatInput& in, const HeatRule& rule = {});

} // namespace undersheet::trade
