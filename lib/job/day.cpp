#include "job/day.h"

#include "base/decimal.h"
#include "job/day_weather.h"

#include <algorithm>
#include <set>

namespace undersheet::job {
namespace {

std::vector<std::string> stages_left(const std::vector<Work>& row) {
    std::vector<std::string> stages;
    for (const Work& work : row) {
        if (std::find(stages.begin(), stages.end(), work.stage) == stages.end()) stages.push_back(work.stage);
    }
    return stages;
}

bool is_light(const ForecastDay& day, std::int64_t unix_s) {
    return !day.light_from_s || (unix_s >= *day.light_from_s && unix_s + kGrid_s <= *day.light_to_s);
}

// The same words over neighbouring quarters are one line.
void add_spoiled(ForecastDay& day, const std::string& stage, std::int64_t unix_s, const std::string& why) {
    for (Spoiled& line : day.spoiled) {
        if (line.stage != stage || line.why != why || line.to_s != unix_s) continue;
        line.to_s = unix_s + kGrid_s;
        return;
    }
    day.spoiled.push_back({unix_s, unix_s + kGrid_s, stage, why});
}

// By the clock of the forecast; a method that says nothing works round the clock.
struct WorkingDay {
    double from_h = 0, to_h = 24;
    int offset_min = 0;

    WorkingDay(const method::Method& method, int offset) : offset_min(offset) {
        if (const auto* from = method.find_limit("day_from_h")) from_h = from->value;
        if (const auto* to = method.find_limit("day_to_h")) to_h = to->value;
    }
    [[nodiscard]] bool holds(std::int64_t unix_s) const {
        constexpr std::int64_t kDay_s = 24 * kHour_s;
        const std::int64_t local_s = unix_s + std::int64_t{offset_min} * 60;
        const auto begins_h = static_cast<double>((local_s % kDay_s + kDay_s) % kDay_s) / kHour_s;
        return begins_h >= from_h && begins_h + static_cast<double>(kGrid_s) / kHour_s <= to_h;
    }
};

std::vector<ForecastDay> days_of(const Job& job, const Forecast& forecast,
                                 const std::vector<std::string>& stages, const WorkingDay& hours,
                                 DayWeather& weather) {
    std::vector<ForecastDay> days;
    for (const ForecastHour& hour : forecast.hours) {
        const entry::Date date = entry::date_of(hour.from);
        if (days.empty() || !(days.back().date == date)) {
            const Light light = light_on(job, hour.from);
            days.push_back({date, light.from_s, light.to_s, {}});
        }
        for (std::int64_t t = hour.from.unix_s; t < hour.from.unix_s + kHour_s; t += kGrid_s) {
            if (!is_light(days.back(), t) || !hours.holds(t)) continue;
            for (const auto& stage : stages) {
                for (const auto& why : weather.holds(stage, t)) add_spoiled(days.back(), stage, t, why);
            }
        }
    }
    return days;
}

std::vector<std::string> assumptions(const Job& job, const method::Method& method, const Forecast& forecast) {
    std::vector<std::string> assumed;
    const auto lacks = [&](auto member) {
        return std::any_of(forecast.hours.begin(), forecast.hours.end(),
                           [&](const ForecastHour& hour) { return !(hour.*member).has_value(); });
    };
    if (lacks(&ForecastHour::surface_c))
        assumed.push_back("the deck is taken as " + shortest(method.limit("forecast_deck_below_air_k"), 2) +
                          " K colder than the air; read it on the day");
    if (lacks(&ForecastHour::rain_mm))
        assumed.emplace_back("hours without a figure for rain are taken as dry");
    if (lacks(&ForecastHour::gust_ms))
        assumed.emplace_back("hours without a figure for gusts are taken as calm");
    if (!light_on(job, forecast.hours.front().from).from_s)
        assumed.emplace_back("daylight is not known: record site latitude_deg=… longitude_deg=…");
    return assumed;
}

} // namespace

DayPlan plan_days(const Job& job, const method::Method& method, const method::Catalogue& kinds,
                  const Forecast& forecast, std::vector<Work> row) {
    DayWeather weather(job, method, kinds, forecast);
    const WorkingDay hours(method, forecast.hours.front().from.offset_min);
    const auto suits = [&](const Work& work, std::int64_t t) {
        return hours.holds(t) && weather.holds(work.stage, t).empty();
    };
    const std::int64_t from_s = std::max(forecast.hours.front().from.unix_s, job.as_of.unix_s);
    const std::int64_t until_s = forecast.hours.back().from.unix_s + kHour_s;
    DayPlan plan{.row = std::move(row), .slots = {}};
    plan.slots = fit_in_order(plan.row, from_s, until_s, suits);
    plan.in_one_go = fit_in_one_go(plan.row, from_s, until_s, suits);
    plan.days = days_of(job, forecast, stages_left(plan.row), hours, weather);
    plan.assumed = assumptions(job, method, forecast);
    return plan;
}

} // namespace undersheet::job
