#include "trade/tape.h"

#include "trade/field_check.h"
#include "trade/metres.h"

#include <algorithm>
#include <cmath>

namespace undersheet::trade {
namespace {

// A length worked from millimetres may come out a hair over a whole metre; a nanometre is not another metre.

double whole_metres_up(double m) { return std::ceil(m - kHair_m); }

} // namespace

Result<Tape> tape(const TapeInput& in, std::span<const TapeClass> classes) {
    if (const auto wrong = FieldCheck().above("m", in.m, 0, 200).fault()) return *wrong;
    const auto found = std::find_if(classes.begin(), classes.end(),
                                    [&](const TapeClass& known) { return known.number == in.tape_class; });
    if (found == classes.end()) {
        return impossible("class", "there is no tape class " + std::to_string(in.tape_class),
                          "give 1, 2 or 3, as printed on the tape in Roman figures");
    }
    return Tape{found->fixed_mm + found->per_m_mm * whole_metres_up(in.m) + (in.hook ? found->hook_mm : 0)};
}

} // namespace undersheet::trade
