#include "job/day.h"

#include "desk/desk.h"
#include "desk/session.h"
#include "job/day_work.h"

#include <algorithm>

namespace undersheet::desk {
namespace {

std::string written(std::int64_t unix_s, int offset_min) { return entry::time_at(unix_s, offset_min).text; }

std::string clock(std::int64_t unix_s, int offset_min) {
    return entry::clock_text(entry::time_at(unix_s, offset_min));
}

DayWork work_line(const job::Work& work) {
    DayWork line{.stage = work.stage, .part = work.part};
    line.hours = shortest(work.hours_h, 2);
    line.minutes = work.minutes;
    line.wait_min = work.wait_min;
    return line;
}

// What spoils several stages over the same time is said once.
void add_spoiled(DayLine& day, const job::Spoiled& spoiled, int offset_min) {
    const std::string from = clock(spoiled.from_s, offset_min), to = clock(spoiled.to_s, offset_min);
    const auto same = std::find_if(day.spoiled.begin(), day.spoiled.end(), [&](const DaySpoiled& line) {
        return line.from == from && line.to == to && line.why == spoiled.why;
    });
    if (same != day.spoiled.end())
        same->stages.push_back(spoiled.stage);
    else
        day.spoiled.push_back({from, to, {spoiled.stage}, spoiled.why});
}

DayLine day_line(const job::ForecastDay& day, int offset_min) {
    DayLine line{.date = entry::date_text(day.date)};
    if (day.light_from_s) line.light_from = clock(*day.light_from_s, offset_min);
    if (day.light_to_s) line.light_to = clock(*day.light_to_s, offset_min);
    for (const job::Spoiled& spoiled : day.spoiled) add_spoiled(line, spoiled, offset_min);
    return line;
}

void fill(DayAnswer& answer, const job::DayPlan& plan, int offset_min) {
    for (const job::Work& work : plan.row) answer.row.push_back(work_line(work));
    for (const job::Slot& slot : plan.slots) {
        answer.row[slot.work].from = written(slot.from_s, offset_min);
        answer.row[slot.work].to = written(slot.to_s, offset_min);
    }
    answer.fits = plan.fits();
    if (plan.in_one_go && !plan.in_one_go->empty()) {
        answer.one_go_from = written(plan.in_one_go->front().from_s, offset_min);
        answer.one_go_to = written(plan.in_one_go->back().to_s, offset_min);
    }
    for (const job::ForecastDay& day : plan.days) answer.days.push_back(day_line(day, offset_min));
    answer.assumed = plan.assumed;
}

} // namespace

Result<DayAnswer> Desk::day(const Asked& asked, std::string_view forecast_text) {
    auto on = take_up(*session_, asked);
    if (!on) return on.fault();
    const auto forecast = job::read_forecast(forecast_text, *on->kinds);
    if (!forecast) return forecast.fault();
    auto row = job::work_left(on->job, *on->method);
    if (!row) return row.fault();
    const auto plan = job::plan_days(on->job, *on->method, *on->kinds, *forecast, *std::move(row));
    DayAnswer answer{.job = on->name(), .as_of = on->moment.as_of.text, .made = forecast->made};
    fill(answer, plan, forecast->hours.front().from.offset_min);
    return answer;
}

} // namespace undersheet::desk
