#include "trade/slip.h"

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace undersheet::trade {

namespace {

// A slip has to explain the better part of what is wrong; the rest may be ordinary error, up to two standard deviations.
constexpr double kLeftShare = 0.15;
constexpr double kDoubts = 2;
constexpr double kLeft_mm = 4;

struct Guess {
    Slip slip;
    double left_mm; // what the slip does not explain
    double size_mm;
};

void add_round_slips(std::vector<Guess>& guesses, double written_m, double over_mm) {
    struct Round {
        SlipKind kind;
        double mm;
    };
    for (const Round round : {Round{SlipKind::ten_mm, 10}, Round{SlipKind::hundred_mm, 100},
                              Round{SlipKind::thousand_mm, 1000}}) {
        const double slip_mm = std::copysign(round.mm, over_mm);
        guesses.push_back({{round.kind, written_m - slip_mm / 1000}, std::abs(over_mm - slip_mm), round.mm});
    }
}

// Every length whose whole millimetres differ from those written by two neighbouring digits changing places.
void add_swaps(std::vector<Guess>& guesses, double written_m, double worked_out_m) {
    const auto mm = static_cast<std::int64_t>(std::llround(written_m * 1000));
    for (std::int64_t place = 1; place <= mm; place *= 10) {
        const std::int64_t low = mm / place % 10;
        const std::int64_t high = mm / (place * 10) % 10;
        const double swapped_m = static_cast<double>(mm + (low - high) * (place * 10 - place)) / 1000;
        if (low == high) continue;
        guesses.push_back({{SlipKind::digits_swapped, swapped_m},
                           std::abs(swapped_m - worked_out_m) * 1000,
                           std::abs(swapped_m - written_m) * 1000});
    }
}

// A hook on a trim starts the tape outside the corner: it can only read long.
void add_hook(std::vector<Guess>& guesses, double worked_out_m, double over_mm, const HookReach& hook) {
    const double inside = std::clamp(over_mm, hook.least_mm, hook.most_mm);
    guesses.push_back({{SlipKind::hook, worked_out_m}, std::abs(over_mm - inside), hook.most_mm});
}

} // namespace

std::string_view words(SlipKind kind) {
    switch (kind) {
    case SlipKind::digits_swapped:
        return "two digits swapped";
    case SlipKind::ten_mm:
        return "10 mm misread";
    case SlipKind::hundred_mm:
        return "100 mm misread";
    case SlipKind::thousand_mm:
        return "a whole metre misread";
    case SlipKind::hook:
        return "hook left on the trim";
    }
    return "";
}

std::vector<Slip> likely_slips(double written_m, double worked_out_m, double doubt_mm,
                               const HookReach& hook) {
    const double over_mm = (written_m - worked_out_m) * 1000;
    std::vector<Guess> guesses;
    add_swaps(guesses, written_m, worked_out_m);
    add_round_slips(guesses, written_m, over_mm);
    add_hook(guesses, worked_out_m, over_mm, hook);
    std::erase_if(guesses, [&](const Guess& guess) {
        return guess.left_mm > std::min(kDoubts * doubt_mm, std::max(kLeftShare * guess.size_mm, kLeft_mm));
    });
    std::stable_sort(guesses.begin(), guesses.end(),
                     [](const Guess& a, const Guess& b) { return a.left_mm < b.left_mm; });
    std::vector<Slip> slips;
    for (const Guess& guess : guesses) slips.push_back(guess.slip);
    return slips;
}

} // namespace undersheet::trade
