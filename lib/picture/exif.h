// What a camera wrote beside a picture (Exif 2.32): how it was held, when by its own clock, and whether it says where.
//
// Promises: bytes that are cut short or lie about their lengths give what could be read up to there. Nothing is believed.
// Does not: look for the block in a file; whoever walks a JPEG hands over the body of its APP1 segment.
// Threads: pure functions.
#pragma once

#include <string>
#include <string_view>

namespace undersheet::picture {

struct Exif {
    int turned = 1; // 1 upright, 3 upside down, 6 and 8 on its side, the even pairs mirrored
    std::string taken =
        {}; // "2026-06-11T08:05:00" on the camera's clock, in no time zone; "" where it does not say
    bool has_position = false; // there is a directory of where
};

inline constexpr std::string_view kExifMark("Exif\0\0", 6);

[[nodiscard]] Exif read_exif(std::string_view segment);

// A block that says how the camera was held and nothing else.
[[nodiscard]] std::string exif_turned(int turned);

} // namespace undersheet::picture
