#include "trade/timber.h"

#include "trade/field_check.h"

namespace undersheet::trade {
namespace {

double quadratic(double x, double constant, double linear, double square) {
    return constant + x * (linear + x * square);
}

} // namespace

// Two layers of water on the wood: one bound (k1, k2), one dissolved (k). w is the weight of wood that holds one of water.
Result<Timber> timber(const TimberInput& in) {
    const auto wrong =
        FieldCheck().between("air_c", in.air_c, -20, 100).between("rh_pct", in.rh_pct, 0, 100).fault();
    if (wrong) return *wrong;
    const double w = quadratic(in.air_c, 349, 1.29, 0.0135);
    const double k = quadratic(in.air_c, 0.805, 0.000736, -0.00000273);
    const double k1 = quadratic(in.air_c, 6.27, -0.00938, -0.000303);
    const double k2 = quadratic(in.air_c, 1.91, 0.0407, -0.000293);
    const double kh = k * in.rh_pct / 100;
    const double bound = (k1 * kh + 2 * k1 * k2 * kh * kh) / (1 + k1 * kh + k1 * k2 * kh * kh);
    return Timber{1800 / w * (kh / (1 - kh) + bound)};
}

} // namespace undersheet::trade
