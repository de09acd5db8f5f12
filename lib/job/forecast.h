// An hourly forecast as somebody brings it to the roof: a small JSON form or the columns of a plain table
// (docs/forecast.md).
//
// Promises: hours come in order of time, none stands twice, each has a time with its offset, air temperature and
//   humidity; a figure outside what an air reading can be, by the catalogue, is refused with its row and column. Nothing is
//   filled in.
// Does not: fetch anything, or say how good the forecast is; its own time of making is kept with it.
#pragma once

#include "base/result.h"
#include "entry/time.h"
#include "method/kinds.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace undersheet::job {

struct ForecastHour {
    entry::Time from; // it holds for the 60 minutes from here
    double air_c = 0;
    double rh_pct = 0;
    std::optional<double> surface_c = {}; // of the deck, where somebody forecasts it
    std::optional<double> wind_ms = {}, gust_ms = {};
    std::optional<double> rain_mm = {};
};

struct Forecast {
    std::string made = {}; // when, as it says itself; may be empty
    std::vector<ForecastHour> hours = {};
    [[nodiscard]] const ForecastHour* at(std::int64_t unix_s) const; // nullptr where nothing is forecast
};

inline constexpr std::int64_t kHour_s = 3600;
inline constexpr std::size_t kMostForecastHours = 24 * 16;

// Either form, told apart by its first character; at most 1 MiB.
[[nodiscard]] Result<Forecast> read_forecast(std::string_view text, const method::Catalogue& kinds);

} // namespace undersheet::job
