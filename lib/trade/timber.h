// The moisture that solid wood settles at when it lies long enough in air of one temperature and humidity.
//
// Promises: the published fit within 0.005 % of itself; the fit is weak above 95 % humidity, as its author says.
// From: Simpson 1998 (FPL-RN-0268), found in open code that cites it; docs/formulas.md#timber. Its fit to the handbook
//   table: mean deviation under 0.13, largest 0.9 % moisture (abstract).
// Does not: say what a meter on the deck should read. OSB and plywood settle lower, and a roof rarely lies still.
#pragma once

#include "base/result.h"

namespace undersheet::trade {

struct TimberInput {
    double air_c = 0;  // -20 to 100
    double rh_pct = 0; // 0 to 100
};

struct Timber {
    double emc_pct = 0; // water by dry weight
};

[[nodiscard]] Result<Timber> timber(const TimberInput& in);

} // namespace undersheet::trade
