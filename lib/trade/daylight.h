// When the sun rises and sets at the roof: gluing stops in time for the last coat to dry, and cameras want
// light.
//
// Promises: from 60°S to 65°N within a minute of an independent ephemeris for the usual definition (upper
//   edge of the sun on a flat horizon, 34' of refraction); nearer the poles the sun grazes the horizon and no
//   table agrees to a minute. Each of the two is left out where it does not happen, and `polar` says why.
// From: low-accuracy solar coordinates of Meeus, docs/formulas.md#daylight, from memory, not confirmed;
//   checked against an independent tool (tests/trade/daylight_test.cpp).
// Does not: know hills, houses or cloud, or when the clocks change (the offset is given).
#pragma once

#include "base/result.h"

#include <optional>

namespace undersheet::trade {

struct DaylightInput {
    double latitude_deg = 0;  // north positive, -90 to 90
    double longitude_deg = 0; // east positive, -180 to 180
    int year = 2000;          // 1901 to 2099
    int month = 1;
    int day = 1;
    int offset_min = 0; // local time less UTC, -720 to 840
};

enum class Polar { none, day, night };

// The light around the noon that falls on that local date. In the far north a summer sunset can come after
// midnight: then it is more than 1440.
struct Daylight {
    std::optional<double> sunrise_min = {}; // minutes after local midnight
    std::optional<double> sunset_min = {};
    // Day when the sun does not set, or was up already; night when it does not rise.
    Polar polar = Polar::none;
};

// Height of the sun's centre that counts as rising: half the sun (16') and refraction (34') under the
// horizon.
inline constexpr double kRising_deg = -0.8333;

// Not called plain `daylight`: that name belongs to the C library (time.h).
[[nodiscard]] Result<Daylight> find_daylight(const DaylightInput& in, double rising_deg = kRising_deg);

} // namespace undersheet::trade
