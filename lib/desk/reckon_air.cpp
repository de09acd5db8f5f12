// Air and the water in wood: air, timber, moisture.
#include "desk/own.h"
#include "desk/reckon_topics.h"

#include "trade/air.h"
#include "trade/moisture.h"
#include "trade/timber.h"

namespace undersheet::desk {
namespace {

using entry::Value;

Result<Value> air(const Value& in) {
    const auto found = trade::air({.air_c = number(in, "air_c"),
                                   .rh_pct = number(in, "rh_pct"),
                                   .surface_c = optional_number(in, "surface_c"),
                                   .air_u_k = optional_number(in, "air_u_k"),
                                   .rh_u_pct = optional_number(in, "rh_u_pct")});
    if (!found) return found.fault();
    Value out;
    put(out, "dew_point_c", found->dew_point_c);
    put(out, "margin_k", found->margin_k);
    put(out, "dew_point_u_k", found->dew_point_u_k);
    return out;
}

Result<Value> timber(const Value& in) {
    const auto found = trade::timber({number(in, "air_c"), number(in, "rh_pct")});
    if (!found) return found.fault();
    Value out;
    put(out, "emc_pct", found->emc_pct);
    return out;
}

// The method's own line has the figures of the method; the others are as published.
trade::MoistureRule rule_named(const std::string& name) {
    if (name == "five_degrees") return trade::five_degree_moisture_rule();
    if (name == "none") return trade::no_moisture_rule();
    const auto& method = own_method();
    const method::Limit* rate = method.find_limit("moisture_per_k_pct");
    const double reference_c = method.limit("moisture_reference_c");
    const double per_k = method.limit("moisture_per_k_pct");
    return {.name = shortest(per_k, 3) + " % per K from " + shortest(reference_c, 1) + " °C",
            .source = rate->source,
            .pct_per_k_below = per_k,
            .pct_per_k_above = per_k,
            .reference_c = reference_c};
}

std::string_view reach_word(trade::MeterReach reach) {
    switch (reach) {
    case trade::MeterReach::below:
        return "below";
    case trade::MeterReach::above:
        return "above";
    case trade::MeterReach::within:
        break;
    }
    return "within";
}

Result<Value> moisture(const Value& in) {
    const auto rule = rule_named(in.text_of("rule"));
    const trade::MeterRange range{own_method().limit("meter_least_pct"),
                                  own_method().limit("meter_most_pct")};
    const auto found = trade::moisture(
        {.reading_pct = number(in, "reading_pct"), .board_c = number(in, "board_c")}, rule, range);
    if (!found) return found.fault();
    Value out;
    put(out, "corrected_pct", found->corrected_pct);
    put(out, "judged_pct", found->judged_pct);
    out.set("believable", found->believable).set("reach", reach_word(found->reach));
    out.set("rule", rule.name).set("rule_source", rule.source);
    return out;
}

} // namespace

std::vector<Topic> air_topics() { return {{"air", air}, {"timber", timber}, {"moisture", moisture}}; }

} // namespace undersheet::desk
