// A forecast in either form: hours in order, each a possible one.
#include "job/forecast.h"
#include "tests/fuzz/small_job.h"
#include "tests/fuzz/targets.h"

namespace undersheet::fuzz {
namespace {

void promise_hour(const job::ForecastHour& hour) {
    promise(hour.air_c >= -40 && hour.air_c <= 60, "no such air");
    promise(hour.rh_pct >= 0 && hour.rh_pct <= 100, "no such humidity");
    promise(!hour.surface_c || (*hour.surface_c >= -40 && *hour.surface_c <= 90), "no such deck");
    for (const auto& amount : {hour.wind_ms, hour.gust_ms, hour.rain_mm})
        promise(!amount || *amount >= 0, "less than no wind or rain");
}

} // namespace

// The ranges above are those of docs/forecast.md.
void read_a_forecast(std::string_view bytes) {
    const auto read = job::read_forecast(bytes, own_kinds());
    if (!read) return promise_readable(read.fault());
    promise(!read->hours.empty() && read->hours.size() <= job::kMostForecastHours, "too many hours, or none");
    for (std::size_t i = 0; i < read->hours.size(); ++i) {
        const auto& hour = read->hours[i];
        promise_hour(hour);
        promise(read->at(hour.from.unix_s) == &hour, "an hour is not found by its time");
        promise(i == 0 || hour.from.unix_s - read->hours[i - 1].from.unix_s >= job::kHour_s,
                "hours stand out of order");
    }
}

} // namespace undersheet::fuzz
