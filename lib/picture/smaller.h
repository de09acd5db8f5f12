// A photograph with as many points as a paper can show, for a paper that can still be sent from a roof.
//
// Promises: a JPEG whose longer side has more points than wanted comes back with at least as many as wanted and fewer than before, held the
//   same way round, with the same colour profile, and the same bytes on every machine. Anything else comes back as it came: a
//   PNG, a picture for printing, one that its reader complains of, one that would take more memory or time than a phone should
//   give it, and one that would not become shorter.
// Does not: sharpen or turn; does not touch the original, which stays in the book.
// Threads: pure functions.
#pragma once

#include <string>
#include <string_view>

namespace undersheet::picture {

[[nodiscard]] std::string smaller(std::string_view bytes, int longer_side_px);

} // namespace undersheet::picture
