#include "tests/bench/cases.h"

#include "base/decimal.h"

#include <string>

namespace undersheet::bench {

Ratios noise() {
    const auto parse_many = [] {
        for (int number = 0; number < 20000; ++number) keep(Decimal::parse(std::to_string(number) + ".5"));
    };
    return ratio_of(parse_many, parse_many);
}

} // namespace undersheet::bench
