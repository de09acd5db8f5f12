// What comes from the sky: rain, wind, daylight.
#include "desk/reckon_topics.h"

#include "entry/time.h"
#include "trade/daylight.h"
#include "trade/rain.h"
#include "trade/wind.h"

#include <cmath>

namespace undersheet::desk {
namespace {

using entry::Value;

trade::Gutter gutter_of(const Value& of) {
    const bool is_round = of.text_of("shape") == "half_round";
    return {.shape = is_round ? trade::GutterShape::half_round : trade::GutterShape::rectangular,
            .area_mm2 = number(of, "area_mm2"),
            .coefficient = optional_number(of, "coefficient"),
            .length_m = optional_number(of, "length_m"),
            .depth_mm = optional_number(of, "depth_mm")};
}

Result<Value> rain(const Value& in) {
    trade::RainInput given{.roof_m2 = number(in, "roof_m2"),
                           .wall_m2 = optional_number(in, "wall_m2"),
                           .rate_l_s_m2 = number(in, "rate_l_s_m2")};
    if (const Value* gutter = in.find("gutter")) given.gutter = gutter_of(*gutter);
    const auto found = trade::rain(given);
    if (!found) return found.fault();
    Value out;
    put(out, "flow_l_s", found->flow_l_s);
    put(out, "capacity_l_s", found->capacity_l_s);
    if (found->enough) out.set("enough", *found->enough);
    return out;
}

trade::WindInput wind_input(const Value& in) {
    trade::WindInput given{.speed_ms = optional_number(in, "speed_ms")};
    if (const Value* deck = in.find("deck"))
        given.deck = trade::WindDeck{number(*deck, "b_m"), number(*deck, "d_m"), number(*deck, "h_m")};
    if (const Value* site = in.find("site")) {
        given.site = trade::WindSite{number(*site, "vb_ms"), number(*site, "z_m"), number(*site, "z0_m"),
                                     number(*site, "zmin_m")};
    }
    return given;
}

Value zones_value(const trade::WindZones& zones) {
    Value out;
    put(out, "f", zones.f);
    put(out, "g", zones.g);
    put(out, "h", zones.h);
    put(out, "i", zones.i);
    return out;
}

Result<Value> wind(const Value& in) {
    const auto found = trade::wind(wind_input(in));
    if (!found) return found.fault();
    Value out;
    if (found->beaufort) out.set("beaufort", *found->beaufort);
    put(out, "pressure_pa", found->pressure_pa);
    if (found->zones_m2) out.set("zones_m2", zones_value(*found->zones_m2));
    put(out, "peak_pa", found->peak_pa);
    return out;
}

// Minutes after local midnight of that day, to the second; a late sunset falls on the next.
std::string time_text(const entry::Date& date, double minutes, int offset_min) {
    const std::int64_t midnight_s = entry::day_number(date) * 86'400 - std::int64_t{offset_min} * 60;
    return entry::time_at(midnight_s + std::llround(minutes * 60), offset_min).text;
}

Result<Value> daylight(const Value& in) {
    const auto date = entry::parse_date(in.text_of("date"));
    if (!date || entry::date_text(*date) != in.text_of("date")) {
        return Fault{Code::value_impossible, "'" + in.text_of("date") + "' is no day", "date",
                     "write it like 2026-06-11"};
    }
    const int offset_min = static_cast<int>(count(in, "offset_min"));
    const auto found = trade::find_daylight({.latitude_deg = number(in, "latitude_deg"),
                                             .longitude_deg = number(in, "longitude_deg"),
                                             .year = date->year,
                                             .month = date->month,
                                             .day = date->day,
                                             .offset_min = offset_min});
    if (!found) return found.fault();
    Value out;
    if (found->sunrise_min) out.set("sunrise", time_text(*date, *found->sunrise_min, offset_min));
    if (found->sunset_min) out.set("sunset", time_text(*date, *found->sunset_min, offset_min));
    if (found->polar == trade::Polar::day) out.set("polar", "day");
    if (found->polar == trade::Polar::night) out.set("polar", "night");
    return out;
}

} // namespace

std::vector<Topic> weather_topics() { return {{"rain", rain}, {"wind", wind}, {"daylight", daylight}}; }

} // namespace undersheet::desk
