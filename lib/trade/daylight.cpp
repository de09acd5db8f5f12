#include "trade/daylight.h"

#include "trade/field_check.h"

#include <chrono>
#include <cmath>
#include <numbers>

namespace undersheet::trade {
namespace {

constexpr double kDayMin = 1440;
constexpr double kDegPerRad = 180 / std::numbers::pi;

double sin_deg(double deg) { return std::sin(deg / kDegPerRad); }
double cos_deg(double deg) { return std::cos(deg / kDegPerRad); }
double turned(double deg) { return deg - 360 * std::floor(deg / 360); } // into 0 to 360

struct Sun {
    double right_ascension_deg = 0;
    double declination_deg = 0;
};

// Meeus, Astronomical Algorithms, chapter 25, low accuracy (0.01°), apparent place.
Sun sun_at(double days_since_2000) {
    const double t = days_since_2000 / 36525;
    const double mean_longitude = turned(280.46646 + t * (36000.76983 + t * 0.0003032));
    const double anomaly = turned(357.52911 + t * (35999.05029 - t * 0.0001537));
    const double centre = (1.914602 - t * (0.004817 + t * 0.000014)) * sin_deg(anomaly) +
                          (0.019993 - t * 0.000101) * sin_deg(2 * anomaly) + 0.000289 * sin_deg(3 * anomaly);
    const double node = 125.04 - 1934.136 * t;
    const double longitude = mean_longitude + centre - 0.00569 - 0.00478 * sin_deg(node);
    const double tilt = 23.4392911 - t * 0.0130042 + 0.00256 * cos_deg(node);
    return {kDegPerRad * std::atan2(cos_deg(tilt) * sin_deg(longitude), cos_deg(longitude)),
            kDegPerRad * std::asin(sin_deg(tilt) * sin_deg(longitude))};
}

// One place on one date; times are minutes after local midnight.
class Place {
public:
    explicit Place(const DaylightInput& in) : in_(in) {
        using namespace std::chrono;
        const auto date = sys_days(year(in.year) / in.month / in.day);
        const auto days = (date - sys_days(year(2000) / 1 / 1)).count();
        midnight_days_ =
            static_cast<double>(days) - 0.5 - in.offset_min / kDayMin; // day 0 of the formulas is at noon
    }

    [[nodiscard]] double height_deg(double minute) const {
        const double days = midnight_days_ + minute / kDayMin;
        const Sun sun = sun_at(days);
        const double hour_angle = hour_angle_deg(days, sun);
        return kDegPerRad *
               std::asin(sin_deg(in_.latitude_deg) * sin_deg(sun.declination_deg) +
                         cos_deg(in_.latitude_deg) * cos_deg(sun.declination_deg) * cos_deg(hour_angle));
    }

    // The sun in the south (or north), on this date. Two steps settle it to well under a second.
    [[nodiscard]] double noon_min() const {
        double minute = kDayMin / 2;
        for (int step = 0; step < 3; ++step) {
            const double days = midnight_days_ + minute / kDayMin;
            minute -= (turned(hour_angle_deg(days, sun_at(days)) + 180) - 180) * 4; // 4 minutes a degree
            if (step == 0) minute -= kDayMin * std::floor(minute / kDayMin);
        }
        return minute;
    }

private:
    [[nodiscard]] double hour_angle_deg(double days, const Sun& sun) const {
        const double greenwich = 280.46061837 + 360.98564736629 * days;
        return turned(greenwich) + in_.longitude_deg - sun.right_ascension_deg;
    }

    DaylightInput in_;
    double midnight_days_ = 0; // days from 2000-01-01 12:00 UTC
};

// Where the sun passes the given height between a time it is under it and a time it is over it.
double crossing_min(const Place& place, double under, double over, double height_deg) {
    constexpr double kSecond = 1.0 / 60;
    while (std::fabs(over - under) > kSecond) {
        const double middle = (under + over) / 2;
        (place.height_deg(middle) < height_deg ? under : over) = middle;
    }
    return (under + over) / 2;
}

bool is_a_day(int year, int month, int day) {
    // The calendar types keep a month in one byte, so the plain ranges come first.
    if (year < 1901 || year > 2099 || month < 1 || month > 12 || day < 1 || day > 31) return false;
    return (std::chrono::year(year) / month / day).ok();
}

std::string written(int number, std::size_t width) {
    std::string text = std::to_string(number);
    return text.size() < width ? std::string(width - text.size(), '0') + text : text;
}

std::optional<Fault> wrong_field(const DaylightInput& in) {
    const auto wrong = FieldCheck()
                           .between("latitude_deg", in.latitude_deg, -90, 90)
                           .between("longitude_deg", in.longitude_deg, -180, 180)
                           .between("offset_min", in.offset_min, -720, 840)
                           .fault();
    if (wrong || is_a_day(in.year, in.month, in.day)) return wrong;
    const std::string date = written(in.year, 4) + "-" + written(in.month, 2) + "-" + written(in.day, 2);
    return impossible("date", "the day " + date + " cannot be",
                      "give a day of the calendar from 1901 to 2099");
}

} // namespace

Result<Daylight> find_daylight(const DaylightInput& in, double rising_deg) {
    if (const auto wrong = wrong_field(in)) return *wrong;
    const Place place(in);
    const double noon = place.noon_min();
    Daylight out;
    if (place.height_deg(noon) < rising_deg) {
        out.polar = Polar::night;
        return out;
    }
    const double before = noon - kDayMin / 2;
    const double after = noon + kDayMin / 2;
    if (place.height_deg(before) < rising_deg)
        out.sunrise_min = crossing_min(place, before, noon, rising_deg);
    if (place.height_deg(after) < rising_deg) out.sunset_min = crossing_min(place, after, noon, rising_deg);
    if (!out.sunrise_min || !out.sunset_min) out.polar = Polar::day;
    return out;
}

} // namespace undersheet::trade
