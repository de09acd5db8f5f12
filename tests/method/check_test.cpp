#include "tests/support/catalogue.h"

#include "base/text.h"
#include "entry/json.h"

using namespace undersheet;
using namespace undersheet::method;

namespace {

Fault fault_of(std::string_view kind, std::vector<std::pair<std::string, entry::Value>> fields,
               std::string place = {}) {
    const auto checked = check_typed(kind, std::move(fields), std::move(place));
    REQUIRE_FALSE(checked.ok());
    return checked.fault();
}

} // namespace

TEST_CASE("a moisture point keeps numbers as decimals and words as text, and nothing twice") {
    const auto checked = check_typed(
        "moisture", {{"label", "M1"}, {"reading_pct", "12.1"}, {"board_c", "15.5"}, {"setting", "group 2"}},
        "0.4,0.3");
    REQUIRE(checked.ok());
    CHECK(entry::write_strict(checked->data) ==
          R"({"board_c":15.5,"label":"M1","reading_pct":12.1,"setting":"group 2"})");
    CHECK(entry::write_strict(checked->raw) == "{}");
    CHECK(checked->place == "0.40,0.30");
    CHECK(checked->personal.empty());
    CHECK(checked->questions.empty());
}

TEST_CASE("a value outside its range is one line with value, range and unit") {
    CHECK(one_line(fault_of("moisture", {{"reading_pct", "75"}, {"setting", "2"}})) ==
          "moisture reading_pct: 75 % is outside 0 to 60");
    CHECK(one_line(fault_of("chase", {{"height_mm", "1 m"}}, "CD+0.10")) ==
          "chase height_mm: 1000 mm (typed 1 m) is outside 0 to 600");
}

TEST_CASE("what was typed is kept as raw only where it reads differently") {
    const auto checked = check_typed("chase", {{"height_mm", "15 cm"}, {"on", "finished"}}, "CD+0.10");
    REQUIRE(checked.ok());
    CHECK(entry::write_strict(checked->data) == R"({"height_mm":150,"on":"finished"})");
    CHECK(entry::write_strict(checked->raw) == R"({"height_mm":"15 cm"})");
}

TEST_CASE("values of JSON are read like typed ones") {
    const auto json = entry::read_json(R"({"z_mm":-12.5,"closing":true,"run":2})");
    REQUIRE(json.ok());
    std::vector<std::pair<std::string, entry::Value>> fields;
    for (const auto& member : *json->map()) fields.emplace_back(member.key, member.value);
    const auto checked = check_typed("level", fields, "AB+1.20");
    REQUIRE(checked.ok());
    CHECK(entry::write_strict(checked->data) == R"({"closing":"yes","run":"2","z_mm":-12.5})");
    CHECK(entry::write_strict(checked->raw) == "{}");
}

TEST_CASE("a reading that was not taken says so in any spelling") {
    for (const std::string spelling : {"not looked", "not_looked", "Not-Looked"}) {
        const auto checked = check_typed("moisture", {{"reading_pct", spelling}, {"setting", "2"}});
        REQUIRE(checked.ok());
        CHECK(checked->data.text_of("reading_pct") == "not_looked");
    }
    for (const std::string spelling : {"can't reach", "cant_reach", "can’t reach", "cannot reach"}) {
        const auto checked = check_typed("site", {{"asbestos", spelling}});
        REQUIRE(checked.ok());
        CHECK(checked->data.text_of("asbestos") == "cant_reach");
        if (spelling != "cant_reach") CHECK(checked->raw.text_of("asbestos") == spelling);
    }
}

TEST_CASE("not looked names nothing: it is refused for labels, batches and in events") {
    CHECK(fault_of("opening", {{"label", "not looked"}}).code == Code::choice_unknown);
    CHECK(fault_of("tin", {{"product", "primer"}, {"batch", "not looked"}}).where == "tin batch");
    CHECK(fault_of("pause", {{"why", "not looked"}}).code == Code::choice_unknown);
}

TEST_CASE("an unknown field is named with the nearest, the list, and the kind that has it") {
    CHECK(one_line(fault_of("chase", {{"hieght_mm", "150"}}, "CD")) ==
          "chase: has no field 'hieght_mm'; did you mean height_mm? there are height_mm, on, note");
    CHECK(fault_of("chase", {{"height", "150"}}, "CD").clears.starts_with("did you mean height_mm?"));
    CHECK(fault_of("chase", {{"air_c", "15"}}, "CD").detail == "has no field 'air_c', but air has");
    CHECK(fault_of("chase", {{"air_c", "15"}}, "CD").code == Code::field_unknown);
}

TEST_CASE("a field that a kind cannot do without is named with what to type") {
    const Fault fault = fault_of("moisture", {{"reading_pct", "12"}});
    CHECK(fault.code == Code::field_missing);
    CHECK(one_line(fault) ==
          "moisture setting: is missing; type setting= (the wood group the meter is set to)");
}

