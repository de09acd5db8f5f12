#include "job/weather.h"

#include <algorithm>

namespace undersheet::job {
namespace {

// Rain that is over counts from its end, rain that is on from the reading.
void take_rain(std::optional<entry::Time>& last, const entry::Time& when) {
    if (!last || last->unix_s < when.unix_s) last = when;
}

// An open stop on the air, or one that holds the start of a stage that bonds: a wet board, no edge protection.
bool stops_bonding(const Finding& finding, const method::Method& method) {
    if (finding.severity != method::Severity::stop) return false;
    return std::any_of(finding.holds.begin(), finding.holds.end(), [&](const method::Hold& hold) {
        const method::Stage* stage = method.stage(hold.stage);
        return hold.moment == method::Moment::start && (stage == nullptr || stage->bonds);
    });
}

std::string numbers(const Reading& air, const trade::Air& result) {
    std::string line = air.word("air_c") + " °C, " + air.word("rh_pct") + " %";
    if (air.number("surface_c")) line += ", deck " + air.word("surface_c") + " °C";
    line += ": dew point " + fixed(result.dew_point_c, 1) + " °C";
    if (result.margin_k) line += ", margin " + fixed(*result.margin_k, 1) + " K";
    return line;
}

} // namespace

std::optional<trade::Air> dew_margin(const Reading& air) {
    const auto air_c = air.number("air_c");
    const auto rh_pct = air.number("rh_pct");
    if (!air_c || !rh_pct) return std::nullopt;
    const auto result =
        trade::air({.air_c = *air_c, .rh_pct = *rh_pct, .surface_c = air.number("surface_c")});
    return result ? std::optional(*result) : std::nullopt;
}

std::vector<std::string> dew_working(const Reading& air, const trade::Air& result) {
    const trade::Magnus& m = trade::kMagnusWmo;
    std::vector<std::string> lines;
    lines.push_back("g = ln(RH/100) + a T / (b + T), dew point = b g / (a - g); a = " + shortest(m.a, 3) +
                    ", b = " + shortest(m.b_c, 3) + " °C (WMO-No. 8, annex 4.B)");
    lines.push_back("air " + air.word("air_c") + " °C, " + air.word("rh_pct") + " %: dew point " +
                    fixed(result.dew_point_c, 2) + " °C");
    if (result.margin_k) {
        lines.push_back("deck surface " + air.word("surface_c") +
                        " °C less dew point = " + fixed(*result.margin_k, 2) + " K");
    }
    return lines;
}

std::optional<entry::Time> last_rain(const Job& job) {
    std::optional<entry::Time> last;
    for (const Reading* air : job.all("air")) {
        if (air->word("rain") == "now") take_rain(last, air->when());
        if (const auto ended = entry::parse_time(air->word("rain_ended"))) take_rain(last, *ended);
    }
    for (const Part& part : job.parts) {
        for (const Pause& pause : part.pauses) {
            if (pause.rain) take_rain(last, pause.from->when);
        }
    }
    return last;
}

std::string age_words(double minutes) {
    constexpr double kMostMinutes = 600, kHour_min = 60,
                     kDay_min = 1440; // from ten hours on nobody counts minutes
    if (minutes < kMostMinutes) return fixed(minutes, 0) + " min";
    if (minutes < 2 * kDay_min) return fixed(minutes / kHour_min, 0) + " h";
    return fixed(minutes / kDay_min, 0) + " days";
}

std::optional<BondNow> bond_now(const Job& job, const Judgement& judgement, const method::Method& method) {
    if (job.handed_over != nullptr && !job.within) return std::nullopt; // nothing is bonded any more
    const Reading* air = job.latest("air");
    if (air == nullptr) return std::nullopt;
    const auto result = dew_margin(*air);
    if (!result) return std::nullopt;
    BondNow answer{.yes = true, .line = numbers(*air, *result)};
    std::string why;
    const double age_min = entry::minutes_between(air->when(), job.as_of);
    if (age_min > method.limit("reading_age_min")) why = "the reading is " + age_words(age_min) + " old";
    if (!result->margin_k) why = "no deck surface temperature";
    for (const Finding& finding : judgement.findings) {
        if (stops_bonding(finding, method)) why += (why.empty() ? "" : "; ") + finding.says;
    }
    answer.yes = why.empty();
    answer.line += why.empty() ? ": yes, bond" : ": no, " + why;
    return answer;
}

} // namespace undersheet::job
