#include "job/levels.h"

#include <cmath>

namespace undersheet::job {
namespace {

void take_point(LevelRun& run, const Roof& roof, const Reading& reading) {
    const auto z_mm = reading.number("z_mm");
    const auto at = locate(roof, reading.place);
    if (z_mm && at) run.points.push_back({&reading, *at, *z_mm});
}

// The closing reading stands on the first point; where it names another place, that place's reading is its partner.
void close_run(LevelRun& run, const Roof& roof) {
    const auto z_mm = run.closing->number("z_mm");
    if (!z_mm || run.points.empty()) return;
    const auto at = locate(roof, run.closing->place);
    const LevelPoint* partner = &run.points.front();
    for (const LevelPoint& point : run.points) {
        if (at && trade::distance_m(point.at, *at) <= roof.near_m) {
            partner = &point;
            break;
        }
    }
    run.closing_error_mm = *z_mm - partner->z_mm;
}

// One set-up of the instrument on one surface, in one visit: heights of different ones have nothing in common.
bool is_of_one_run(const Reading& level, const Reading& last) {
    const std::string on = level.word("on"), last_on = last.word("on");
    return level.word("run") == last.word("run") && level.entry->supplement == last.entry->supplement &&
           (on.empty() || last_on.empty() || on == last_on);
}

} // namespace

std::optional<LevelRun> latest_run(const Job& job) {
    const Reading* last = job.latest("level");
    if (last == nullptr) return std::nullopt;
    LevelRun run{.run = last->word("run"), .points = {}};
    for (const Reading* level : job.all("level")) {
        if (!is_of_one_run(*level, *last)) continue;
        if (level->word("closing") == "yes")
            run.closing = level;
        else
            take_point(run, job.roof, *level);
    }
    if (run.closing != nullptr) close_run(run, job.roof);
    return run;
}

} // namespace undersheet::job
