// Guesses what slip of the hand or eye turns the length a tape should show into the one that was written down.
//
// Promises: only suggests; nothing is ever changed by it. A slip is named when what it leaves unexplained is within
//   twice the doubt given, and within 15 % of the slip or 4 mm, whichever is more; nearest first.
// Comes from: the slips the trade knows: digits swapped, 10, 100 or 1000 mm misread, the hook left on a trim
//   (practice); docs/formulas.md#slips.
// Threads: pure functions on values.
#pragma once

#include <string_view>
#include <vector>

namespace undersheet::trade {

enum class SlipKind { digits_swapped, ten_mm, hundred_mm, thousand_mm, hook };

[[nodiscard]] std::string_view words(SlipKind kind); // "two digits swapped"

struct Slip {
    SlipKind kind{};
    double would_be_m = 0; // what the tape would have shown
};

struct HookReach { // how far a trim sticks out beyond the corner
    double least_mm = 20;
    double most_mm = 30;
};

// `written_m` stands in the record, `worked_out_m` follows from the other tapes with standard deviation `doubt_mm`.
[[nodiscard]] std::vector<Slip> likely_slips(double written_m, double worked_out_m, double doubt_mm,
                                             const HookReach& hook = {});

} // namespace undersheet::trade
