// How much longer or shorter a trim gets between two temperatures: the gap that has to be left at its joint.
//
// Promises: coefficient x length x difference; positive when it grows, negative when it shrinks.
// From: docs/formulas.md#movement.
// Does not: know coefficients by itself; those below are for the caller to name with their source.
#pragma once

#include "base/result.h"

namespace undersheet::trade {

inline constexpr double kSteel_per_k = 12e-6;     // found second-hand, source not authoritative
inline constexpr double kAluminium_per_k = 23e-6; // from memory, not confirmed
inline constexpr double kPvcU_per_k = 70e-6;      // from memory, not confirmed; 40 to 80 found second-hand

struct MovementInput {
    double length_mm = 0;         // 0 to 100 000
    double coefficient_per_k = 0; // 0 to 0.001
    double from_c = 0;            // -100 to 200
    double to_c = 0;
};

struct Movement {
    double movement_mm = 0;
};

[[nodiscard]] Result<Movement> movement(const MovementInput& in);

} // namespace undersheet::trade
