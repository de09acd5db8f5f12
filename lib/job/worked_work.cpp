// Evidence of the work: rest, touch dry, foam; and what people added to the punch list by hand.
#include "job/rules.h"

namespace undersheet::job {
namespace {

using method::Level;
using method::Rule;

std::optional<entry::Time> time_in(const Tick* tick, std::string_view field) {
    if (tick == nullptr) return std::nullopt;
    const auto time = entry::parse_time(tick->data.text_of(field));
    return time ? std::optional(*time) : std::nullopt;
}

bool was_cold(const Context& context, const entry::Time& when) {
    const Reading* nearest = nullptr;
    for (const Reading* air : context.job.all("air")) {
        if (air->when().unix_s <= when.unix_s) nearest = air;
    }
    const auto air_c = nearest == nullptr ? std::nullopt : nearest->number("air_c");
    return air_c && *air_c < context.limit("rest_cold_below_c");
}

// From unrolling to marking; warming may fall inside it. A cold sheet rests longer.
void rest(const Context& context, const Rule& rule, Findings& out) {
    for (const Part& part : context.job.parts) {
        const Tick* unroll = part.last_tick("unroll");
        const Tick* rested = part.last_tick("rest");
        const auto from = time_in(unroll, "rest_start");
        const auto to = time_in(rested, "rest_end");
        if (!from || !to) continue;
        const Level* level = rule.level_with(was_cold(context, *from) ? "rest_cold_min" : "rest_min");
        const double rested_min = entry::minutes_between(*from, *to);
        if (level == nullptr || rested_min >= context.limit(level->limit)) continue;
        const Reading about{.entry = rested->entry,
                            .stands_on = {unroll->entry, rested->entry},
                            .kind = "work",
                            .label = {},
                            .part = part.name};
        out.push_back(
            make_finding(context, rule, *level, {.reading = &about, .value = shortest(rested_min, 0)}));
    }
}

// Minutes from the last stroke of the coat to the clean finger test.
void touch_dry(const Context& context, const Rule& rule, Findings& out) {
    const Level& level = rule.levels.front();
    const bool quick = level.limit == "touch_dry_least_min";
    for (const Part& part : context.job.parts) {
        const Tick* finger = part.last_tick("finger");
        const auto coat_end = time_in(part.last_tick("coat"), "coat_end");
        if (finger == nullptr || !coat_end) continue;
        const double dry_min = entry::minutes_between(*coat_end, finger->entry->when);
        const double limit_min = context.limit(level.limit);
        if (quick ? dry_min >= limit_min : dry_min <= limit_min) continue;
        const Reading about{.entry = finger->entry,
                            .stands_on = {finger->entry},
                            .kind = "work",
                            .label = {},
                            .part = part.name};
        out.push_back(make_finding(context, rule, level, {.reading = &about, .value = shortest(dry_min, 0)}));
    }
}

void foam_left(const Context& context, const Rule& rule, Findings& out) {
    for (const Reading& work : context.work) {
        const auto free_mm = work.number("foam_free_mm");
        const auto left_mm = work.number("foam_left_mm");
        if (!free_mm || !left_mm || *free_mm <= 0) continue;
        const double left_pct = 100 * *left_mm / *free_mm;
        const bool low = left_pct < context.limit("foam_least_pct");
        if (!low && left_pct <= context.limit("foam_most_pct")) continue;
        const Level* level = rule.level_with(low ? "foam_least_pct" : "foam_most_pct");
        const std::string sum = work.word("foam_left_mm") + " mm of " + work.word("foam_free_mm") +
                                " mm = " + fixed(left_pct, 1) + " %";
        if (level != nullptr)
            out.push_back(make_finding(context, rule, *level,
                                       {.reading = &work, .value = fixed(left_pct, 1), .working = {sum}}));
    }
}

// A hand-added item is a finding like any other while it is open; a note never holds anything.
void punch(const Context& context, const Rule& rule, Findings& out) {
    for (const PunchItem& item : context.job.punch) {
        if (item.cleared != nullptr || item.joined_away) continue;
        const Level* level = rule.level(item.severity);
        if (level == nullptr) continue;
        Finding finding =
            make_finding(context, rule, *level, {.value = typed(item.text), .entries = {item.raised}});
        finding.place = entry::place_text(item.place);
        finding.part = item.part;
        finding.id = "punch@" + item.name;
        clear_by(finding, typed("punch clear " + item.name));
        out.push_back(std::move(finding));
    }
}

} // namespace

void add_worked_work(WorkedTable& table) {
    table["rest"] = rest;
    table["touch_dry_quick"] = touch_dry;
    table["touch_dry_slow"] = touch_dry;
    table["foam"] = foam_left;
    table["punch"] = punch;
}

} // namespace undersheet::job
