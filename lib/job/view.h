// What one device knew of a job at one moment: its parts, and what had been recorded.
//
// Two devices that wrote apart have a view each; when one takes the other's entries, the views are joined.
// Promises: joined_views() gives the same whichever comes first. Where two views moved one part to different states, the more
//   careful state stands and both moves stay as tips, until somebody settles it. A hand-over is not undone by what was
//   written elsewhere meanwhile.
// Does not: move parts (replayer.h).
#pragma once

#include "job/job.h"
#include "job/replay.h"

namespace undersheet::job {

struct Problem {
    const entry::Entry* entry = nullptr;
    std::string says = {};
};

struct View {
    std::vector<Part> parts = {};
    Recorded recorded = {};
    const entry::Entry* handed_over = nullptr;
    bool goes_on = false; // within a supplement the hand-over closes nothing
    std::vector<Problem> problems = {};
    std::vector<SettleItem> settled = {};
};

[[nodiscard]] View joined_views(View a, View b);

// The item of a part on which two devices went apart: its state is the more careful of the sides until it is settled.
[[nodiscard]] SettleItem settle_item(const Part& part);
[[nodiscard]] State state_of_tips(const Part& part);

} // namespace undersheet::job
