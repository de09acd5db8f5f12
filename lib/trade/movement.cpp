#include "trade/movement.h"

#include "trade/field_check.h"

namespace undersheet::trade {

Result<Movement> movement(const MovementInput& in) {
    const auto wrong = FieldCheck()
                           .between("length_mm", in.length_mm, 0, 100'000)
                           .between("coefficient_per_k", in.coefficient_per_k, 0, 0.001)
                           .between("from_c", in.from_c, -100, 200)
                           .between("to_c", in.to_c, -100, 200)
                           .fault();
    if (wrong) return *wrong;
    return Movement{in.coefficient_per_k * in.length_mm * (in.to_c - in.from_c)};
}

} // namespace undersheet::trade
