// A photograph as it is handed to others: what is needed to draw it, and nothing else that the camera wrote beside it.
//
// Promises: every point of the picture is as it was, and it is held the same way round; where it was taken, by which machine, thumbnails
//   and whatever hangs behind its end are gone. What cannot be walked piece by piece to its end is not handed on at all ("").
// Does not: shrink a picture (smaller.h) or write it anew. The original stays in the book, under its own fingerprint.
// Threads: pure functions.
#pragma once

#include <string>
#include <string_view>

namespace undersheet::picture {

// When it was taken by the camera's own clock, as Exif has it; "" for a PNG and where a JPEG does not say.
[[nodiscard]] std::string camera_time(std::string_view bytes);

[[nodiscard]] std::string for_others(std::string_view bytes); // JPEG or PNG

} // namespace undersheet::picture
