#include "method/units.h"

#include "base/text.h"

#include <catch2/catch.hpp>

using namespace undersheet;
using namespace undersheet::method;

namespace {

std::string converted_text(std::string_view value, std::string_view typed, std::string_view unit) {
    const auto result = converted(*Decimal::parse(value), typed, unit);
    return result ? result->text() : one_line(result.fault());
}

} // namespace

// Factors: NIST SP 811 (2008) appendix B.8: inch 25.4 mm, foot 0.3048 m, mile an hour 0.44704 m/s, kilometre an hour
// 1/3.6 m/s; the knot, 1852 m an hour, from the SI brochure, 8th edition, table 8.
TEST_CASE("every unit of the table is converted to the digit") {
    struct Row {
        std::string_view value, typed, unit, kept;
    };
    const std::vector<Row> rows{{"15", "cm", "mm", "150"},
                                {"1.25", "m", "mm", "1250"},
                                {"7", "mm", "mm", "7"},
                                {"6", "in", "mm", "152.4"},
                                {"6", "inches", "mm", "152.4"},
                                {"1", "inch", "mm", "25.4"},
                                {"6", "\"", "mm", "152.4"},
                                {"1", "ft", "mm", "304.8"},
                                {"2", "feet", "mm", "609.6"},
                                {"1", "foot", "mm", "304.8"},
                                {"1", "'", "mm", "304.8"},
                                {"4735", "mm", "m", "4.735"},
                                {"473.5", "cm", "m", "4.735"},
                                {"15", "ft", "m", "4.572"},
                                {"15", "feet", "m", "4.572"},
                                {"10", "foot", "m", "3.048"},
                                {"10", "'", "m", "3.048"},
                                {"10", "in", "m", "0.254"},
                                {"10", "inch", "m", "0.254"},
                                {"10", "inches", "m", "0.254"},
                                {"10", "\"", "m", "0.254"},
                                {"3", "m", "m", "3"},
                                {"17", "mph", "ms", "7.59968"},
                                {"26", "mph", "ms", "11.62304"},
                                {"23", "mph", "ms", "10.28192"},
                                {"35", "mph", "ms", "15.6464"},
                                {"36", "km/h", "ms", "10"},
                                {"18", "km/h", "ms", "5"},
                                {"20", "km/h", "ms", "5.555556"},
                                {"10", "kn", "ms", "5.144444"},
                                {"10", "kt", "ms", "5.144444"},
                                {"4", "m/s", "ms", "4"},
                                {"750", "ml", "l", "0.75"},
                                {"5", "litres", "l", "5"},
                                {"1", "litre", "l", "1"},
                                {"2.5", "L", "l", "2.5"},
                                {"500", "g", "kg", "0.5"},
                                {"16.5", "kg", "kg", "16.5"},
                                {"1.2", "g/cm3", "kg_m3", "1200"},
                                {"1.2", "g/cm³", "kg_m3", "1200"},
                                {"1150", "kg/m3", "kg_m3", "1150"},
                                {"1150", "kg/m³", "kg_m3", "1150"},
                                {"30", "min", "h", "0.5"},
                                {"20", "min", "h", "0.333333"},
                                {"8", "h", "h", "8"},
                                {"8", "hours", "h", "8"},
                                {"1", "hour", "h", "1"},
                                {"2", "h", "min", "120"},
                                {"2", "hours", "min", "120"},
                                {"90", "s", "min", "1.5"},
                                {"5", "minutes", "min", "5"},
                                {"5", "mins", "min", "5"},
                                {"5", "min", "min", "5"},
                                {"14", "°C", "c", "14"},
                                {"14", "ºC", "c", "14"},
                                {"14", "C", "c", "14"},
                                {"14", "°", "c", "14"},
                                {"3", "K", "k", "3"},
                                {"66", "%", "pct", "66"},
                                {"51.5", "°", "deg", "51.5"},
                                {"51.5", "deg", "deg", "51.5"},
                                {"6.5", "m²", "m2", "6.5"},
                                {"6.5", "m2", "m2", "6.5"},
                                {"90", "g/m²", "g_m2", "90"},
                                {"90", "g/m2", "g_m2", "90"},
                                {"40", "Pa", "pa", "40"},
                                {"12", "", "mm", "12"},
                                {"-3", "cm", "mm", "-30"}};
    for (const auto& row : rows) {
        INFO(row.value << " " << row.typed << " as " << row.unit);
        CHECK(converted_text(row.value, row.typed, row.unit) == row.kept);
    }
}

TEST_CASE("a unit of another quantity is refused by its quantity, with what may be typed") {
    CHECK(converted_text("5", "kg", "mm") ==
          "'kg' measures a weight, this is a length in mm; these may be typed: mm, cm, m, in, ft");
    CHECK(converted_text("5", "mm", "pct") ==
          "'mm' measures a length, this is a share in %; these may be typed: %");
    CHECK(converted_text("5", "%", "ms").starts_with("'%' measures a share, this is a speed in m/s"));
    CHECK(converted_text("5", "m", "min").starts_with("'m' measures a length, this is a time in min"));
}

TEST_CASE("a unit that nobody knows is refused as that") {
    CHECK(converted_text("5", "furlong", "m")
              .starts_with("'furlong' is no unit known here, this is a length in m"));
    const auto result = converted(Decimal::of(5), "furlong", "m");
    REQUIRE_FALSE(result.ok());
    CHECK(result.fault().code == Code::unit_unknown);
}

TEST_CASE("Fahrenheit is refused with what to type") {
    for (const std::string_view typed : {"°F", "F", "ºF"}) {
        INFO(typed);
        CHECK(converted_text("57", typed, "c") ==
              "'" + std::string(typed) + "' is not converted here; type it in °C");
    }
}

TEST_CASE("a count takes no unit") {
    CHECK(converted_text("50", "mm", "") == "takes no unit, and 'mm' is one; type the bare number");
}

TEST_CASE("a product with too many digits is refused, not rounded") {
    const auto result = converted(*Decimal::parse("123456789.123456"), "ft", "m");
    REQUIRE_FALSE(result.ok());
    CHECK(result.fault().code == Code::number_too_long);
}

TEST_CASE("the unit is the longest that ends a name") {
    const std::vector<std::pair<std::string_view, std::string_view>> names{{"reading_pct", "pct"},
                                                                           {"m", "m"},
                                                                           {"span_m", "m"},
                                                                           {"thickness_mm", "mm"},
                                                                           {"density_kg_m3", "kg_m3"},
                                                                           {"weight_kg", "kg"},
                                                                           {"wind_ms", "ms"},
                                                                           {"minutes_min", "min"},
                                                                           {"area_m2", "m2"},
                                                                           {"latitude_deg", "deg"},
                                                                           {"cable_within_3m", ""},
                                                                           {"checked", ""},
                                                                           {"rain_in_h", "h"},
                                                                           {"team", ""}};
    for (const auto& [name, unit] : names) CHECK(unit_in_name(name) == unit);
}

TEST_CASE("units are shown as they are written") {
    CHECK(unit_sign("pct") == "%");
    CHECK(unit_sign("c") == "°C");
    CHECK(unit_sign("kg_m3") == "kg/m³");
    CHECK(unit_sign("") == "");
}
