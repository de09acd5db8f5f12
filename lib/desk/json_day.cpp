#include "desk/json.h"

#include "desk/json_writing.h"

namespace undersheet::desk {
namespace {

using entry::Value;

Value work_value(const DayWork& work) {
    Value object;
    object.set("stage", work.stage).set("part", work.part).set("hours_h", *Decimal::parse(work.hours));
    object.set("minutes", work.minutes).set("wait_min", work.wait_min);
    put(object, "from", work.from);
    put(object, "to", work.to);
    return object;
}

Value spoiled_value(const DaySpoiled& line) {
    return Value()
        .set("from", line.from)
        .set("to", line.to)
        .set("stages", list_of(line.stages))
        .set("why", line.why);
}

Value day_value(const DayLine& day) {
    Value object;
    object.set("date", day.date).set("spoiled", rows_of(day.spoiled, spoiled_value));
    put(object, "light_from", day.light_from);
    put(object, "light_to", day.light_to);
    return object;
}

} // namespace

std::string json_of(const DayAnswer& made) {
    Value object;
    object.set("job", made.job.ref).set("as_of", made.as_of).set("fits", made.fits);
    object.set("work", rows_of(made.row, work_value)).set("days", rows_of(made.days, day_value));
    object.set("assumed", list_of(made.assumed));
    put(object, "forecast_made", made.made);
    if (!made.one_go_from.empty())
        object.set("in_one_go", Value().set("from", made.one_go_from).set("to", made.one_go_to));
    return text_of(object);
}

} // namespace undersheet::desk
