#include "entry/place.h"

#include <catch2/catch.hpp>
#include <random>

using namespace undersheet;
using namespace undersheet::entry;

namespace {
struct Row {
    const char* text;
    PlaceForm form;
};
} // namespace

TEST_CASE("every form of place is read as what it is and printed as it was written") {
    const auto row = GENERATE(values<Row>({{"A", PlaceForm::corner},
                                           {"AB", PlaceForm::pair},
                                           {"AC", PlaceForm::pair},
                                           {"AB+1.20", PlaceForm::along},
                                           {"EA+0", PlaceForm::along},
                                           {"2.10,0.80", PlaceForm::point},
                                           {"-1.55,0", PlaceForm::point},
                                           {"R1", PlaceForm::label},
                                           {"12", PlaceForm::label},
                                           {"back-outlet_2.a", PlaceForm::label},
                                           {"B2|B3", PlaceForm::joint},
                                           {"2.75,0>2.75,4.60", PlaceForm::line},
                                           {"", PlaceForm::nowhere}}));
    INFO(row.text);
    const auto place = parse_place(row.text);
    REQUIRE(place.ok());
    CHECK(place->form == row.form);
    CHECK(place_text(*place) == row.text);
}

TEST_CASE("a place has one printed form") {
    CHECK(place_text(*parse_place("AB+1.2")) == "AB+1.20");
    CHECK(place_text(*parse_place("AB+1.200")) == "AB+1.20");
    CHECK(place_text(*parse_place("AB+1.00")) == "AB+1");
    CHECK(place_text(*parse_place("2.105,0.5")) == "2.105,0.50");
    CHECK(place_text(*parse_place("-0,0.0")) == "0,0");
}

TEST_CASE("a joint is the same from both sides") {
    CHECK(place_text(*parse_place("B3|B2")) == "B2|B3");
    CHECK(place_text(*parse_place("B10|B9")) == "B9|B10");
    CHECK(*parse_place("B3|B2") == *parse_place("B2|B3"));
}

TEST_CASE("an edge keeps its direction") {
    CHECK_FALSE(*parse_place("AB") == *parse_place("BA"));
    CHECK_FALSE(*parse_place("AB+1.20") == *parse_place("BA+1.20"));
}

TEST_CASE("a label may have twenty-four characters and not one more") {
    CHECK(parse_place(std::string(24, 'x')).ok());
    CHECK_FALSE(parse_place(std::string(25, 'x')).ok());
}

TEST_CASE("what is no place is refused in one line that says how to write one") {
    const char* text =
        GENERATE("AA", "AA+1", "AB+", "AB+-1", "AB+1,2", "A+1", "ABC+1", "2,10,0,80", "2.1,", ",", "2.1;0.8",
                 "B2|B2", "B2|", "|B2", "A|B2", "B1|B2|B3", "1,2>1,2", "1,2>", ">", "1,2>3,4>5,6", "-R1",
                 "R 1", " A", "A\n", "R\xC3\xA9", "AB+1e1", "1e1,2", "_x", "\xFF");
    INFO(text);
    const auto place = parse_place(text);
    REQUIRE_FALSE(place.ok());
    CHECK(place.fault().code == Code::place_malformed);
    CHECK(place.fault().clears.find("AB+1.20") != std::string::npos);
}

TEST_CASE("whatever is taken as a place prints to something that reads back the same") {
    const auto seed = std::random_device{}();
    INFO("seed " << seed);
    std::mt19937 chance(seed);
    constexpr std::string_view kLetters = "ABCR12.,+|>-0 x";
    int taken = 0;
    for (int i = 0; i < 20'000; ++i) {
        std::string text;
        for (auto length = chance() % 12; length > 0; --length) text += kLetters[chance() % kLetters.size()];
        const auto place = parse_place(text);
        if (!place.ok()) continue;
        ++taken;
        const auto again = parse_place(place_text(*place));
        INFO(text);
        REQUIRE(again.ok());
        REQUIRE(*again == *place);
        REQUIRE(place_text(*again) == place_text(*place));
    }
    CHECK(taken > 500);
}
