#include "trade/fixings.h"

#include "trade/field_check.h"

#include <algorithm>

namespace undersheet::trade {

Result<Fixings> fixings(const FixingsInput& in, const FixingRule& rule) {
    if (const auto wrong = FieldCheck().above("board_mm", in.board_mm, 0, 100).fault()) return *wrong;
    return Fixings{std::max(rule.least_length_mm, rule.length_per_thickness * in.board_mm),
                   rule.diameter_per_thickness * in.board_mm};
}

} // namespace undersheet::trade
