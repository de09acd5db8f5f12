#include "method/typed.h"

#include "base/text.h"
#include "entry/json.h"
#include "tests/support/catalogue.h"

using namespace undersheet;
using namespace undersheet::method;

namespace {

const Setting kNoon{*entry::parse_time("2026-06-11T12:00:00+01:00"), some_person};

Field of(FieldType type) {
    Field field;
    field.name = "something";
    field.type = type;
    field.prompt = "something";
    return field;
}

std::string kept(FieldType type, const entry::Value& typed) {
    const auto read = read_typed(of(type), typed, kNoon);
    return read ? entry::write_strict(read->value) + (read->raw.empty() ? "" : " raw " + read->raw)
                : one_line(read.fault());
}

} // namespace

TEST_CASE("each type is kept in its own form, with what was typed beside it where it differs") {
    CHECK(kept(FieldType::number, "12,50") == "12.5 raw 12,50");
    CHECK(kept(FieldType::whole, "12") == "12");
    CHECK(kept(FieldType::text, "  as it is ") == "\"as it is\"");
    CHECK(kept(FieldType::yes_no, "Y") == "\"yes\" raw Y");
    CHECK(kept(FieldType::yes_no, true) == "\"yes\"");
    CHECK(kept(FieldType::date, "Nov 2026") == "\"2026-11-30\" raw Nov 2026");
    CHECK(kept(FieldType::date, "2026-11") == "\"2026-11-30\" raw 2026-11");
    CHECK(kept(FieldType::date, "2027-01-31") == "\"2027-01-31\"");
    CHECK(kept(FieldType::time, "11:20") == "\"2026-06-11T11:20:00+01:00\" raw 11:20");
    CHECK(kept(FieldType::place, "AB+0.3") == "\"AB+0.30\" raw AB+0.3");
    CHECK(kept(FieldType::hash, std::string(64, 'a')) == "\"" + std::string(64, 'a') + "\"");
    CHECK(kept(FieldType::text, 7) == "\"7\"");
}

TEST_CASE("a name is a label and not a corner, an edge or a point") {
    CHECK(kept(FieldType::label, "R1") == "\"R1\"");
    CHECK(kept(FieldType::label, "2") == "\"2\"");
    CHECK(kept(FieldType::label, "AB").starts_with("'AB' is two corners, like AB; type up to 24 letters"));
    CHECK(kept(FieldType::label, "1,2").starts_with("'1,2' is a point on the deck"));
    CHECK(kept(FieldType::label, "the big one").starts_with("'the big one' cannot be a name"));
    CHECK(kept(FieldType::label, std::string(24, 'x')) == "\"" + std::string(24, 'x') + "\"");
    CHECK(kept(FieldType::label, std::string(25, 'x')).find("cannot be a name") != std::string::npos);
}

TEST_CASE("a person is kept by id and leaves no raw") {
    CHECK(kept(FieldType::person, "Tamsin Orrell") == "\"p-Tamsin Orrell\"");
    CHECK(read_typed(of(FieldType::person), "Nobody", kNoon).fault().code == Code::person_unknown);
    CHECK(read_typed(of(FieldType::person), "Tamsin Orrell", {}).fault().code == Code::person_unknown);
}

TEST_CASE("a time later than the entry itself is asked about") {
    CHECK(read_typed(of(FieldType::time), "12:00", kNoon)->questions.empty());
    const auto later = read_typed(of(FieldType::time), "12:01", kNoon);
    REQUIRE(later.ok());
    CHECK(later->questions ==
          std::vector<std::string>{"12:01 is later than the entry itself; was it the day before?"});
}

TEST_CASE("an object is only for fields, a list only for what takes several") {
    const auto object = *entry::read_json(R"({"reading_pct":11.9})");
    CHECK(kept(FieldType::fields, object) == R"({"reading_pct":11.9})");
    CHECK(read_typed(of(FieldType::fields), "x", kNoon).fault().code == Code::json_shape);
    CHECK(read_typed(of(FieldType::text), object, kNoon).fault().code == Code::json_shape);
    CHECK(kept(FieldType::list, "R1, R2") == R"(["R1","R2"] raw R1, R2)");
    CHECK(kept(FieldType::people, "Tamsin Orrell , Jonah Vickery") ==
          R"(["p-Tamsin Orrell","p-Jonah Vickery"])");
}

TEST_CASE("not looked is kept as that word only where the field may be skipped") {
    Field field = of(FieldType::number);
    CHECK(read_typed(field, "not looked", kNoon).fault().code == Code::choice_unknown);
    field.may_skip = true;
    CHECK(*read_typed(field, "not looked", kNoon)->value.text() == "not_looked");
    Field personal = of(FieldType::text);
    personal.personal = true;
    CHECK(*read_typed(personal, "Not Looked", kNoon)->value.text() == "Not Looked"); // a name may be anything
}
