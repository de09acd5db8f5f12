#include "trade/doubt.h"

#include "trade/field_check.h"

#include <cmath>
#include <numbers>

namespace undersheet::trade {
namespace {

constexpr double kMost = 1e12; // any unit; only to keep infinities out

double normal_pct(double spread) { return 50 * std::erfc(-spread / std::numbers::sqrt2); }

} // namespace

Result<Doubt> doubt(const DoubtInput& in) {
    const auto wrong = FieldCheck()
                           .between("value", in.value, -kMost, kMost)
                           .between("u", in.u, 0, kMost)
                           .between("limit", in.limit, -kMost, kMost)
                           .fault();
    if (wrong) return *wrong;
    const double room = in.side == Side::upper ? in.limit - in.value : in.value - in.limit;
    if (in.u == 0) return Doubt{room >= 0 ? 100.0 : 0.0};
    return Doubt{normal_pct(room / in.u)};
}

double limit_u(double limit) { return limit / std::numbers::sqrt3; }

} // namespace undersheet::trade