TEST_CASE("every required field of the catalogue is missed when it is left out") {
    int count = 0;
    for (const Kind& kind : the_catalogue().kinds()) {
        for (const Field& field : kind.fields) {
            if (!field.required || !field.fallback.empty()) continue;
            Input input = typed({});
            for (const Field& other : kind.fields) {
                if (other.required && &other != &field) input.before.set(other.name, "given");
            }
            input.place = kind.places.empty() ? "" : "A";
            const auto checked = check(the_catalogue(), kind, input);
            INFO(kind.name << " " << field.name);
            REQUIRE_FALSE(checked.ok());
            CHECK(checked.fault().code == Code::field_missing);
            if (!input.place.empty() || kind.group != Group::reading)
                CHECK(checked.fault().where == kind.name + " " + field.name);
            ++count;
        }
    }
    CHECK(count > 50);
}

TEST_CASE("a field falls back on a value, on another field, or on the day of the entry") {
    const auto level = check_typed("level", {{"z_mm", "5"}}, "A");
    REQUIRE(level.ok());
    CHECK(level->data.text_of("run") == "1");
    const auto tin = check_typed("tin", {{"product", "primer"}, {"batch", "PR-8"}});
    REQUIRE(tin.ok());
    CHECK(tin->data.text_of("label") == "PR-8");
    const auto day = check_typed("day", {{"worked", "yes"}});
    REQUIRE(day.ok());
    CHECK(day->data.text_of("date") == "2026-06-11");
    CHECK(entry::write_strict(day->raw) == "{}");
}

TEST_CASE("personal values stand apart and never in data or raw") {
    const auto checked =
        check_typed("site", {{"customer", "Mrs  Harbin"}, {"phone", "00 1"}, {"height_m", "2,6"}});
    REQUIRE(checked.ok());
    CHECK(checked->personal ==
          std::map<std::string, std::string>{{"customer", "Mrs  Harbin"}, {"phone", "00 1"}});
    CHECK(entry::write_strict(checked->data) == R"({"height_m":2.6})");
    CHECK(entry::write_strict(checked->raw) == R"({"height_m":"2,6"})");
}

TEST_CASE("people are kept by their ids, and their names leave no trace in raw") {
    const auto checked = check_typed("day", {{"people", "Tamsin Orrell, Jonah Vickery"}});
    REQUIRE(checked.ok());
    CHECK(entry::write_strict(checked->data) ==
          R"({"date":"2026-06-11","people":["p-Tamsin Orrell","p-Jonah Vickery"]})");
    CHECK(entry::write_strict(checked->raw) == "{}");
    const Fault fault = fault_of("day", {{"people", "Tamsin Orrell, Nobody"}});
    CHECK(fault.code == Code::person_unknown);
    CHECK(fault.where == "day people");
}

TEST_CASE("a place of the wrong form is refused and the right ones are named") {
    const Fault fault = fault_of("chase", {{"height_mm", "150"}}, "A");
    CHECK(fault.code == Code::place_wrong_type);
    CHECK(one_line(fault) ==
          "chase place: 'A' is a corner, like A; give a point along an edge, like AB+1.20; or two "
          "corners, like AB");
    CHECK(fault_of("chase", {{"height_mm", "150"}}).code == Code::place_wrong_type);
    CHECK(fault_of("day", {{"worked", "yes"}}, "AB").clears == "it is recorded without a place");
    CHECK(fault_of("chase", {{"height_mm", "150"}}, "AB+").code == Code::place_malformed);
}

TEST_CASE("a field typed twice is refused, and so is a reading that says nothing") {
    CHECK(fault_of("chase", {{"height_mm", "150"}, {"height_mm", "160"}}, "CD").code == Code::json_shape);
    CHECK(fault_of("structure", {}).code == Code::field_missing);
    CHECK(check_typed("take_back", {{"why", "builder cannot come"}}).ok());
}

TEST_CASE("a correction need not type again what stands already, and rules see both") {
    Input input = typed({{"below", "49"}});
    input.before = *entry::read_json(R"({"total":420,"checked":50,"below":48,"flush":1,"proud":1})");
    const auto wrong = check(the_catalogue(), the_kind("heads"), input);
    REQUIRE_FALSE(wrong.ok());
    CHECK(wrong.fault().detail == "below 49 + flush 1 + proud 1 makes 51, not 50");
    input.typed.push_back({"proud", "0"});
    const auto right = check(the_catalogue(), the_kind("heads"), input);
    REQUIRE(right.ok());
    CHECK(entry::write_strict(right->data) == R"({"below":49,"proud":0})");
}

TEST_CASE("text is UTF-8 without control characters, at most 4000 long") {
    const auto text = [](std::string value) {
        return check_typed("patch", {{"why", entry::Value(std::move(value))}});
    };
    CHECK(text(std::string(4000, 'x')).ok());
    CHECK(text(std::string(4001, 'x')).fault().code == Code::field_out_of_range);
    CHECK(text(std::string("a\0b", 3)).fault().code == Code::text_not_utf8);
    CHECK(text("bell \a").fault().code == Code::text_not_utf8);
    CHECK(text("\xC3\x28").fault().code == Code::text_not_utf8);
    CHECK(text("two\nlines").ok());
    CHECK(check_typed("board", {{"removed_how", "two\nlines"}}).fault().code == Code::text_not_utf8);
    CHECK(text("").fault().code == Code::field_missing);
}
