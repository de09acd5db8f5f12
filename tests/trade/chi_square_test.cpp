#include "trade/chi_square.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace undersheet::trade;

namespace {

struct Row {
    int degrees;
    double at[6]; // at 2.5, 5, 95, 97.5, 99 and 99.9 %
};
// Computed: scipy 1.10.1 chi2.ppf (R qchisq agrees where it was asked: 3 degrees).
constexpr Row kRows[] = {
    {1, {0.0009820691172, 0.00393214, 3.841458821, 5.023886187, 6.634896601, 10.82756617}},
    {2, {0.05063561597, 0.1025865888, 5.991464547, 7.377758908, 9.210340372, 13.81551056}},
    {3, {0.2157952826, 0.3518463177, 7.814727903, 9.348403604, 11.34486673, 16.2662362}},
    {4, {0.4844185571, 0.7107230214, 9.487729037, 11.14328678, 13.27670414, 18.46682695}},
    {5, {0.8312116135, 1.145476226, 11.07049769, 12.83250199, 15.08627247, 20.51500565}},
    {6, {1.237344246, 1.635382894, 12.59158724, 14.44937534, 16.81189383, 22.45774448}},
    {10, {3.24697278, 3.940299136, 18.30703805, 20.48317735, 23.20925116, 29.58829845}},
    {17, {7.56418645, 8.671760205, 27.58711164, 30.19100912, 33.40866361, 40.79021671}},
    {30, {16.79077227, 18.49266098, 43.77297183, 46.97924224, 50.89218131, 59.7030643}},
    {100, {74.22192747, 77.92946517, 124.3421134, 129.5611972, 135.8067232, 149.4492528}},
};
constexpr double kShares[6] = {0.025, 0.05, 0.95, 0.975, 0.99, 0.999};

} // namespace

TEST_CASE("the chi-square limits agree with scipy to nine figures") {
    for (const Row& row : kRows)
        for (int i = 0; i < 6; ++i) {
            CAPTURE(row.degrees, kShares[i]);
            CHECK(chi_square_at(kShares[i], row.degrees) == Approx(row.at[i]).epsilon(1e-9));
        }
}

TEST_CASE("for two degrees of freedom the chi-square share is one less an exponential (closed form)") {
    for (const double sum : {0.001, 0.5, 2.0, 3.9, 4.1, 10.0, 60.0})
        CHECK(chi_square_share(sum, 2) == Approx(1 - std::exp(-sum / 2)).epsilon(1e-13));
}

TEST_CASE("for one degree of freedom the chi-square share is that of a normal error within its root (closed "
          "form)") {
    for (const double sum : {0.0001, 0.3, 1.0, 2.9, 3.1, 9.0, 30.0})
        CHECK(chi_square_share(sum, 1) == Approx(std::erf(std::sqrt(sum / 2))).epsilon(1e-13));
}

TEST_CASE("the chi-square share of its own limit is the share asked for, and nothing lies below zero") {
    for (int degrees = 1; degrees <= 60; ++degrees)
        for (const double share : {0.001, 0.1, 0.5, 0.95, 0.9999})
            CHECK(chi_square_share(chi_square_at(share, degrees), degrees) == Approx(share).epsilon(1e-12));
    CHECK(chi_square_share(0, 3) == 0);
    CHECK(chi_square_share(-1, 3) == 0);
    CHECK(chi_square_at(0, 3) == 0);
}
