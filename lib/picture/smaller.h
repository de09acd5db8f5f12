// A photograph with as many points as a paper can show, for a paper that can still be sent from a roof.
//
// Promises: a JPEG that can be halved and still has as many points along its longer side as wanted comes back with that many or some more,
//   held the same way round, with the same colour profile, and the same bytes on every machine. Anything else comes back as it came: what
//   is less than twice as large (writing it anew would cost more than it saves), a PNG, a picture for printing, one that its reader
//   complains of, one that would take more memory or time than a phone should give it, and one that would not become shorter.
// Needs: bytes as for_others() gives them (camera.h), when they go to others: what stands beside the picture goes with it.
// Does not: sharpen or turn; does not touch the original, which stays in the book.
// Threads: pure functions.
#pragma once

#include <string>
#include <string_view>

namespace undersheet::picture {

[[nodiscard]] std::string smaller(std::string_view bytes, int longer_side_px);

} // namespace undersheet::picture
