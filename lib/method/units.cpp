#include "method/units.h"

#include "base/text.h"

#include <algorithm>
#include <array>
#include <vector>

namespace undersheet::method {
namespace {

// A unit that fields are kept in.
struct Unit {
    std::string_view name; // as it ends a field's name
    std::string_view sign;
    std::string_view quantity;
};

constexpr std::array kUnits{Unit{"mm", "mm", "a length"},      Unit{"m", "m", "a length"},
                            Unit{"m2", "m²", "an area"},       Unit{"kg", "kg", "a weight"},
                            Unit{"g_m2", "g/m²", "a coating"}, Unit{"kg_m3", "kg/m³", "a density"},
                            Unit{"c", "°C", "a temperature"},  Unit{"k", "K", "a difference of temperature"},
                            Unit{"pct", "%", "a share"},       Unit{"min", "min", "a time"},
                            Unit{"h", "h", "a time"},          Unit{"l", "l", "a volume"},
                            Unit{"deg", "°", "an angle"},      Unit{"ms", "m/s", "a speed"},
                            Unit{"pa", "Pa", "a pressure"}};

// "1 `word` is `times` / `over` of `unit`." Over 1 the result is rounded to six places.
struct Conversion {
    std::string_view unit;
    std::string_view word;
    std::string_view times; // "" for one that is known and refused
    int over = 1;
};

constexpr std::array kConversions{Conversion{"mm", "mm", "1"},
                                  Conversion{"mm", "cm", "10"},
                                  Conversion{"mm", "m", "1000"},
                                  Conversion{"mm", "in", "25.4"},
                                  Conversion{"mm", "inch", "25.4"},
                                  Conversion{"mm", "inches", "25.4"},
                                  Conversion{"mm", "\"", "25.4"},
                                  Conversion{"mm", "ft", "304.8"},
                                  Conversion{"mm", "foot", "304.8"},
                                  Conversion{"mm", "feet", "304.8"},
                                  Conversion{"mm", "'", "304.8"},
                                  Conversion{"m", "m", "1"},
                                  Conversion{"m", "mm", "0.001"},
                                  Conversion{"m", "cm", "0.01"},
                                  Conversion{"m", "in", "0.0254"},
                                  Conversion{"m", "inch", "0.0254"},
                                  Conversion{"m", "inches", "0.0254"},
                                  Conversion{"m", "\"", "0.0254"},
                                  Conversion{"m", "ft", "0.3048"},
                                  Conversion{"m", "foot", "0.3048"},
                                  Conversion{"m", "feet", "0.3048"},
                                  Conversion{"m", "'", "0.3048"},
                                  Conversion{"m2", "m2", "1"},
                                  Conversion{"m2", "m²", "1"},
                                  Conversion{"kg", "kg", "1"},
                                  Conversion{"kg", "g", "0.001"},
                                  Conversion{"g_m2", "g/m2", "1"},
                                  Conversion{"g_m2", "g/m²", "1"},
                                  Conversion{"kg_m3", "kg/m3", "1"},
                                  Conversion{"kg_m3", "kg/m³", "1"},
                                  Conversion{"kg_m3", "g/cm3", "1000"},
                                  Conversion{"kg_m3", "g/cm³", "1000"},
                                  Conversion{"c", "°C", "1"},
                                  Conversion{"c", "ºC", "1"},
                                  Conversion{"c", "C", "1"},
                                  Conversion{"c", "°", "1"},
                                  Conversion{"c", "°F", ""},
                                  Conversion{"c", "ºF", ""},
                                  Conversion{"c", "F", ""},
                                  Conversion{"k", "K", "1"},
                                  Conversion{"pct", "%", "1"},
                                  Conversion{"min", "min", "1"},
                                  Conversion{"min", "mins", "1"},
                                  Conversion{"min", "minutes", "1"},
                                  Conversion{"min", "h", "60"},
                                  Conversion{"min", "hours", "60"},
                                  Conversion{"min", "s", "1", 60},
                                  Conversion{"h", "h", "1"},
                                  Conversion{"h", "hour", "1"},
                                  Conversion{"h", "hours", "1"},
                                  Conversion{"h", "min", "1", 60},
                                  Conversion{"l", "l", "1"},
                                  Conversion{"l", "litre", "1"},
                                  Conversion{"l", "litres", "1"},
                                  Conversion{"l", "ml", "0.001"},
                                  Conversion{"deg", "°", "1"},
                                  Conversion{"deg", "deg", "1"},
                                  Conversion{"ms", "m/s", "1"},
                                  Conversion{"ms", "mph", "0.44704"},
                                  Conversion{"ms", "km/h", "1000", 3600},
                                  Conversion{"ms", "kn", "1852", 3600},
                                  Conversion{"ms", "kt", "1852", 3600},
                                  Conversion{"pa", "Pa", "1"}};

const Unit* find_unit(std::string_view name) {
    const auto found =
        std::find_if(kUnits.begin(), kUnits.end(), [name](const Unit& unit) { return unit.name == name; });
    return found == kUnits.end() ? nullptr : found;
}

const Conversion* find_conversion(std::string_view unit, std::string_view word) {
    const auto found = std::find_if(kConversions.begin(), kConversions.end(), [&](const Conversion& row) {
        return row.unit == unit && lower_ascii(row.word) == lower_ascii(word);
    });
    return found == kConversions.end() ? nullptr : found;
}

// What quantity a word measures, "" when it is no unit we know.
std::string_view quantity_of(std::string_view word) {
    const auto found = std::find_if(kConversions.begin(), kConversions.end(), [word](const Conversion& row) {
        return lower_ascii(row.word) == lower_ascii(word);
    });
    const Unit* unit = found == kConversions.end() ? nullptr : find_unit(found->unit);
    return unit == nullptr ? std::string_view() : unit->quantity;
}

Fault refused(std::string_view typed, std::string_view unit) {
    const std::string word = "'" + std::string(typed) + "'";
    const Unit* wanted = find_unit(unit);
    if (wanted == nullptr)
        return {Code::unit_unknown, "takes no unit, and " + word + " is one", {}, "type the bare number"};
    const std::string asked = "this is " + std::string(wanted->quantity) + " in " + std::string(wanted->sign);
    const std::string_view other = quantity_of(typed);
    const std::string is =
        other.empty() ? " is no unit known here, " : " measures " + std::string(other) + ", ";
    return {Code::unit_unknown, word + is + asked, {}, "these may be typed: " + typed_units(unit)};
}

Result<Decimal> divided(const Decimal& value, int over) {
    constexpr int kDigits = 6;
    return Decimal::rounded(value.value() / over, kDigits);
}

} // namespace

std::string_view unit_in_name(std::string_view field_name) {
    std::string_view longest;
    for (const auto& unit : kUnits) {
        const bool ends = field_name == unit.name || field_name.ends_with("_" + std::string(unit.name));
        if (ends && unit.name.size() > longest.size()) longest = unit.name;
    }
    return longest;
}

std::string_view unit_sign(std::string_view unit) {
    const Unit* found = find_unit(unit);
    return found == nullptr ? std::string_view() : found->sign;
}

std::string typed_units(std::string_view unit) {
    std::vector<std::string> words;
    const Conversion* before = nullptr; // other spellings of a unit stand right behind it and are not listed
    for (const auto& row : kConversions) {
        if (row.unit != unit || row.times.empty()) continue;
        const bool same = before != nullptr && before->times == row.times && before->over == row.over;
        if (!same) words.emplace_back(row.word);
        before = &row;
    }
    return joined(words, ", ");
}

Result<Decimal> converted(const Decimal& value, std::string_view typed, std::string_view unit) {
    if (typed.empty()) return value;
    const Conversion* row = find_conversion(unit, typed);
    if (row == nullptr) return refused(typed, unit);
    if (row->times.empty()) {
        const std::string sign(unit_sign(unit));
        return Fault{Code::unit_unknown,
                     "'" + std::string(typed) + "' is not converted here",
                     {},
                     "type it in " + sign};
    }
    auto factor = Decimal::parse(row->times);
    if (!factor) return factor.fault();
    auto product = value.times(*factor);
    if (!product || row->over == 1) return product;
    return divided(*product, row->over);
}

} // namespace undersheet::method
