// Which hours of the coming days suit the parts that are left, and what spoils the others.
//
// Promises: an hour is judged by the same rules as an air reading: what would hold the start of a stage holds it here.
//   Besides: light (where the place is known), no rain during bonding and for the hours of `rain_ahead_h` after it,
//   contact adhesive opened early enough before sunset, the temperature range of the tins in hand, and the method's
//   working day. What had to be
//   assumed is said in `assumed`.
// Does not: replace the reading on the day, or know wet boards, people or traffic.
#pragma once

#include "job/forecast.h"
#include "job/judge.h"
#include "job/schedule.h"

namespace undersheet::job {

struct Spoiled {
    std::int64_t from_s = 0, to_s = 0; // in daylight, where that is known
    std::string stage, why;
};

struct ForecastDay {
    entry::Date date;
    std::optional<std::int64_t> light_from_s = {}, light_to_s = {};
    std::vector<Spoiled> spoiled = {}; // by stages that are left, in order of time
};

struct DayPlan {
    std::vector<Work> row;   // what is left, in order of work
    std::vector<Slot> slots; // the earliest it can be done, over several days if it must
    std::optional<std::vector<Slot>> in_one_go = {}; // the earliest run without a pause but the waits
    std::vector<ForecastDay> days = {};
    std::vector<std::string> assumed = {};
    [[nodiscard]] bool fits() const { return slots.size() == row.size(); }
};

[[nodiscard]] DayPlan plan_days(const Job& job, const method::Method& method, const method::Catalogue& kinds,
                                const Forecast& forecast, std::vector<Work> row);

} // namespace undersheet::job
