#include "desk/json.h"

#include "entry/json.h"
#include "method/json_schema.h"
#include "schema/embedded.h"
#include "tests/desk/desk_support.h"

using namespace undersheet;

namespace {

// The answer read back and held against its schema; "done" or what is wrong.
std::string held_against(const std::string& schema, const std::string& json) {
    const auto shape = good(entry::read_json(*schema::find(schema + ".schema.json")));
    const auto value = good(entry::read_json(json));
    const auto fits = method::check_shape(shape, value, schema);
    return fits ? "done" : one_line(fits.fault());
}

DeskTest& busy_job() {
    static DeskTest test;
    static const bool filled = [] {
        test.survey();
        test.open_the_day();
        const auto chase = good(test.record("chase", {"height_mm=130"}, "CD+0.10"));
        good(test.open().correct(DeskTest::by("IP", "08:20"), {chase.name, {"height_mm=131"}, "read again"}));
        good(test.open().punch_add(DeskTest::by("WP", "08:30"), {"scuff", "BC", "", "note"}));
        good(test.open().punch_clear(DeskTest::by("WP", "08:40"), {"1", "", {}}));
        return true;
    }();
    static_cast<void>(filled);
    return test;
}

} // namespace

TEST_CASE("every answer for scripts is of the shape its schema says") {
    auto& test = busy_job();
    auto desk = test.open();
    CHECK(held_against("stages", desk::json_of(good(desk.stages({})))) == "done");
    CHECK(held_against("findings", desk::json_of(good(desk.findings({})))) == "done");
    CHECK(held_against("punch", desk::json_of(good(desk.punch({})))) == "done");
    CHECK(held_against("jobs", desk::json_of(good(desk.jobs()))) == "done");
    CHECK(held_against("firm", desk::json_of(good(desk.firm()))) == "done");
    CHECK(held_against("people", desk::json_of(good(desk.people()))) == "done");
    CHECK(held_against("history", desk::json_of(good(desk.history({})))) == "done");
    CHECK(held_against("verify", desk::json_of(good(desk.verify()))) == "done");
    CHECK(held_against("kind_list", desk::json_of(desk::kinds())) == "done");
}

TEST_CASE("what was kept and what was held are of one shape") {
    auto& test = busy_job();
    CHECK(held_against("kept",
                       desk::json_of(good(test.record("air", {"air_c=13", "rh_pct=66", "surface_c=14"})))) ==
          "done");
    CHECK(held_against("kept", desk::json_of(good(test.open().move(
                                   DeskTest::by("IP", "08:50"), {"begin", "field/1", "", {}})))) == "done");
}

TEST_CASE("an answer that lacks a member its schema wants is noticed") {
    CHECK(held_against("verify", R"({"ok":true,"entries":1,"faults":[],"digest":"x"})") != "done");
}

TEST_CASE("every row about a job names the job") {
    const auto rows = good(entry::read_json(desk::json_of(good(busy_job().open().stages({})))));
    REQUIRE(!rows.list()->empty());
    for (const auto& row : *rows.list()) CHECK(row.text_of("job") == "A-07");
}
