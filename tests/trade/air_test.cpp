#include "trade/air.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>
#include <string>

using namespace undersheet;
using namespace undersheet::trade;

namespace {

struct DewRow {
    double air_c, rh_pct, wmo_c, alduchov_c, iso13788_c, ashrae_c;
};
// Columns 3 to 5 computed in Python as b g / (a - g); the last by psychrolib 1.1.1, GetTDewPointFromRelHum (ASHRAE 2017).
constexpr DewRow kDewRows[] = {
    {20, 50, 9.255, 9.261, 9.269, 9.272},     {25, 80, 21.307, 21.309, 21.306, 21.309},
    {10, 80, 6.706, 6.708, 6.714, 6.713},     {5, 90, 3.495, 3.496, 3.5, 3.498},
    {15, 65, 8.47, 8.473, 8.481, 8.482},      {30, 40, 14.925, 14.933, 14.925, 14.936},
    {0, 95, -0.706, -0.705, -0.703, -0.621},  {12, 72, 7.105, 7.107, 7.115, 7.115},
    {18, 60, 10.115, 10.119, 10.126, 10.128}, {22, 55, 12.541, 12.546, 12.549, 12.553},
    {8, 98, 7.703, 7.703, 7.704, 7.704},      {35, 30, 14.836, 14.847, 14.829, 14.844},
    {2, 85, -0.258, -0.257, -0.25, -0.222},   {28, 70, 22.015, 22.018, 22.012, 22.017},
};

struct SaturationRow {
    double air_c, ashrae_pa, wmo_pa, alduchov_pa, iso13788_pa;
};
// Computed with the same tools.
constexpr SaturationRow kSaturationRows[] = {
    {0.01, 611.66, 611.64, 611.38, 610.94},       {5, 872.49, 871.74, 871.56, 871.86},
    {10, 1228.0, 1226.03, 1226.02, 1227.31},      {20, 2338.8, 2332.6, 2333.44, 2336.95},
    {25, 3169.22, 3160.06, 3161.74, 3165.92},     {30, 4246.03, 4233.72, 4236.65, 4240.51},
    {50, 12349.86, 12345.16, 12360.58, 12328.55},
};

double dew_point(double air_c, double rh_pct, const Magnus& magnus = kMagnusWmo) {
    return air({.air_c = air_c, .rh_pct = rh_pct}, magnus)->dew_point_c;
}

} // namespace

TEST_CASE("the dew point agrees with its own formula worked elsewhere, for each set of constants") {
    for (const auto& row : kDewRows) {
        CAPTURE(row.air_c, row.rh_pct);
        CHECK(dew_point(row.air_c, row.rh_pct) == Approx(row.wmo_c).margin(0.002));
        CHECK(dew_point(row.air_c, row.rh_pct, kMagnusAlduchovEskridge) ==
              Approx(row.alduchov_c).margin(0.002));
        CHECK(dew_point(row.air_c, row.rh_pct, kMagnus13788) == Approx(row.iso13788_c).margin(0.002));
    }
}

TEST_CASE("the dew point lies within 0.03 K of the ASHRAE formulas from 0 °C up") {
    for (const auto& row : kDewRows) {
        if (row.ashrae_c < 0) continue;
        CAPTURE(row.air_c, row.rh_pct);
        CHECK(dew_point(row.air_c, row.rh_pct) == Approx(row.ashrae_c).margin(0.03));
    }
}

TEST_CASE("the dew point lies within 0.05 K of an independent library of the properties of water (iapws, "
          "computed)") {
    struct Row {
        double air_c, rh_pct, dew_point_c;
    };
    constexpr Row kRows[] = {
#include "fixtures/reference/air.inc"
    };
    for (const Row& row : kRows) {
        CAPTURE(row.air_c, row.rh_pct);
        CHECK(dew_point(row.air_c, row.rh_pct) == Approx(row.dew_point_c).margin(0.05));
    }
}

TEST_CASE("below 0 °C the dew point is not the frost point, which lies higher") {
    // ASHRAE gives the frost point there: -0.621 and -0.222 °C (psychrolib, computed).
    CHECK(dew_point(0, 95) < -0.621 - 0.03);
    CHECK(dew_point(2, 85) < -0.222 - 0.03);
}

TEST_CASE("the dew point agrees with points found in print") {
    CHECK(dew_point(25, 80) == Approx(21.3094).margin(0.03)); // psychrolib documentation, found
    CHECK(dew_point(30, 55) == Approx(20).margin(0.5)); // second-hand, source not authoritative, rounded
}

TEST_CASE("saturation pressure agrees with its own formula and lies within a third of a percent of ASHRAE") {
    for (const auto& row : kSaturationRows) {
        CAPTURE(row.air_c);
        CHECK(saturation_pa(row.air_c) == Approx(row.wmo_pa).margin(0.006));
        CHECK(saturation_pa(row.air_c, kMagnusAlduchovEskridge) == Approx(row.alduchov_pa).margin(0.006));
        CHECK(saturation_pa(row.air_c, kMagnus13788) == Approx(row.iso13788_pa).margin(0.006));
        CHECK(saturation_pa(row.air_c) == Approx(row.ashrae_pa).epsilon(0.0033));
    }
    // ASHRAE Handbook 2017, chapter 1, table 3, found in a second text (the psychrolib tests).
    CHECK(saturation_pa(5) == Approx(872.6).epsilon(0.0033));
    CHECK(saturation_pa(25) == Approx(3169.7).epsilon(0.0033));
    CHECK(saturation_pa(50) == Approx(12351.3).epsilon(0.0033));
}

