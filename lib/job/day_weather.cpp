#include "job/day_weather.h"

#include "base/decimal.h"
#include "base/text.h"
#include "job/doubts.h"
#include "job/schedule.h"
#include "trade/daylight.h"

#include <algorithm>

namespace undersheet::job {
namespace {

using entry::Value;

void put(Value& data, const char* field, std::optional<double> value) {
    if (!value) return;
    const auto decimal = Decimal::rounded(*value, 6);
    if (decimal) data.set(field, Value(*decimal));
}

bool rains(const ForecastHour& hour) { return hour.rain_mm && *hour.rain_mm > 0; }

// The hour as if somebody had read it on the roof.
Reading as_reading(const ForecastHour& hour, const method::Method& method) {
    Reading reading{.kind = "air"};
    put(reading.data, "air_c", hour.air_c);
    put(reading.data, "rh_pct", hour.rh_pct);
    put(reading.data, "surface_c",
        hour.surface_c.value_or(hour.air_c - method.limit("forecast_deck_below_air_k")));
    put(reading.data, "wind_ms", hour.wind_ms);
    put(reading.data, "gust_ms", hour.gust_ms);
    if (rains(hour)) reading.data.set("rain", Value("now"));
    return reading;
}

bool opens_adhesive(const method::Stage& stage) {
    return std::any_of(stage.steps.begin(), stage.steps.end(),
                       [](const method::Step& step) { return step.opens_adhesive; });
}

std::string at_clock(std::int64_t unix_s, int offset_min) {
    return entry::clock_text(entry::time_at(unix_s, offset_min));
}

bool is_in(const std::vector<std::string>& words, const std::string& word) {
    return std::find(words.begin(), words.end(), word) != words.end();
}

} // namespace

Light light_on(const Job& job, const entry::Time& when) {
    const Reading* site = job.latest("site");
    const auto latitude = site == nullptr ? std::nullopt : site->number("latitude_deg");
    const auto longitude = site == nullptr ? std::nullopt : site->number("longitude_deg");
    if (!latitude || !longitude) return {};
    const entry::Date date = entry::date_of(when);
    const auto found =
        trade::find_daylight({*latitude, *longitude, date.year, date.month, date.day, when.offset_min});
    if (!found) return {};
    constexpr std::int64_t kDay_s = 86400;
    const std::int64_t midnight_s = entry::day_number(date) * kDay_s - std::int64_t{when.offset_min} * 60;
    const auto moment = [&](const std::optional<double>& minute, std::int64_t otherwise_s) {
        return midnight_s + (minute ? static_cast<std::int64_t>(*minute * 60) : otherwise_s);
    };
    const bool night = found->polar == trade::Polar::night;
    return {moment(found->sunrise_min, 0), moment(found->sunset_min, night ? 0 : kDay_s)};
}

DayWeather::DayWeather(const Job& job, const method::Method& method, const method::Catalogue& kinds,
                       const Forecast& forecast)
    : job_(job), method_(method), forecast_(forecast), context_(make_context(job, method, kinds)) {}

const std::vector<std::string>& DayWeather::holds(const std::string& stage, std::int64_t unix_s) {
    const auto [known, is_new] = known_.try_emplace({stage, unix_s});
    const method::Stage* found = method_.stage(stage);
    if (is_new && found != nullptr) known->second = judged(*found, unix_s);
    return known->second;
}

std::vector<std::string> DayWeather::judged(const method::Stage& stage, std::int64_t unix_s) const {
    const ForecastHour* hour = forecast_.at(unix_s);
    if (hour == nullptr) return {"no forecast"};
    std::vector<std::string> held;
    add_light(stage, *hour, unix_s, held);
    for (auto& line : by_rules(stage, *hour)) held.push_back(std::move(line));
    add_doubts(stage, *hour, held);
    add_tins(stage, *hour, held);
    add_rain_ahead(stage, unix_s, held);
    return held;
}

std::vector<std::string> DayWeather::by_rules(const method::Stage& stage, const ForecastHour& hour) const {
    const Reading reading = as_reading(hour, method_);
    Context context = context_;
    context.air = &reading;
    std::vector<std::string> held;
    for (const Finding& finding : findings_about(context, "air")) {
        const bool holds =
            std::any_of(finding.holds.begin(), finding.holds.end(), [&](const method::Hold& hold) {
                return hold.moment == method::Moment::start &&
                       (hold.stage.empty() || hold.stage == stage.name);
            });
        if (holds && finding.severity != method::Severity::note) held.push_back(finding.says);
    }
    return held;
}

// What would undo the work once it is signed is no weather to do it in: rain on the bare deck.
void DayWeather::add_doubts(const method::Stage& stage, const ForecastHour& hour,
                            std::vector<std::string>& held) const {
    const Reading reading = as_reading(hour, method_);
    for (const method::Doubt& row : method_.doubts())
        if (row.stage == stage.name && casts_doubt(row, reading.kind, reading.data, method_, job_.parts))
            held.push_back(row.says);
}

void DayWeather::add_rain_ahead(const method::Stage& stage, std::int64_t unix_s,
                                std::vector<std::string>& held) const {
    const ForecastHour* now = forecast_.at(unix_s);
    if (!stage.bonds || (now != nullptr && rains(*now))) return; // rain now says enough
    const double ahead_h = method_.limit("rain_ahead_h");
    const auto until_s = unix_s + static_cast<std::int64_t>(ahead_h * kHour_s);
    for (const ForecastHour& hour : forecast_.hours) {
        if (hour.from.unix_s <= unix_s || hour.from.unix_s >= until_s || !rains(hour)) continue;
        held.push_back("rain from " + entry::clock_text(hour.from) + ", within " + shortest(ahead_h, 2) +
                       " h");
        return;
    }
}

void DayWeather::add_light(const method::Stage& stage, const ForecastHour& hour, std::int64_t unix_s,
                           std::vector<std::string>& held) const {
    const Light light = light_on(job_, hour.from);
    if (!light.from_s) return;
    if (unix_s < *light.from_s || unix_s + kGrid_s > *light.to_s) {
        held.emplace_back("dark");
        return;
    }
    if (!opens_adhesive(stage)) return;
    const double least_h = method_.limit("sunset_warn_h");
    if (static_cast<double>(unix_s) + least_h * kHour_s <= static_cast<double>(*light.to_s)) return;
    held.push_back("less than " + shortest(least_h, 2) + " h to sunset at " +
                   at_clock(*light.to_s, hour.from.offset_min));
}

void DayWeather::add_tins(const method::Stage& stage, const ForecastHour& hour,
                          std::vector<std::string>& held) const {
    if (!is_in(stage.start_guards, "reading")) return;
    std::string refused;
    for (const Reading* tin : job_.all("tin")) {
        if (!is_in(stage.products, tin->word("product"))) continue;
        const auto low_c = tin->number("low_c");
        const auto high_c = tin->number("high_c");
        if ((!low_c || hour.air_c >= *low_c) && (!high_c || hour.air_c <= *high_c)) return;
        refused = tin->label + ", " + tin->word("low_c") + " to " + tin->word("high_c") + " °C";
    }
    if (!refused.empty())
        held.push_back(shortest(hour.air_c, 1) + " °C is outside the range on tin " + refused);
}

} // namespace undersheet::job
