#include "job/forecast.h"

#include "tests/support/site.h"

using namespace undersheet;

namespace {

std::string json(const std::string& hours) {
    return R"({"format":"undersheet.forecast.1","made":"2026-09-20T18:00:00+01:00","hours":[)" + hours + "]}";
}

Result<job::Forecast> read_of(const std::string& text) {
    return job::read_forecast(text, test::default_kinds());
}

std::string refusal(const std::string& text) {
    const auto read = read_of(text);
    return read ? std::string() : one_line(read.fault());
}

} // namespace

TEST_CASE("a forecast in JSON and the same one as a table say the same") {
    const auto one = read_of(
        json(R"({"from":"2026-09-22T08:00:00+01:00","air_c":12.5,"rh_pct":80,"gust_ms":6.5,"rain_mm":0})"));
    const auto other = read_of("from,air_c,rh_pct,wind_ms,gust_ms,rain_mm\n"
                               "2026-09-22T08:00:00+01:00,12.5,80,,6.5,0\n");
    REQUIRE(one.ok());
    REQUIRE(other.ok());
    CHECK(one->made == "2026-09-20T18:00:00+01:00");
    for (const auto* read : {&*one, &*other}) {
        REQUIRE(read->hours.size() == 1);
        CHECK(read->hours[0].air_c == 12.5);
        CHECK(read->hours[0].gust_ms == 6.5);
        CHECK_FALSE(read->hours[0].wind_ms.has_value());
    }
}

TEST_CASE("a table with semicolons has commas in its figures, and may end its lines like a spreadsheet") {
    const auto read = read_of("from;air_c;rh_pct\r\n2026-09-22T08:00:00+02:00;12,5;80\r\n\r\n");
    REQUIRE(read.ok());
    CHECK(read->hours[0].air_c == 12.5);
}

TEST_CASE("an hour is found until it ends, and what is not forecast is not made up") {
    const auto read = read_of("from,air_c,rh_pct\n2026-09-22T08:00:00Z,12,80\n2026-09-22T10:00:00Z,14,70\n");
    REQUIRE(read.ok());
    const std::int64_t eight = read->hours[0].from.unix_s;
    CHECK(read->at(eight - 1) == nullptr);
    CHECK(read->at(eight)->air_c == 12);
    CHECK(read->at(eight + 3599)->air_c == 12);
    CHECK(read->at(eight + 3600) == nullptr);
    CHECK(read->at(eight + 7200)->air_c == 14);
    CHECK(read->at(eight + 10800) == nullptr);
}

TEST_CASE("what is wrong in a forecast is named by hour, column and what would be right") {
    const std::string head = "from,air_c,rh_pct\n", good = "2026-09-22T08:00:00Z,12,80\n";
    CHECK(refusal(head + good + "2026-09-22T09:00:00Z,hot,80\n") ==
          "forecast, hour 2, air_c: 'hot' is no number; plain digits, 12.5");
    CHECK(refusal(head + "2026-09-22T08:00:00Z,12,100.5\n") ==
          "forecast, hour 1, rh_pct: 100.5 is outside 0 to 100; look at the unit");
    CHECK(refusal(head + "2026-09-22T08:00:00,12,80\n").find("forecast, hour 1, from: ") == 0); // no offset
    CHECK(refusal(head + "2026-09-22T08:00:00Z,12\n") ==
          "forecast, hour 1, the row: 2 cells under 3 columns; one cell for each column");
    CHECK(refusal(head + "2026-09-22T08:00:00Z,,80\n") ==
          "forecast, hour 1, air_c: it is missing; every hour needs it");
    CHECK(refusal("from,air_c,rh_pct,snow_cm\n2026-09-22T08:00:00Z,1,80,4\n").find("hour 1, snow_cm: ") !=
          std::string::npos);
    CHECK(refusal(head + good + good).find("does not follow the hour before") != std::string::npos);
    CHECK(refusal(head + good + "2026-09-22T08:59:00Z,12,80\n").find("does not follow") != std::string::npos);
    CHECK(refusal(head) == "forecast: there is no hour in it; one row an hour (docs/forecast.md)");
    CHECK(refusal("") == "forecast: there is no hour in it; one row an hour (docs/forecast.md)");
    CHECK(refusal(R"({"format":"other"})").find("this is no forecast") != std::string::npos);
    CHECK(refusal(json(R"({"from":"2026-09-22T08:00:00Z","air_c":[1],"rh_pct":80})"))
              .find("neither a number nor a text") != std::string::npos);
}

TEST_CASE("sixteen days of hours are taken, one hour more is not") {
    std::string table = "from,air_c,rh_pct\n";
    const auto start = entry::parse_time("2026-09-01T00:00:00Z");
    for (std::size_t i = 0; i < job::kMostForecastHours; ++i)
        table += entry::time_at(start->unix_s + static_cast<std::int64_t>(i) * 3600, 0).text + ",12,80\n";
    CHECK(read_of(table).ok());
    table += "2026-10-01T00:00:00Z,12,80\n";
    CHECK(refusal(table).find("more than 384 hours") != std::string::npos);
}

TEST_CASE("a figure can be what an air reading can be, by the catalogue, and rain is not below nothing") {
    const auto hour = [](const std::string& figures) {
        return refusal("from,air_c,rh_pct,gust_ms,rain_mm\n2026-09-22T08:00:00Z," + figures + "\n");
    };
    CHECK(hour("60,100,120,0").empty());
    CHECK(hour("-40,0,0,300").empty());
    CHECK(hour("60.1,80,0,0") == "forecast, hour 1, air_c: 60.1 is outside -40 to 60; look at the unit");
    CHECK(hour("-40.1,80,0,0") == "forecast, hour 1, air_c: -40.1 is outside -40 to 60; look at the unit");
    CHECK(hour("12,80,120.1,0") == "forecast, hour 1, gust_ms: 120.1 is outside 0 to 120; look at the unit");
    CHECK(hour("12,80,0,-0.1") == "forecast, hour 1, rain_mm: -0.1 is below 0; look at the sign");
}
