// Whether a firm's own method file can be judged by: what the code asks of a method is all there.
//
// Promises: a method that passes has every limit, every worked-out rule and every level that judging looks up, and no guard or
//   computation that nobody knows; what would silently not be checked is refused by name. A limit beyond a thousand times
//   the usual one (or beyond 1000, where that is less) is refused. A firm may change values, words,
//   severities of its own rules, holds, steps and the order of work.
// Does not: say whether the figures are sound.
#pragma once

#include "method/kinds.h"
#include "method/method.h"

namespace undersheet::job {

// `usual` is the method that the program carries.
[[nodiscard]] Done method_fits(const method::Method& own, const method::Method& usual,
                               const method::Catalogue& kinds);

} // namespace undersheet::job
