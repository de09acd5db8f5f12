// What sort of picture some bytes are, by how they begin: the two sorts a book takes.
#pragma once

#include <string_view>

namespace undersheet::picture {

// Start of image and the first byte of a marker (ISO/IEC 10918-1, B.1.1.3); PNG signature (ISO/IEC 15948, 5.2).
[[nodiscard]] inline bool is_jpeg(std::string_view bytes) { return bytes.starts_with("\xFF\xD8\xFF"); }
[[nodiscard]] inline bool is_png(std::string_view bytes) { return bytes.starts_with("\x89PNG\r\n\x1A\n"); }

} // namespace undersheet::picture