TEST_CASE("the margin is the surface less the dew point and falls below 3 K where it should") {
    // Computed with the WMO constants: T 15, RH 65 gives 8.470; T 10, RH 80 gives 6.706.
    const auto margin = [](double air_c, double rh_pct, double surface_c) {
        return *air({.air_c = air_c, .rh_pct = rh_pct, .surface_c = surface_c})->margin_k;
    };
    CHECK(margin(15, 65, 11.4) == Approx(2.93).margin(0.002));
    CHECK(margin(15, 65, 11.5) == Approx(3.03).margin(0.002));
    CHECK(margin(10, 80, 9.7) < 3);
    CHECK(margin(10, 80, 9.71) > 3);
    CHECK(margin(10, 80, 5) < 0);
}

TEST_CASE("without a surface there is no margin, and without both doubts there is no doubt") {
    CHECK_FALSE(air({.air_c = 10, .rh_pct = 80})->margin_k);
    CHECK_FALSE(air({.air_c = 10, .rh_pct = 80, .air_u_k = 0.5})->dew_point_u_k);
    CHECK_FALSE(air({.air_c = 10, .rh_pct = 80, .rh_u_pct = 3})->dew_point_u_k);
}

TEST_CASE("the doubt of the dew point follows from the doubts of both instruments") {
    // Computed by first-order propagation; a Monte Carlo run of 2 million gave 1.0072 and 0.7328.
    const auto doubt = [](double air_c, double rh_pct, double air_u_k, double rh_u_pct) {
        return *air({.air_c = air_c, .rh_pct = rh_pct, .air_u_k = air_u_k, .rh_u_pct = rh_u_pct})
                    ->dew_point_u_k;
    };
    CHECK(doubt(20, 50, 0.5, 3) == Approx(1.0037).margin(0.001));
    CHECK(doubt(10, 80, 0.5, 3) == Approx(0.7319).margin(0.001));
    CHECK(doubt(20, 50, 1, 0) == Approx(0.92).margin(0.0005)); // each reading alone
    CHECK(doubt(20, 50, 0, 1) == Approx(0.2974).margin(0.0001));
    CHECK(doubt(20, 50, 0, 0) == 0);
}

TEST_CASE("the doubt agrees with the slope of the dew point itself") {
    for (const auto& row : kDewRows) {
        CAPTURE(row.air_c, row.rh_pct);
        const double step = 1e-4;
        const double by_air =
            (dew_point(row.air_c + step, row.rh_pct) - dew_point(row.air_c - step, row.rh_pct)) / (2 * step);
        const double by_rh =
            (dew_point(row.air_c, row.rh_pct + step) - dew_point(row.air_c, row.rh_pct - step)) / (2 * step);
        const auto u =
            air({.air_c = row.air_c, .rh_pct = row.rh_pct, .air_u_k = 0.4, .rh_u_pct = 2.5})->dew_point_u_k;
        CHECK(*u == Approx(std::hypot(0.4 * by_air, 2.5 * by_rh)).epsilon(1e-6));
    }
}

TEST_CASE("at full humidity the dew point is the air temperature") {
    for (const double air_c : {-20.0, 0.0, 17.5, 40.0})
        CHECK(dew_point(air_c, 100) == Approx(air_c).margin(1e-9));
}

TEST_CASE("air that cannot be is refused by the name of its field") {
    const auto field = [](const AirInput& in) {
        return air(in).ok() ? std::string() : air(in).fault().where;
    };
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double infinity = std::numeric_limits<double>::infinity();
    CHECK(field({.air_c = -45, .rh_pct = 50}).empty());
    CHECK(field({.air_c = -45.01, .rh_pct = 50}) == "air_c");
    CHECK(field({.air_c = 60, .rh_pct = 50}).empty());
    CHECK(field({.air_c = 60.01, .rh_pct = 50}) == "air_c");
    CHECK(field({.air_c = nan, .rh_pct = 50}) == "air_c");
    CHECK(field({.air_c = 10, .rh_pct = 0}) == "rh_pct");
    CHECK(field({.air_c = 10, .rh_pct = 0.01}).empty());
    CHECK(field({.air_c = 10, .rh_pct = 100}).empty());
    CHECK(field({.air_c = 10, .rh_pct = 100.01}) == "rh_pct");
    CHECK(field({.air_c = 10, .rh_pct = infinity}) == "rh_pct");
    CHECK(field({.air_c = 10, .rh_pct = 50, .surface_c = nan}) == "surface_c");
    CHECK(field({.air_c = 10, .rh_pct = 50, .air_u_k = -0.1, .rh_u_pct = 3}) == "air_u_k");
    CHECK(field({.air_c = 10, .rh_pct = 50, .air_u_k = 0.5, .rh_u_pct = -1}) == "rh_u_pct");
}

TEST_CASE("a refusal says in one line what was found and what would be right") {
    const auto refused = air({.air_c = 10, .rh_pct = 120});
    CHECK(refused.fault().code == Code::value_impossible);
    CHECK(one_line(refused.fault()) == "rh_pct: 120 cannot be; it must be more than 0 and at most 100");
}
