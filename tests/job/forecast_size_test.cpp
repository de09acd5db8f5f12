// How large a forecast may be: hours and bytes, at, just under and just over the limit.
#include "job/forecast.h"
#include "tests/support/site.h"

using namespace undersheet;

namespace {

std::string table(std::size_t hours) {
    const auto first = *entry::parse_time("2026-09-22T00:00:00+01:00");
    std::string text = "from,air_c,rh_pct\n";
    for (std::size_t i = 0; i < hours; ++i) {
        const auto from = entry::time_at(first.unix_s + static_cast<std::int64_t>(i) * job::kHour_s, 60);
        text += from.text + ",12,80\n";
    }
    return text;
}

std::string padded(std::size_t bytes) {
    const std::string text = table(1);
    return text + std::string(bytes - text.size(), ' ');
}

Result<job::Forecast> read(const std::string& text) {
    return job::read_forecast(text, test::default_kinds());
}

} // namespace

TEST_CASE("sixteen days of hours are read and one hour more is refused") {
    CHECK(read(table(job::kMostForecastHours - 1))->hours.size() == 383);
    CHECK(read(table(job::kMostForecastHours))->hours.size() == 384);
    const auto refused = read(table(job::kMostForecastHours + 1));
    REQUIRE_FALSE(refused.ok());
    CHECK(one_line(refused.fault()) == "forecast, hour 385, from: more than 384 hours; sixteen days at most");
}

TEST_CASE("a forecast of one mebibyte is read and one more byte is refused") {
    CHECK(read(padded((1U << 20U) - 1)).ok());
    CHECK(read(padded(1U << 20U)).ok());
    const auto refused = read(padded((1U << 20U) + 1));
    REQUIRE_FALSE(refused.ok());
    CHECK(one_line(refused.fault()) == "forecast: this is larger than 1 MiB; sixteen days at most");
}
