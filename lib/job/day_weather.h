// One quarter of an hour of a forecast against one stage: what would hold it. For day.cpp only.
#pragma once

#include "job/forecast.h"
#include "job/rules.h"

namespace undersheet::job {

struct Light {
    std::optional<std::int64_t> from_s = {}, to_s = {}; // nothing where the place is not known
};
[[nodiscard]] Light light_on(const Job& job, const entry::Time& when);

class DayWeather {
public:
    DayWeather(const Job& job, const method::Method& method, const method::Catalogue& kinds,
               const Forecast& forecast);

    // One sentence each, the rules' own words; empty when nothing holds.
    [[nodiscard]] const std::vector<std::string>& holds(const std::string& stage, std::int64_t unix_s);

private:
    [[nodiscard]] std::vector<std::string> judged(const method::Stage& stage, std::int64_t unix_s) const;
    [[nodiscard]] std::vector<std::string> by_rules(const method::Stage& stage,
                                                    const ForecastHour& hour) const;
    void add_rain_ahead(const method::Stage& stage, std::int64_t unix_s,
                        std::vector<std::string>& held) const;
    void add_light(const method::Stage& stage, const ForecastHour& hour, std::int64_t unix_s,
                   std::vector<std::string>& held) const;
    void add_doubts(const method::Stage& stage, const ForecastHour& hour,
                    std::vector<std::string>& held) const;
    void add_tins(const method::Stage& stage, const ForecastHour& hour, std::vector<std::string>& held) const;

    const Job& job_;
    const method::Method& method_;
    const Forecast& forecast_;
    Context context_;
    std::map<std::pair<std::string, std::int64_t>, std::vector<std::string>> known_;
};

} // namespace undersheet::job
