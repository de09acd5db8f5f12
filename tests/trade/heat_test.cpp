#include "trade/heat.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <random>

using namespace undersheet;
using namespace undersheet::trade;

namespace {

Layer solid(double thickness_mm, double conductivity_w_mk, std::optional<double> sd_m = {}) {
    return {.thickness_mm = thickness_mm, .conductivity_w_mk = conductivity_w_mk, .sd_m = sd_m};
}
Layer whole(double r_m2k_w, std::optional<double> sd_m = {}) { return {.r_m2k_w = r_m2k_w, .sd_m = sd_m}; }

constexpr Climate kRoom{20, 60};
constexpr Climate kWinter{0, 90};

// Monthly Glaser, ISO 13788 form, constants from memory, not confirmed. Expected values computed in Python.
const HeatInput kCold{
    {whole(0.05, 0.125), solid(150, 0.038, 0.15), solid(18, 0.13, 0.54), solid(1.2, 0.25, 7.2)},
    0.10,
    0.04,
    kRoom,
    kWinter};
const HeatInput kWarm{
    {whole(0.05, 0.125), solid(18, 0.13, 0.54), whole(0, 100), solid(120, 0.022, 6), solid(1.2, 0.25, 7.2)},
    0.10,
    0.04,
    kRoom,
    kWinter};

void check_interfaces(const Heat& found, const std::vector<double>& t_c,
                      const std::vector<double>& saturation_pa, const std::vector<double>& plain_pa) {
    REQUIRE(found.interfaces->size() == t_c.size());
    for (std::size_t i = 0; i < t_c.size(); ++i) {
        CAPTURE(i);
        CHECK((*found.interfaces)[i].t_c == Approx(t_c[i]).margin(0.001));
        CHECK((*found.interfaces)[i].saturation_pa == Approx(saturation_pa[i]).margin(0.1));
        CHECK(*(*found.interfaces)[i].vapour_pa == Approx(plain_pa[i]).margin(0.1));
    }
}

} // namespace

TEST_CASE("the heat loss of a roof is one over the sum of its resistances") {
    // Computed. Rsi 0.10 and the air layer's 0.16 from memory, not confirmed (ISO 6946); Rse 0.04 second-hand.
    const HeatInput warm{
        {solid(12.5, 0.25), whole(0.16), solid(18, 0.13), solid(120, 0.022), solid(1.2, 0.25)}, 0.10, 0.04};
    const HeatInput cold{{solid(12.5, 0.25), solid(150, 0.038), whole(0.16), solid(18, 0.13)}, 0.10, 0.04};
    CHECK(heat(warm)->u_w_m2k == Approx(0.1681).margin(0.00005));
    CHECK(heat(cold)->u_w_m2k == Approx(0.2254).margin(0.00005));
}

TEST_CASE("without climates only the heat loss is worked out") {
    const auto found = heat({{whole(1)}, 0.10, 0.04});
    CHECK_FALSE(found->frsi);
    CHECK_FALSE(found->interfaces);
    CHECK_FALSE(found->condensate);
}

TEST_CASE("the surface factor is the share of the difference that the inside face keeps") {
    // 20 inside, 0 outside, face at 16.5 gives 0.825 (computed): a roof with U x Rsi = 0.175.
    const double rest = 0.13 / 0.175 - 0.13 - 0.04;
    const auto found = heat({{whole(rest)}, 0.13, 0.04, Climate{20, 50}, Climate{0, 80}});
    CHECK((*found->interfaces)[0].t_c == Approx(16.5));
    CHECK(*found->frsi == Approx(0.825));
}

TEST_CASE("a cold roof under rubber wets the underside of its board and a little under the rubber") {
    const auto found = heat(kCold);
    check_interfaces(*found, {19.533, 19.299, 0.856, 0.209, 0.187}, {2270.2, 2237.5, 649.6, 619.9, 618.9},
                     {1402.2, 1388.9, 1372.9, 1315.5, 549.5});
    REQUIRE(found->condensate->size() == 2);
    CHECK((*found->condensate)[0].interface == 2);
    CHECK((*found->condensate)[0].g_m2_month == Approx(1390.1).margin(0.1));
    CHECK((*found->condensate)[1].interface == 3);
    CHECK((*found->condensate)[1].g_m2_month == Approx(23.48).margin(0.01));
    CHECK_FALSE(found->inside_face_wet);
}

TEST_CASE("a warm roof with a vapour layer stays dry") {
    const auto found = heat(kWarm);
    check_interfaces(*found, {19.654, 19.482, 19.003, 19.003, 0.155, 0.138},
                     {2287.4, 2263.0, 2196.6, 2196.6, 617.4, 616.7},
                     {1402.2, 1401.2, 1397.2, 648.3, 603.4, 549.5});
    REQUIRE(found->condensate);
    CHECK(found->condensate->empty());
    for (const auto& face : *found->interfaces) CHECK(*face.settled_pa == Approx(*face.vapour_pa));
}

