#include "trade/field_check.h"

#include "base/decimal.h"

#include <cmath>

namespace undersheet::trade {
namespace {

constexpr int kShownPlaces = 6;

std::string shown(double value) {
    return std::isfinite(value) ? shortest(value, kShownPlaces) : "what is no number";
}

} // namespace

Fault impossible(std::string_view field, const Worded& detail, const Worded& clears) {
    return {Code::value_impossible, detail.text, std::string(field), clears.text, detail, clears};
}

FieldCheck& FieldCheck::between(std::string_view field, std::optional<double> value, double least,
                                double most) {
    if (fault_ || !value || (*value >= least && *value <= most)) return *this;
    fault_ = impossible(
        field, worded("{value} cannot be", {{"value", shown(*value)}}),
        worded("it must be from {least} to {most}", {{"least", shown(least)}, {"most", shown(most)}}));
    return *this;
}

FieldCheck& FieldCheck::above(std::string_view field, std::optional<double> value, double limit,
                              double most) {
    if (fault_ || !value || (*value > limit && *value <= most)) return *this;
    fault_ = impossible(field, worded("{value} cannot be", {{"value", shown(*value)}}),
                        worded("it must be more than {limit} and at most {most}",
                               {{"limit", shown(limit)}, {"most", shown(most)}}));
    return *this;
}

} // namespace undersheet::trade
