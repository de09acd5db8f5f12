#include "trade/daylight.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace undersheet;
using namespace undersheet::trade;

namespace {

struct Row {
    double latitude_deg, longitude_deg;
    int year, month, day, offset_min;
    double sunrise_min, sunset_min;
};
constexpr Row kRows[] = {
#include "fixtures/reference/daylight.inc"
};

} // namespace

TEST_CASE("sunrise and sunset agree to a minute with an independent ephemeris from 60°S to 65°N") {
    double worst_min = 0;
    for (const auto& row : kRows) {
        CAPTURE(row.latitude_deg, row.longitude_deg, row.year, row.month, row.day, row.offset_min);
        const auto light = find_daylight(
            {row.latitude_deg, row.longitude_deg, row.year, row.month, row.day, row.offset_min});
        REQUIRE(light->sunrise_min);
        REQUIRE(light->sunset_min);
        CHECK(light->polar == Polar::none);
        CHECK(*light->sunrise_min == Approx(row.sunrise_min).margin(0.5));
        CHECK(*light->sunset_min == Approx(row.sunset_min).margin(0.5));
        worst_min = std::max({worst_min, std::fabs(*light->sunrise_min - row.sunrise_min),
                              std::fabs(*light->sunset_min - row.sunset_min)});
    }
    CHECK(worst_min > 0); // the rows were read
    CHECK(worst_min < 0.5);
}

// Published: Astronomy Answers, "The Position of the Sun: Tables" (aa.quae.nl), sunrise on 1 January 2002, to the minute.
TEST_CASE("sunrise on a day in January agrees to a minute with a published table of latitudes") {
    struct Printed {
        double latitude_deg;
        int hour, minute;
    };
    constexpr Printed kTable[] = {{-64, 1, 43}, {-60, 2, 43}, {-56, 3, 19}, {-50, 3, 55}, {-40, 4, 35},
                                  {-30, 5, 2},  {-20, 5, 24}, {-10, 5, 43}, {0, 6, 0},    {10, 6, 17},
                                  {20, 6, 35},  {30, 6, 56},  {40, 7, 22},  {46, 7, 42},  {50, 7, 59}};
    for (const auto& [latitude_deg, hour, minute] : kTable) {
        CAPTURE(latitude_deg);
        const auto light = find_daylight({latitude_deg, 0, 2002, 1, 1, 0});
        REQUIRE(light->sunrise_min);
        CHECK(*light->sunrise_min == Approx(60 * hour + minute).margin(1));
    }
}

TEST_CASE("north of the circle the sun does not set in June and does not rise in December") {
    const auto june = find_daylight({70, 20, 2026, 6, 21, 120});
    CHECK(june->polar == Polar::day);
    CHECK_FALSE(june->sunrise_min);
    CHECK_FALSE(june->sunset_min);
    const auto december = find_daylight({70, 20, 2026, 12, 21, 60});
    CHECK(december->polar == Polar::night);
    CHECK_FALSE(december->sunrise_min);
    CHECK_FALSE(december->sunset_min);
}

TEST_CASE("south of the other circle it is the other way round") {
    CHECK(find_daylight({-70, 20, 2026, 6, 21, 60})->polar == Polar::night);
    CHECK(find_daylight({-70, 20, 2026, 12, 21, 60})->polar == Polar::day);
}

TEST_CASE("at the poles half the year is day and half is night") {
    CHECK(find_daylight({90, 0, 2026, 5, 1, 0})->polar == Polar::day);
    CHECK(find_daylight({90, 0, 2026, 11, 1, 0})->polar == Polar::night);
    CHECK(find_daylight({-90, 0, 2026, 11, 1, 0})->polar == Polar::day);
}

TEST_CASE("between the last sunset and the polar day every date says either its times or why it has none") {
    bool day_seen = false;
    for (int day = 1; day <= 31; ++day) {
        const auto light = find_daylight({68, 20, 2026, 5, day, 120});
        CAPTURE(day);
        const bool both = light->sunrise_min && light->sunset_min;
        CHECK(both == (light->polar == Polar::none));
        day_seen = day_seen || light->polar == Polar::day;
        CHECK_FALSE((day_seen && both)); // once it has begun it stays
    }
    CHECK(day_seen);
}

TEST_CASE("a sunset after midnight belongs to the light of the day before it") {
    const auto light = find_daylight({64.1, -21.9, 2026, 6, 21, 0}); // far west in its time zone
    CHECK(*light->sunset_min > 1440);
    CHECK(*light->sunset_min < 1450);
    CHECK(*light->sunrise_min > 0);
}

TEST_CASE("the offset only moves the clock") {
    const auto winter = find_daylight({52, 0, 2026, 3, 28, 0});
    const auto summer = find_daylight({52, 0, 2026, 3, 28, 60});
    CHECK(*summer->sunset_min - *winter->sunset_min == Approx(60).margin(0.05));
    CHECK(*summer->sunrise_min - *winter->sunrise_min == Approx(60).margin(0.05));
}

TEST_CASE("a place or a day that cannot be is refused by the name of its field") {
    CHECK(find_daylight({90.1, 0, 2026, 1, 1, 0}).fault().where == "latitude_deg");
    CHECK(find_daylight({std::nan(""), 0, 2026, 1, 1, 0}).fault().where == "latitude_deg");
    CHECK(find_daylight({0, -180.1, 2026, 1, 1, 0}).fault().where == "longitude_deg");
    CHECK(find_daylight({0, 180, 2026, 1, 1, 720}).ok());
    CHECK(find_daylight({0, 0, 2026, 1, 1, 841}).fault().where == "offset_min");
    CHECK(find_daylight({0, 0, 2026, 2, 29, 0}).fault().where == "date");
    CHECK(find_daylight({0, 0, 2028, 2, 29, 0}).ok());
    CHECK(find_daylight({0, 0, 2026, 257, 1, 0}).fault().where == "date");
    CHECK(find_daylight({0, 0, 2026, 1, 0, 0}).fault().where == "date");
    CHECK(find_daylight({0, 0, 1900, 12, 31, 0}).fault().where == "date");
    CHECK(find_daylight({0, 0, 2100, 1, 1, 0}).fault().detail == "the day 2100-01-01 cannot be");
}
