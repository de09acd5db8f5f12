// The roof's outline from taped lengths: the corners that fit the tapes best, and whether the tapes agree.
//
// Promises: every misfit is shown and no tape is ever changed or left out. With one spare tape it says only that a tape
//   is wrong; it names one when the rest agree without it and no other tape would explain the misfit nearly as well.
//   Corners are good to 0.01 mm as arithmetic; `sd_mm` is what the tapes' own doubt makes of them.
// Comes from: least squares on distances with redundancy numbers and w-statistics (Baarda), docs/formulas.md#outline.
// Does not: measure arcs, or tell a plan from its mirror image; the corners are taken to run anticlockwise.
// Threads: pure functions on values.
#pragma once

#include "trade/polygon.h"
#include "trade/slip.h"

#include <optional>
#include <string>
#include <vector>

namespace undersheet::trade {

struct TapedLength {
    std::string from;
    std::string to;
    double m = 0;                     // above 0, at most 200
    std::optional<double> sd_mm = {}; // this tape's own standard deviation
};

// Each a default with its source; the method may carry others.
struct OutlineRules {
    double accept_pct = 95; // chi-square, upper side only (convention)
    double suspect_w =
        3.29; // |w| from which a single tape is looked at: 0.1 %, two-sided (Baarda; use from memory)
    double clearer_by =
        10.83; // how much worse the next explanation must fit: 0.1 % of chi-square, 1 degree (computed)
    double told_apart =
        0.98; // w that go together more than this belong to tapes that cannot be told apart (practice)
    double loose_mm = 500; // a corner known no better than this is not held (practice)
    HookReach hook = {};   // practice
};

struct OutlineInput {
    std::vector<std::string> corners; // anticlockwise from A
    std::vector<TapedLength> tapes;
    double sd_mm = 3; // of every tape without its own (practice)
};

struct Corner {
    std::string label;
    double x_m = 0;
    double y_m = 0;
    double sd_mm = 0; // √(sd_x² + sd_y²), A and the direction of AB being held
    double sd_x_mm = 0;
    double sd_y_mm = 0;
};

struct JudgedTape {
    std::string from;
    std::string to;
    double m = 0;
    double residual_mm = 0; // adjusted minus taped
    double redundancy = 0;
    double w = 0;
    bool suspect = false;                  // the one tape that is wrong, where that can be said
    bool perhaps = false;                  // one of several that could each be the wrong one
    std::optional<double> from_others_m{}; // the same length worked out without this tape
    std::vector<Slip> slips = {};          // for suspect and perhaps
};

struct NextTape {
    std::string from;
    std::string to;
};

// Another shape that the tapes fit as well; tape this length to be sure which it is.
struct OtherShape {
    NextTape tape;
    double here_m = 0;  // in the shape given
    double there_m = 0; // in the other
};

struct Outline {
    std::vector<Corner> corners;
    std::vector<double> angles_deg;
    double area_m2 = 0;
    double area_sd_m2 = 0;
    double perimeter_m = 0;
    int spare_tapes = 0;
    double vpv = 0;
    double vpv_limit = 0; // 0 without a spare tape
    bool accepted = true;
    bool can_locate = false;
    std::optional<double>
        misclosure_mm{}; // largest difference between a tape and the same length from all the others
    std::vector<JudgedTape> tapes;
    std::optional<NextTape> next_tape{}; // where one more would help most, while no wrong tape could be named
    std::optional<OtherShape> other_shape{};
};

// Refused: a label twice or unknown, an impossible length, tapes that leave a corner loose or hold it too badly (the
// fault says which tape to take next), lengths no roof can have, and two shapes that nothing decides between.
[[nodiscard]] Result<Outline> outline(const OutlineInput& in, const OutlineRules& rules = {});

[[nodiscard]] Polygon polygon(const Outline& outline);

} // namespace undersheet::trade
