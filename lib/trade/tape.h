// How far wrong a steel tape may be and still be within its class: the largest permitted error at a length.
//
// Promises: ±(a + b L) mm with L rounded up to the whole metre (a whole number of metres stays), plus c when
//   the reading starts at the hook.
// From: Measuring Instruments Regulations (UK SI 2016/1153, schedule 1I), at 20 °C and 50 N pull from 5 m;
//   docs/formulas.md#tape.
// Does not: allow for sag, for a bent hook or for a tape with no class printed on it.
#pragma once

#include "base/result.h"

#include <array>
#include <span>

namespace undersheet::trade {

struct TapeClass {
    int number; // 1, 2, 3, printed on the tape as I, II, III
    double fixed_mm;
    double per_m_mm;
    double hook_mm;
};
// UK SI 2016/1153 schedule 1I, found.
inline constexpr std::array<TapeClass, 3> kTapeClasses{
    {{1, 0.1, 0.1, 0.1}, {2, 0.3, 0.2, 0.2}, {3, 0.6, 0.4, 0.3}}};

struct TapeInput {
    double m = 0;       // above 0, at most 200
    int tape_class = 2; // `class` on the command line
    bool hook = false;  // the reading starts at the end of the tape
};

struct Tape {
    double mpe_mm = 0; // permitted error, either way; its standard uncertainty is doubt.h's limit_u
};

[[nodiscard]] Result<Tape> tape(const TapeInput& in, std::span<const TapeClass> classes = kTapeClasses);

} // namespace undersheet::trade
