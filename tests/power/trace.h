// What a program asked of the disk, step by step, as tests/power/recorder/recorder.cpp wrote it down.
//
// The recorder is preloaded into the built program, so that what is tried is the program itself: SQLite's own file system, the
// photographs, the keys, hand-over files put into place.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace undersheet::power {

struct Step {
    // ended: a program ended here; what it answered has been read by somebody.
    enum class Kind : char {
        create = 'c',
        write = 'w',
        truncate = 't',
        sync = 's',
        link = 'l',
        move = 'm',
        remove = 'r',
        folder = 'f',
        ended = 'e'
    };
    Kind kind = Kind::write;
    std::string file = {}, to = {}; // to: link and move
    std::uint64_t at = 0;           // write: offset; truncate: new size
    std::string bytes = {};         // write
};

// As it stands in the trace, each step behind the other; numbers as this machine has them.
struct StepHead {
    char kind;
    std::uint32_t file_bytes, to_bytes;
    std::uint64_t at, size;
};

[[nodiscard]] std::vector<Step> read_trace(const std::string& file);

} // namespace undersheet::power
