#include "desk/reckon_topics.h"

#include <algorithm>
#include <cmath>

namespace undersheet::desk {

using entry::Value;

double number(const Value& of, std::string_view key) { return exact(of, key).value(); }

std::int64_t count(const Value& of, std::string_view key) { return exact(of, key).whole(); }

const Decimal& exact(const Value& of, std::string_view key) {
    const Value* member = of.find(key);
    if (member == nullptr || member->number() == nullptr)
        throw std::logic_error("no schema has made sure of " + std::string(key));
    return *member->number();
}

std::optional<double> optional_number(const Value& of, std::string_view key) {
    if (of.find(key) == nullptr) return std::nullopt;
    return number(of, key);
}

Value figure(double value) {
    constexpr int kPlaces = 9;
    constexpr int kDigits = 15;
    if (!std::isfinite(value)) return {"?"};
    const double size = std::fabs(value);
    const int before = size < 1 ? 1 : static_cast<int>(std::floor(std::log10(size))) + 1;
    return Value::rounded(value, std::clamp(kDigits - before, 0, kPlaces));
}

void put(Value& out, std::string_view key, double value) { out.set(key, figure(value)); }

void put(Value& out, std::string_view key, const std::optional<double>& value) {
    if (value) out.set(key, figure(*value));
}

} // namespace undersheet::desk