TEST_CASE("the taut line touches saturation where water settles and nowhere passes it") {
    const auto found = heat(kCold);
    const auto& faces = *found->interfaces;
    CHECK(*faces[2].settled_pa == Approx(faces[2].saturation_pa));
    CHECK(*faces[3].settled_pa == Approx(faces[3].saturation_pa));
    CHECK(*faces[0].settled_pa == Approx(1402.2).margin(0.1));
    CHECK(*faces[4].settled_pa == Approx(549.5).margin(0.1));
}

TEST_CASE("what comes in and does not go out is what settles, for any drawn roof") {
    constexpr unsigned seed = 13788;
    std::mt19937 dice(seed);
    CAPTURE(seed);
    const auto roll = [&](double low, double high) {
        return low + (high - low) * (static_cast<double>(dice() % 10'001) / 10'000);
    };
    constexpr double g_per_slope = 2e-10 * 1000 * 86'400 * 30;
    std::size_t wet = 0;
    for (int round = 0; round < 1000; ++round) {
        HeatInput in{
            {}, 0.10, 0.04, Climate{roll(15, 25), roll(30, 80)}, Climate{roll(-15, 25), roll(40, 100)}};
        for (int i = 0; i < 5; ++i) in.layers.push_back(whole(roll(0.01, 3), roll(0.01, 20)));
        const auto found = heat(in);
        CAPTURE(round);
        const auto& faces = *found->interfaces;
        double settled_g = 0;
        for (const auto& row : *found->condensate) settled_g += row.g_m2_month;
        for (const auto& face : faces) REQUIRE(*face.settled_pa <= face.saturation_pa * (1 + 1e-12));
        const double in_g = g_per_slope * (*faces[0].settled_pa - *faces[1].settled_pa) / *in.layers[0].sd_m;
        const double out_g = g_per_slope * (*faces[4].settled_pa - *faces[5].settled_pa) / *in.layers[4].sd_m;
        REQUIRE(settled_g == Approx(in_g - out_g).margin(1e-3));
        wet += found->condensate->empty() ? 0 : 1;
    }
    CHECK(wet > 100);
    CHECK(wet < 900);
}

TEST_CASE("a room face colder than the dew point of the room is said to be wet") {
    CHECK(heat({{whole(0.02, 1)}, 0.13, 0.04, Climate{20, 80}, kWinter})->inside_face_wet);
    CHECK_FALSE(heat({{whole(5, 1)}, 0.13, 0.04, Climate{20, 80}, kWinter})->inside_face_wet);
}

TEST_CASE("without vapour figures temperatures are worked out and condensation is not") {
    const auto found = heat({{whole(1), whole(2)}, 0.10, 0.04, kRoom, kWinter});
    CHECK(found->interfaces->size() == 3);
    CHECK_FALSE((*found->interfaces)[0].vapour_pa);
    CHECK_FALSE(found->condensate);
}

TEST_CASE("layers that cannot be are refused by number and field") {
    const auto field = [](std::vector<Layer> layers) {
        return heat({std::move(layers), 0.10, 0.04}).fault().where;
    };
    CHECK(field({}) == "layers");
    CHECK(field({whole(1), whole(-0.1)}) == "layers[1].r_m2k_w");
    CHECK(heat({{whole(0)}, 0, 0}).fault().where == "layers");
    CHECK(heat({{whole(0)}, 0.1, 0}).ok());
    CHECK(field({Layer{}}) == "layers[0].r_m2k_w");
    CHECK(field({Layer{.thickness_mm = 18}}) == "layers[0].conductivity_w_mk");
    CHECK(field({Layer{.conductivity_w_mk = 0.13}}) == "layers[0].thickness_mm");
    CHECK(field({Layer{.r_m2k_w = 1, .thickness_mm = 18}}) == "layers[0].r_m2k_w");
    CHECK(field({solid(0, 0.13)}) == "layers[0].thickness_mm");
    CHECK(field({solid(18, 0)}) == "layers[0].conductivity_w_mk");
    CHECK(field({whole(1, 0.0)}) == "layers[0].sd_m");
    CHECK(field({whole(1, 1.0), whole(1)}) == "layers[1].sd_m");
    CHECK(field({whole(1), whole(1, 1.0)}) == "layers[0].sd_m");
}

TEST_CASE("climates that cannot be are refused by field") {
    const auto field = [](const HeatInput& in) { return heat(in).fault().where; };
    CHECK(field({{whole(1)}, 0.10, 0.04, kRoom, {}}) == "outside");
    CHECK(field({{whole(1)}, 0.10, 0.04, {}, kWinter}) == "inside");
    CHECK(field({{whole(1)}, -0.01, 0.04}) == "rsi");
    CHECK(field({{whole(1)}, 0.10, std::nan("")}) == "rse");
    CHECK(field({{whole(1)}, 0.10, 0.04, Climate{60.1, 50}, kWinter}) == "inside.air_c");
    CHECK(field({{whole(1)}, 0.10, 0.04, Climate{20, 100.1}, kWinter}) == "inside.rh_pct");
    CHECK(field({{whole(1)}, 0.10, 0.04, kRoom, Climate{-45.1, 50}}) == "outside.air_c");
    CHECK(field({{whole(1)}, 0.10, 0.04, kRoom, Climate{0, -0.1}}) == "outside.rh_pct");
}
