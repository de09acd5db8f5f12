#include "job/money.h"

namespace undersheet::job {
namespace {

std::int64_t half_up(const Decimal& amount) {
    std::int64_t unit = 1;
    for (int place = 0; place < amount.places(); ++place) unit *= 10;
    const std::int64_t rest = amount.digits() % unit;
    return amount.digits() / unit + (rest >= unit - rest ? 1 : 0);
}

} // namespace

Result<std::int64_t> cost_of(const Decimal& amount, std::int64_t price) {
    const auto product = amount.times(Decimal::of(price));
    if (!product) return product.fault();
    return half_up(*product);
}

Result<std::int64_t> share_of(std::int64_t sum, const Decimal& pct) {
    const auto hundredth = pct.times(*Decimal::scaled(1, 2));
    if (!hundredth) return hundredth.fault();
    return cost_of(*hundredth, sum);
}

} // namespace undersheet::job
