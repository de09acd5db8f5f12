// The pieces of a JPEG file, one behind the other (ITU-T T.81, annex B).
//
// Promises: every piece lies within the bytes; a file that cannot be walked piece by piece to its end mark has none.
// Does not: look at the points of the picture.
// Threads: pure functions.
#pragma once

#include "picture/exif.h"

#include <optional>
#include <vector>

namespace undersheet::picture {

enum Marker : unsigned {
    kScan = 0xDA,
    kEnd = 0xD9,
    kApp0 = 0xE0,
    kApp1 = 0xE1,
    kApp2 = 0xE2,
    kAdobe = 0xEE,
    kComment = 0xFE
};

struct Segment {
    unsigned marker;
    std::string_view whole, body; // a scan's whole goes on to the end of its points
};

// What the head of the picture says, for the three processes that are in use: baseline, extended, progressive, of 8 bits.
struct Frame {
    int width = 0, height = 0; // as stored, in points
    int components = 0;        // 1 grey, 3 colours, 4 for printing
    bool is_progressive = false;
};

[[nodiscard]] std::vector<Segment> segments_of(std::string_view bytes);
[[nodiscard]] std::optional<Frame> frame_among(const std::vector<Segment>& segments);
[[nodiscard]] bool has_points(const std::vector<Segment>& segments); // something to draw
[[nodiscard]] Exif exif_among(const std::vector<Segment>& segments);
[[nodiscard]] std::string segment_of(Marker marker, std::string_view body);

} // namespace undersheet::picture
