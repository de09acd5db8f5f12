// What a pin meter says of the board: the reading, the reading corrected for cold or warm wood, and the worse
// of the two.
//
// Promises: the correction is kept apart from the reading and carries its own name and source; the meter's
//   believable range is judged on the raw reading, because that is what the meter saw.
// From: docs/formulas.md#moisture. Published rules disagree by 2 points at 10 °C, so a rule is data and never
//   a constant.
// Does not: correct for species or for glue in OSB (that is the meter's setting), or say how wet is too wet.
#pragma once

#include "base/result.h"

#include <optional>
#include <string>

namespace undersheet::trade {

// A straight-line correction: points added for each K the board is below the reference, taken off for each K
// above.
struct MoistureRule {
    std::string name;
    std::string source;
    double pct_per_k_below = 0;
    double pct_per_k_above = 0;
    double reference_c = 20;
    double dead_band_k = 0; // no correction up to and at this distance; beyond it the whole distance counts
};
// +0.15 % per K below 20 °C, -0.15 above. Practice, no published source; the meter's own booklet overrides
// it.
[[nodiscard]] MoistureRule practice_moisture_rule();
// 0.5 % for each 5 °C away from 20 °C, only if more than 5 °C away. Meter makers' manuals.
[[nodiscard]] MoistureRule five_degree_moisture_rule();
// Nothing added: for a meter that corrects by itself.
[[nodiscard]] MoistureRule no_moisture_rule();

// Where a pin meter can be believed: about 7 % to fibre saturation. Meter makers' manuals.
struct MeterRange {
    double least_pct = 7;
    double most_pct = 28;
};

struct MoistureInput {
    double reading_pct = 0;
    std::optional<double> board_c = {}; // without it only the raw reading is judged
};

enum class MeterReach {
    below,
    within,
    above
}; // where the raw reading lies; `above` may be any wetness at all

struct Moisture {
    std::optional<double> corrected_pct = {}; // never below 0
    double judged_pct = 0;                    // the worse (wetter) of raw and corrected
    bool judged_corrected = false;            // which of the two that was
    bool believable = false; // the raw reading is within the meter's range, its ends included
    MeterReach reach = MeterReach::within;
};

[[nodiscard]] Result<Moisture> moisture(const MoistureInput& in,
                                        const MoistureRule& rule = practice_moisture_rule(),
                                        const MeterRange& range = {});

} // namespace undersheet::trade
