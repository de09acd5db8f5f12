// Cuts the power behind every step of a trace, and opens what the disk may then hold.
//
// What has to hold of every image: each book and each hand-over file in it verifies, and is as it was when the last program
// before the cut had ended, or as it was when the one that was cut off would have. Nothing between, nothing lost.
#pragma once

#include "tests/power/trace.h"

#include <cstddef>
#include <functional>

namespace undersheet::power {

struct Counted {
    std::size_t programs = 0; // that changed something
    std::size_t steps = 0;    // at which the power was cut
    std::size_t images = 0;   // what the disk may hold then: killed, cut and torn
    std::size_t good = 0;     // of the images
    std::size_t looked = 0; // books and hand-over files opened and verified: those of the images that differ
    std::string first_bad = {};
};

// True: the step never reaches the disk. For finding out whether losses are noticed.
using LeftOut = std::function<bool(const Step&)>;

struct Cutting {
    std::string trace = {};
    std::string folder = {}; // where the traced files were
    // Behind each step: killed, cut, and torn three times; else these three kinds take turns from step to step.
    bool all_images = true;
    unsigned seed = 1;
    LeftOut is_left_out = {};
    bool stop_at_bad = false;
};

[[nodiscard]] Counted cut_everywhere(const Cutting& cutting);

} // namespace undersheet::power
