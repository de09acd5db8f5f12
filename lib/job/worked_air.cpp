// Dew, and the light that is left when contact adhesive is opened.
#include "job/rules.h"
#include "job/weather.h"

#include "trade/daylight.h"

namespace undersheet::job {
namespace {

using method::Level;
using method::Rule;

void dew(const Context& context, const Rule& rule, Findings& out) {
    if (context.air == nullptr) return;
    const auto margin = dew_margin(*context.air);
    if (!margin || !margin->margin_k) return;
    const Level& level = rule.levels.front();
    const About about{.reading = context.air,
                      .value = fixed(*margin->margin_k, 1),
                      .working = dew_working(*context.air, *margin)};
    const method::Limit* limit = context.method.find_limit(level.limit);
    if (*margin->margin_k < limit->value)
        out.push_back(make_finding(context, rule, level, about));
    else if (limit->near && *margin->margin_k <= *limit->near)
        out.push_back(make_near(context, rule, level, about));
}

std::optional<double> sunset_min(const Job& job, const entry::Time& when) {
    const Reading* site = job.latest("site");
    const auto latitude = site == nullptr ? std::nullopt : site->number("latitude_deg");
    const auto longitude = site == nullptr ? std::nullopt : site->number("longitude_deg");
    if (!latitude || !longitude) return std::nullopt;
    const entry::Date date = entry::date_of(when);
    const auto light =
        trade::find_daylight({*latitude, *longitude, date.year, date.month, date.day, when.offset_min});
    return light ? light->sunset_min : std::nullopt;
}

double minute_of_day(const entry::Time& when) {
    constexpr std::int64_t kDay_s = 86400;
    const std::int64_t local_s = when.unix_s + static_cast<std::int64_t>(when.offset_min) * 60;
    return static_cast<double>(((local_s % kDay_s) + kDay_s) % kDay_s) / 60;
}

// Each coat against that day's sunset; without the place's coordinates nothing is said.
void dusk(const Context& context, const Rule& rule, Findings& out) {
    const Level& level = rule.levels.front();
    const method::Limit* limit = context.method.find_limit(level.limit);
    for (const Reading& coat : context.work) {
        if (coat.data.find("coat_end") == nullptr) continue;
        const auto sunset = sunset_min(context.job, coat.when());
        if (!sunset) continue;
        const double left_h = (*sunset - minute_of_day(coat.when())) / 60;
        const About about{.reading = &coat, .value = fixed(left_h, 1)};
        if (left_h < limit->value)
            out.push_back(make_finding(context, rule, level, about));
        else if (limit->near && left_h <= *limit->near)
            out.push_back(make_near(context, rule, level, about));
    }
}

} // namespace

void add_worked_air(WorkedTable& table) {
    table["dew"] = dew;
    table["dusk"] = dusk;
}

} // namespace undersheet::job
