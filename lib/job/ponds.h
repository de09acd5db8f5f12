// Standing water on the spot levels of the latest run.
#pragma once

#include "job/levels.h"
#include "trade/ponds.h"

namespace undersheet::job {

struct StandingWater {
    const Reading* deepest = nullptr;
    trade::Pond pond;
};

// Deepest first; none while there is no level at a gutter or an outlet, for then nothing can be said of ponds.
[[nodiscard]] std::vector<StandingWater> standing_water(const Job& job);

} // namespace undersheet::job
