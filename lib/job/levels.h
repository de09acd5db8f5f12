// The spot levels that are judged: the latest run on one surface in one visit, its closing reading apart.
#pragma once

#include "job/job.h"

namespace undersheet::job {

struct LevelPoint {
    const Reading* reading = nullptr;
    trade::Point at;
    double z_mm = 0;
};

struct LevelRun {
    std::string run;
    std::vector<LevelPoint> points; // in the order they were read
    const Reading* closing = nullptr;
    std::optional<double> closing_error_mm = {}; // closing less first reading at that place
};

[[nodiscard]] std::optional<LevelRun> latest_run(const Job& job);

} // namespace undersheet::job
