// Which hours suit a dormer that was only surveyed, through the desk.
#include "desk/json.h"

#include "entry/json.h"
#include "method/json_schema.h"
#include "schema/embedded.h"
#include "tests/desk/desk_support.h"

using namespace undersheet;

namespace {

std::string fine_days() {
    std::string table = "from,air_c,rh_pct,surface_c,wind_ms,gust_ms,rain_mm\n";
    for (int day = 20; day < 24; ++day)
        for (int hour = 0; hour < 24; ++hour)
            table += "2026-06-" + std::to_string(day) + "T" + (hour < 10 ? "0" : "") + std::to_string(hour) +
                     ":00:00+01:00,15,60,16,2,4,0\n";
    return table;
}

void tape(DeskTest& test) {
    test.survey();
    for (const auto& [pair, m] :
         {std::pair{"AB", "m=3.2"}, std::pair{"BC", "m=2.1"}, std::pair{"CD", "m=3.2"},
          std::pair{"DA", "m=2.1"}, std::pair{"AC", "m=3.828"}, std::pair{"BD", "m=3.827"}})
        good(test.record("tape", {m}, pair));
}

std::string held_against_schema(const desk::DayAnswer& made) {
    const auto shape = good(entry::read_json(schema::day_schema_json()));
    const auto value = good(entry::read_json(desk::json_of(made)));
    const auto fits = method::check_shape(shape, value, "day");
    return fits ? "done" : one_line(fits.fault());
}

} // namespace

TEST_CASE("four fine days take the whole of a small roof, part after part, and the JSON fits its schema") {
    DeskTest test;
    tape(test);
    const auto made = good(test.open().day({}, fine_days()));
    CHECK(made.fits);
    REQUIRE_FALSE(made.row.empty());
    CHECK(made.row.front().stage == "deck");
    CHECK(made.row.front().from == "2026-06-20T07:30:00+01:00");
    for (std::size_t i = 1; i < made.row.size(); ++i) CHECK(made.row[i - 1].to <= made.row[i].from);
    CHECK(made.days.size() == 4);
    CHECK(held_against_schema(made) == "done");
}

TEST_CASE("a forecast that cannot be read or a roof that was not taped is refused") {
    DeskTest test;
    test.survey();
    CHECK(test.open().day({}, "when,temperature\n1,2\n").fault().detail.find("no such column") !=
          std::string::npos);
    CHECK(test.open().day({}, fine_days()).fault().code == Code::record_too_thin);
}
