// How likely a measured value is to be on the right side of a limit, given how far the instrument may be out.
//
// Promises: the normal chance that the true value conforms, in percent; at the limit itself it is 50. A value without
//   doubt (u = 0) conforms wholly or not at all, and meets a limit at the limit.
// From: JCGM 106 (clause from memory, not confirmed); the normal distribution, docs/formulas.md#doubt.
// Does not: decide. How near is too near is a rule of the method.
#pragma once

#include "base/result.h"

namespace undersheet::trade {

enum class Side { upper, lower }; // the limit is a most, or a least

struct DoubtInput {
    double value = 0;
    double u = 0; // standard uncertainty, same unit, 0 or more
    double limit = 0;
    Side side = Side::upper;
};

struct Doubt {
    double conforms_pct = 0;
};

[[nodiscard]] Result<Doubt> doubt(const DoubtInput& in);

// Standard uncertainty of an error known only by its limit, "± 3 %": limit / sqrt(3), every error up to it alike.
// JCGM 100 4.3.7, from memory, not confirmed.
[[nodiscard]] double limit_u(double limit);

} // namespace undersheet::trade
