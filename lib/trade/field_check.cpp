#include "trade/field_check.h"

#include "base/decimal.h"

#include <cmath>
#include <utility>

namespace undersheet::trade {
namespace {

constexpr int kShownPlaces = 6;

std::string shown(double value) {
    return std::isfinite(value) ? shortest(value, kShownPlaces) : "what is no number";
}

} // namespace

Fault impossible(std::string_view field, std::string detail, std::string clears) {
    return {Code::value_impossible, std::move(detail), std::string(field), std::move(clears)};
}

FieldCheck& FieldCheck::between(std::string_view field, std::optional<double> value, double least,
                                double most) {
    if (fault_ || !value || (*value >= least && *value <= most)) return *this;
    fault_ = impossible(field, shown(*value) + " cannot be",
                        "it must be from " + shown(least) + " to " + shown(most));
    return *this;
}

FieldCheck& FieldCheck::above(std::string_view field, std::optional<double> value, double limit,
                              double most) {
    if (fault_ || !value || (*value > limit && *value <= most)) return *this;
    fault_ = impossible(field, shown(*value) + " cannot be",
                        "it must be more than " + shown(limit) + " and at most " + shown(most));
    return *this;
}

} // namespace undersheet::trade
