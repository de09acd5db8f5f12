// Site, day and structure: what cannot be said by comparing one field with one limit.
#include "job/rules.h"

#include "base/text.h"

namespace undersheet::job {
namespace {

using method::Rule;
using method::Severity;

const Reading* today(const Context& context) {
    const Reading* found = nullptr;
    for (const Reading* day : context.job.all("day")) {
        if (day->word("date") == entry::date_text(entry::date_of(context.job.as_of))) found = day;
    }
    return found;
}

// One person alone is a note; with a heat gun in use or wind to think twice at it stops the roof.
void alone(const Context& context, const Rule& rule, Findings& out) {
    const Reading* day = today(context);
    if (day == nullptr || day->data.list_of("people").size() != 1) return;
    const bool windy =
        context.air != nullptr && context.air->number("wind_ms").value_or(0) >= context.limit("wind_warn_ms");
    const Severity severity = windy || day->word("heat_used") == "yes" ? Severity::stop : Severity::note;
    out.push_back(make_finding(context, rule, *rule.level(severity), {.reading = day}));
}

// A postcode stands at the end of an address and has a digit in it, here as in most countries.
void no_postcode(const Context& context, const Rule& rule, Findings& out) {
    const std::string address = context.job.personal("site", "address");
    if (address.empty() || address.front() == '(') return;
    const std::string last = split(address, ',').back();
    if (last.find_first_of("0123456789") != std::string::npos) return;
    out.push_back(make_finding(context, rule, rule.levels.front(), {.reading = context.job.latest("site")}));
}

void fire_look(const Context& context, const Rule& rule, Findings& out) {
    for (const Reading* day : context.job.all("day")) {
        const auto end = entry::parse_time(day->word("heat_end"));
        const auto look = entry::parse_time(day->word("fire_look"));
        if (!end || !look) continue;
        const double waited_min = entry::minutes_between(*end, *look);
        if (waited_min >= context.limit("fire_look_min")) continue;
        out.push_back(make_finding(context, rule, rule.levels.front(),
                                   {.reading = day, .value = shortest(waited_min, 0)}));
    }
}

void insulation_share(const Context& context, const Rule& rule, Findings& out) {
    for (const Reading* structure : context.job.all("structure")) {
        const double all_mm = structure->number("insulation_mm").value_or(0);
        if (structure->word("roof_kind") != "warm" || all_mm <= 0) continue;
        const bool between = structure->word("insulation_place") == "between_joists";
        const double between_mm = structure->number("between_joists_mm").value_or(between ? all_mm : 0);
        const double share_pct = 100 * between_mm / all_mm;
        if (share_pct <= context.limit("insulation_below_pct")) continue;
        const std::string sum =
            shortest(between_mm, 1) + " mm of " + shortest(all_mm, 1) + " mm = " + fixed(share_pct, 1) + " %";
        out.push_back(make_finding(context, rule, rule.levels.front(),
                                   {.reading = structure, .value = fixed(share_pct, 0), .working = {sum}}));
    }
}

void joist_sag(const Context& context, const Rule& rule, Findings& out) {
    for (const Reading* structure : context.job.all("structure")) {
        const auto sag_mm = structure->number("sag_mm");
        const auto own_m = structure->number("sag_span_m");
        const auto span_m = own_m ? own_m : structure->number("span_m");
        if (!sag_mm || !span_m) continue;
        const double most_mm = *span_m * 1000 / context.limit("joist_sag_span");
        if (*sag_mm <= most_mm) continue;
        const std::string sum = shortest(*span_m, 2) + " m / " +
                                shortest(context.limit("joist_sag_span"), 0) + " = " + fixed(most_mm, 1) +
                                " mm";
        out.push_back(make_finding(context, rule, rule.levels.front(),
                                   {.reading = structure, .value = shortest(*sag_mm, 1), .working = {sum}}));
    }
}

void building_control(const Context& context, const Rule& rule, Findings& out) {
    const std::string said = context.job.said("site", "building_control");
    if (!said.empty() && said != "not_looked" && said != "cant_reach") return;
    out.push_back(make_finding(context, rule, rule.levels.front(), {.reading = context.job.latest("site")}));
}

} // namespace

void add_worked_site(WorkedTable& table) {
    table["alone"] = alone;
    table["no_postcode"] = no_postcode;
    table["fire_look"] = fire_look;
    table["insulation_share"] = insulation_share;
    table["joist_sag"] = joist_sag;
    table["building_control"] = building_control;
}

} // namespace undersheet::job
