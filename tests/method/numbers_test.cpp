#include "method/numbers.h"

#include "base/text.h"

#include <catch2/catch.hpp>

using namespace undersheet;
using namespace undersheet::method;

namespace {

Field millimetres() {
    Field field;
    field.name = "height_mm";
    field.type = FieldType::number;
    field.unit = "mm";
    field.range = Range{Decimal::of(-100), Decimal::of(2000)};
    field.usual = Range{Decimal::of(0), Decimal::of(1500)};
    return field;
}

std::string read(std::string_view typed) {
    const auto number = typed_number(millimetres(), typed);
    return number ? number->value.text() : one_line(number.fault());
}

Code code_of(std::string_view typed) { return typed_number(millimetres(), typed).fault().code; }

} // namespace

TEST_CASE("a number is read with point or comma, with or without unit and blank") {
    CHECK(read("12") == "12");
    CHECK(read("12.5") == "12.5");
    CHECK(read("12,5") == "12.5");
    CHECK(read("12,5 cm") == "125");
    CHECK(read("15cm") == "150");
    CHECK(read(" 15 cm ") == "150");
    CHECK(read("-3") == "-3");
    CHECK(read("+3") == "3");
    CHECK(read("−3") == "-3"); // the long minus of a telephone's keyboard
    CHECK(read("0,5") == "0.5");
    CHECK(read("007") == "7");
}

TEST_CASE("two commas, or a comma with a point, can be read two ways and are refused") {
    CHECK(read("1,2,3") == "'1,2,3' has two commas; type it like 12 or 12.5");
    CHECK(read("1,200.5") == "'1,200.5' has a comma and a point; type it like 12 or 12.5");
    CHECK(read("1.200,5") == "'1.200,5' has a comma and a point; type it like 12 or 12.5");
    CHECK(code_of("1,2,3") == Code::number_malformed);
    CHECK(code_of("1,200.5") == Code::number_malformed);
}

TEST_CASE("what is no number is refused as that") {
    for (const std::string_view typed :
         {"abc", "cm", "1.2.3", "--5", "5-", "1e3", ".5", "5.", ",5", "NaN", "inf", "0x10", "1 200"}) {
        INFO(typed);
        const auto number = typed_number(millimetres(), typed);
        REQUIRE_FALSE(number.ok());
        CHECK((number.fault().code == Code::number_malformed || number.fault().code == Code::unit_unknown));
    }
    CHECK(read("1 200 mm") == "'1 200 mm' is two numbers; type it like 12 or 12.5");
}

TEST_CASE("more digits than can be kept are refused") {
    CHECK(code_of("0.1234567890123456") == Code::number_too_long);
    CHECK(code_of("99999999999999999999") == Code::number_too_long);
}

TEST_CASE("a whole number takes no decimals, whichever unit it was typed in") {
    Field field;
    field.name = "minutes_min";
    field.type = FieldType::whole;
    field.unit = "min";
    field.range = Range{Decimal::of(0), Decimal::of(600)};
    CHECK(typed_number(field, "2 h")->value == Decimal::of(120));
    CHECK(typed_number(field, "90 s").fault().detail == "'90 s' is not a whole number");
    CHECK(typed_number(field, "1.5").fault().code == Code::number_malformed);
    CHECK(typed_number(field, "2.0")->value == Decimal::of(2));
}

TEST_CASE("the range holds at its ends and not beyond") {
    CHECK(read("2000") == "2000");
    CHECK(read("2000.1") == "2000.1 mm is outside -100 to 2000");
    CHECK(read("-100") == "-100");
    CHECK(read("-100.1") == "-100.1 mm is outside -100 to 2000");
    CHECK(read("2.0001 m") == "2000.1 mm (typed 2.0001 m) is outside -100 to 2000");
}

TEST_CASE("a value outside the usual ones is kept and asked about; at their ends it is not") {
    CHECK(typed_number(millimetres(), "0")->questions.empty());
    CHECK(typed_number(millimetres(), "1500")->questions.empty());
    const auto number = typed_number(millimetres(), "1500.1");
    REQUIRE(number.ok());
    CHECK(number->questions ==
          std::vector<std::string>{"1500.1 mm is outside the usual 0 to 1500, is it right?"});
    CHECK(typed_number(millimetres(), "-0.1")->questions.size() == 1);
}

TEST_CASE("a comma before exactly three digits is asked about, it may stand for thousands") {
    const auto number = typed_number(millimetres(), "1,200");
    REQUIRE(number.ok());
    CHECK(number->value.text() == "1.2");
    CHECK(number->questions == std::vector<std::string>{"1,200 was read as 1.2 mm, is it 1200?"});
    CHECK(typed_number(millimetres(), "1,20")->questions.empty());
    CHECK(typed_number(millimetres(), "0,125")->questions.empty());
    CHECK(typed_number(millimetres(), "10,125")->questions.size() == 1);
}
