#include "trade/chi_square.h"

#include <cmath>

namespace undersheet::trade {

namespace {

constexpr int kMostTerms = 10'000;
constexpr double kSmall = 1e-16;

double lead(double a, double x) { return std::exp(a * std::log(x) - x - std::lgamma(a)); }

double lower_by_series(double a, double x) {
    double term = 1 / a;
    double sum = term;
    for (int n = 1; n < kMostTerms && term > kSmall * sum; ++n) {
        term *= x / (a + n);
        sum += term;
    }
    return lead(a, x) * sum;
}

// Lentz's way of running down a continued fraction.
double upper_by_fraction(double a, double x) {
    constexpr double kTiny = 1e-300;
    double b = x + 1 - a;
    double c = 1 / kTiny;
    double d = 1 / b;
    double product = d;
    for (int n = 1; n < kMostTerms; ++n) {
        const double an = -n * (n - a);
        b += 2;
        d = 1 / (an * d + b);
        c = b + an / c;
        product *= c * d;
        if (std::abs(c * d - 1) < kSmall * 10) break;
    }
    return lead(a, x) * product;
}

} // namespace

double chi_square_share(double sum, int degrees) {
    if (sum <= 0) return 0;
    const double a = degrees / 2.0;
    const double x = sum / 2;
    return x < a + 1 ? lower_by_series(a, x) : 1 - upper_by_fraction(a, x);
}

double chi_square_at(double share, int degrees) {
    if (degrees < 1 || share <= 0) return 0;
    double low = 0;
    double high = degrees;
    while (chi_square_share(high, degrees) < share) high *= 2;
    for (double middle = high / 2; middle > low && middle < high; middle = (low + high) / 2)
        (chi_square_share(middle, degrees) < share ? low : high) = middle;
    return high;
}

} // namespace undersheet::trade
