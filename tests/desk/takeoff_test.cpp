// A dormer of 3.20 by 2.10 m is taken off through the desk; prices are the example's, invented.
#include "desk/json.h"

#include "entry/json.h"
#include "method/json_schema.h"
#include "schema/embedded.h"
#include "tests/desk/desk_support.h"

#include <algorithm>

using namespace undersheet;

namespace {

const desk::TakeOffBy kWithPrices{std::string(schema::prices_example_json()), ""};

DeskTest& dormer() {
    static DeskTest test;
    static const bool surveyed = [] {
        test.survey();
        good(test.record("abutment", {"type=brick"}, "CD"));
        for (const auto& [pair, m] :
             {std::pair{"AB", "m=3.2"}, std::pair{"BC", "m=2.1"}, std::pair{"CD", "m=3.2"},
              std::pair{"DA", "m=2.1"}, std::pair{"AC", "m=3.828"}, std::pair{"BD", "m=3.827"}})
            good(test.record("tape", {m}, pair));
        return true;
    }();
    static_cast<void>(surveyed);
    return test;
}

const desk::TakeOffLine& line(const desk::TakeOff& made, const std::string& name) {
    const auto found = std::find_if(made.lines.begin(), made.lines.end(),
                                    [&](const desk::TakeOffLine& one) { return one.name == name; });
    if (found == made.lines.end()) throw std::logic_error("there is no line " + name);
    return *found;
}

std::string held_against_schema(const desk::TakeOff& made) {
    const auto shape = good(entry::read_json(schema::takeoff_schema_json()));
    const auto value = good(entry::read_json(desk::json_of(made)));
    const auto fits = method::check_shape(shape, value, "takeoff");
    return fits ? "done" : one_line(fits.fault());
}

const desk::WhyStep& step(const desk::Why& why, const std::string& heading) {
    for (const auto& one : why.steps)
        if (one.heading == heading) return one;
    throw std::logic_error("there is no step " + heading);
}

} // namespace

TEST_CASE("a take-off with prices names job and price list, and ends in a total") {
    const auto made = good(dormer().open().take_off({}, kWithPrices));
    CHECK(made.job.ref == "A-07");
    CHECK(made.price_list == "example prices, invented");
    CHECK(made.currency == "GBP");
    CHECK(line(made, "deck_adhesive").amount == "2.871");
    CHECK(line(made, "deck_adhesive").amount_words == "2.87 l");
    CHECK(line(made, "deck_adhesive").price_words == "49.00");
    CHECK(line(made, "total").price_minor > line(made, "net").price_minor);
    CHECK(made.trims.size() == 4);
}

TEST_CASE("the lines of a price add up to its net, and the materials to their sum") {
    const auto made = good(dormer().open().take_off({}, kWithPrices));
    std::int64_t materials = 0, net = 0;
    for (const auto& one : made.lines) {
        if (one.section == "materials") materials += one.price_minor;
        if (one.section == "price" && one.name != "net" && one.name != "vat" && one.name != "total")
            net += one.price_minor;
    }
    CHECK(line(made, "materials").price_minor == materials);
    CHECK(line(made, "net").price_minor == net);
    CHECK(line(made, "total").price_minor == net + line(made, "vat").price_minor);
}

TEST_CASE("a take-off for scripts is of the shape its schema says, with prices and without") {
    CHECK(held_against_schema(good(dormer().open().take_off({}, kWithPrices))) == "done");
    const auto bare = good(dormer().open().take_off({}, {}));
    CHECK(held_against_schema(bare) == "done");
    CHECK(bare.currency.empty());
    CHECK_FALSE(line(bare, "deck_adhesive").has_price);
}

TEST_CASE("one line of a take-off is explained with its sum, its allowances and their source") {
    const auto why = good(dormer().open().why_take_off({}, {kWithPrices.prices, "deck_adhesive"}));
    CHECK(why.about == "takeoff:deck_adhesive");
    CHECK(why.verdict == "field adhesive, 2.87 l; bought as 1 x 5 l; 49.00 GBP");
    CHECK(step(why, "Worked out").lines.back() == "+ 10 % = 2.871 l");
    const auto allowances = step(why, "Allowances of the method").lines;
    REQUIRE(allowances.size() == 3);
    CHECK(allowances.back() ==
          "deck adhesive ordered besides: 10 (field_spare_pct; one careful firm's practice, "
          "no published source)");
}

TEST_CASE("why takes a line of the take-off too, without prices") {
    const auto why = good(dormer().open().why({}, "takeoff:deck_adhesive"));
    CHECK(why.verdict == "field adhesive, 2.87 l");
}

TEST_CASE("a line that is not there is refused with the one that was meant") {
    CHECK(line_of(dormer().open().why_take_off({}, {"", "deck_adhesiv"})) ==
          "the take-off has no line 'deck_adhesiv'; did you mean 'deck_adhesive'? With --prices FILE there "
          "are more: trims, pins, money.");
}

TEST_CASE("a price list that does not read is refused with its line, and nothing is taken off") {
    CHECK(line_of(dormer().open().take_off({}, {"{\"format\": 1}", ""})).starts_with("price list line 1: "));
}

TEST_CASE("a roof that is not recorded yet is refused with what is missing") {
    DeskTest empty;
    CHECK(line_of(empty.open().take_off({}, kWithPrices)) ==
          "take-off: the record lacks every edge; undersheet record edge kind=gutter --at AB");
}

TEST_CASE("a take-off as of an earlier time knows only what was recorded by then") {
    DeskTest test;
    test.survey();
    CHECK_FALSE(test.open().take_off(DeskTest::by("IP", "08:05"), {}).ok());
}

TEST_CASE("taking off writes nothing into the book") {
    const auto before = good(dormer().open().verify()).entries;
    good(dormer().open().take_off({}, kWithPrices));
    CHECK(good(dormer().open().verify()).entries == before);
}
