#include "trade/moisture.h"

#include <catch2/catch.hpp>

#include <limits>

using namespace undersheet;
using namespace undersheet::trade;

namespace {

double corrected(double reading_pct, double board_c, const MoistureRule& rule) {
    return *moisture({reading_pct, board_c}, rule)->corrected_pct;
}

} // namespace

TEST_CASE("a cold board reads low, so the practice rule raises it by 0.15 % for each K below 20 °C") {
    // Practice, no published source: 15.5 °C adds 0.675.
    const auto rule = practice_moisture_rule();
    CHECK(corrected(12.1, 15.5, rule) == Approx(12.775));
    CHECK(corrected(12.6, 15.5, rule) == Approx(13.275));
    CHECK(corrected(15, 10, rule) == Approx(16.5));
    CHECK(corrected(15, 20, rule) == 15);
    CHECK(corrected(15, 30, rule) == Approx(13.5));
}

TEST_CASE("the five degree rule leaves a board alone up to 5 °C from 20 °C and corrects the whole distance "
          "beyond") {
    // Meter makers' manuals: 0.5 % for each 5 °C, only if more than 5 °C away.
    const auto rule = five_degree_moisture_rule();
    CHECK(corrected(15, 15, rule) == 15);
    CHECK(corrected(15, 14.9, rule) == Approx(15.51));
    CHECK(corrected(15, 10, rule) == Approx(16));
    CHECK(corrected(15, 25, rule) == 15);
    CHECK(corrected(15, 25.1, rule) == Approx(14.49));
    CHECK(corrected(15, 30, rule) == Approx(14));
}

TEST_CASE("published rules differ at 10 °C, which is why a rule is named and never built in") {
    // 15 % at 10 °C: one manual corrects nothing from 10 to 32 °C, another adds 1, another gives 17.
    CHECK(corrected(15, 10, no_moisture_rule()) == 15);
    CHECK(corrected(15, 10, five_degree_moisture_rule()) == Approx(16));
    const MoistureRule another{"2 at 10 °C", "meter makers' manuals", 0.2, 0.2, 20, 0};
    CHECK(corrected(15, 10, another) == Approx(17));
    CHECK_FALSE(practice_moisture_rule().name.empty());
    CHECK_FALSE(practice_moisture_rule().source.empty());
}

TEST_CASE("the wetter of raw and corrected is judged, and it says which") {
    const auto cold = moisture({17.5, 10.0});
    CHECK(cold->judged_pct == Approx(19));
    CHECK(cold->judged_corrected);
    const auto warm = moisture({17.5, 30.0});
    CHECK(*warm->corrected_pct == Approx(16));
    CHECK(warm->judged_pct == 17.5);
    CHECK_FALSE(warm->judged_corrected);
}

TEST_CASE("without a board temperature only the raw reading is judged") {
    const auto raw = moisture({17.5, {}});
    CHECK_FALSE(raw->corrected_pct);
    CHECK(raw->judged_pct == 17.5);
    CHECK_FALSE(raw->judged_corrected);
}

TEST_CASE("the meter is believed from 7 to 28 %, both included, whatever the correction makes of it") {
    // Meter makers' manuals: about 7 % to fibre saturation, 25 to 30 %.
    CHECK(moisture({7, 20.0})->believable);
    CHECK_FALSE(moisture({6.9, 20.0})->believable);
    CHECK(moisture({6.9, 20.0})->reach == MeterReach::below);
    CHECK(moisture({28, 20.0})->believable);
    CHECK_FALSE(moisture({28.1, 20.0})->believable);
    CHECK(moisture({28.1, 20.0})->reach == MeterReach::above);
    CHECK(moisture({27.9, 0.0})->believable); // corrected to 30.9, but the meter saw 27.9
    CHECK_FALSE(moisture({6.5, 0.0})->believable);
    CHECK(moisture({5, 20.0}, no_moisture_rule(), {4, 40})->believable);
}

TEST_CASE("a correction never makes wood drier than dry") {
    CHECK(corrected(1, 45, practice_moisture_rule()) == 0);
}

TEST_CASE("a reading that cannot be is refused by the name of its field") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK(moisture({-0.1, 20.0}).fault().where == "reading_pct");
    CHECK(moisture({nan, 20.0}).fault().where == "reading_pct");
    CHECK(moisture({200.1, 20.0}).fault().where == "reading_pct");
    CHECK(moisture({0, 20.0}).ok());
    CHECK(moisture({12, -40.1}).fault().where == "board_c");
    CHECK(moisture({12, 20.0}, {"x", "y", -0.1, 0, 20, 0}).fault().where == "rule.pct_per_k_below");
    CHECK(moisture({12, 20.0}, no_moisture_rule(), {30, 28}).fault().where == "range.least_pct");
}
