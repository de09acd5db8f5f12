#include "desk/json.h"

#include "entry/json.h"

namespace undersheet::desk {
namespace {

using entry::List;
using entry::Value;

Value texts(const std::vector<std::string>& all) {
    Value list = List{};
    for (const auto& text : all) list.push(text);
    return list;
}

Value work_value(const DayWork& work) {
    Value object;
    object.set("stage", work.stage).set("part", work.part).set("hours_h", *Decimal::parse(work.hours));
    object.set("minutes", work.minutes).set("wait_min", work.wait_min);
    if (!work.from.empty()) object.set("from", work.from).set("to", work.to);
    return object;
}

Value day_value(const DayLine& day) {
    Value spoiled = List{};
    for (const auto& line : day.spoiled)
        spoiled.push(Value()
                         .set("from", line.from)
                         .set("to", line.to)
                         .set("stages", texts(line.stages))
                         .set("why", line.why));
    Value object;
    object.set("date", day.date).set("spoiled", std::move(spoiled));
    if (!day.light_from.empty()) object.set("light_from", day.light_from);
    if (!day.light_to.empty()) object.set("light_to", day.light_to);
    return object;
}

} // namespace

std::string json_of(const DayAnswer& made) {
    Value row = List{}, days = List{};
    for (const auto& work : made.row) row.push(work_value(work));
    for (const auto& day : made.days) days.push(day_value(day));
    Value object;
    object.set("job", made.job.ref).set("as_of", made.as_of).set("fits", made.fits);
    object.set("work", std::move(row)).set("days", std::move(days)).set("assumed", texts(made.assumed));
    if (!made.made.empty()) object.set("forecast_made", made.made);
    if (!made.one_go_from.empty())
        object.set("in_one_go", Value().set("from", made.one_go_from).set("to", made.one_go_to));
    return entry::write_pretty(object) + "\n";
}

} // namespace undersheet::desk
