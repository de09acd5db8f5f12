#include "method/lists.h"

#include "base/text.h"
#include "entry/json.h"
#include "tests/support/catalogue.h"

using namespace undersheet;
using namespace undersheet::method;

namespace {

Field of(FieldType type, int shortest = 0) {
    Field field;
    field.name = "several";
    field.type = type;
    field.shortest = shortest;
    return field;
}

std::string read(const Field& field, const entry::Value& typed) {
    const auto list = typed_list(field, typed, some_person);
    return list ? entry::write_strict(entry::Value(list->items)) : one_line(list.fault());
}

entry::Value json(std::string_view text) { return *entry::read_json(text); }

} // namespace

TEST_CASE("names are typed with commas between, or come as a list") {
    const Field field = of(FieldType::list);
    CHECK(read(field, "R1, R2") == R"(["R1","R2"])");
    CHECK(read(field, "R1;R2,") == R"(["R1","R2"])");
    CHECK(read(field, json(R"(["R1","R2"])")) == R"(["R1","R2"])");
    CHECK(read(field, json("7")) == R"(["7"])");
    CHECK(read(field, json(R"({"a":1})")) == "takes a list; type names, commas between");
    CHECK(read(field, json("[true]")) == "holds something that is neither text nor number");
}

TEST_CASE("places are read each and written as places are") {
    const Field field = of(FieldType::places);
    CHECK(read(field, "AB, BC") == R"(["AB","BC"])");
    CHECK(read(field, json(R"(["AB+1.2","2.1,0.8"])")) == R"(["AB+1.20","2.10,0.80"])");
    CHECK(typed_list(field, "AB,A!", some_person).fault().code == Code::place_malformed);
}

TEST_CASE("points have blanks between and are points only") {
    const Field field = of(FieldType::points, 3);
    CHECK(read(field, "0,0 3.2,0  3.2,2.1") == R"(["0,0","3.20,0","3.20,2.10"])");
    CHECK(read(field, json("[[0,0],[3.2,0],[3.2,2.1]]")) == R"(["0,0","3.20,0","3.20,2.10"])");
    CHECK(read(field, "0,0 3.2,0") == "has 2 pieces; it needs 3");
    CHECK(read(field, "0,0 3.2,0 AB") ==
          "'AB' is two corners, like AB; type a point on the deck, like 2.10,0.80");
}

TEST_CASE("people are looked up one by one") {
    const Field field = of(FieldType::people);
    CHECK(read(field, "Tamsin Orrell, Jonah Vickery") == R"(["p-Tamsin Orrell","p-Jonah Vickery"])");
    CHECK(typed_list(field, "Tamsin Orrell, Nobody", some_person).fault().code == Code::person_unknown);
    CHECK(typed_list(field, "Tamsin Orrell", {}).fault().code == Code::person_unknown);
}

TEST_CASE("names of entries are 64 hexadecimal digits each") {
    const Field field = of(FieldType::hashes);
    const std::string name(64, 'a');
    CHECK(read(field, name + "," + std::string(64, 'B')) ==
          "[\"" + name + "\",\"" + std::string(64, 'b') + "\"]");
    CHECK_FALSE(typed_list(field, name.substr(1), some_person).ok());
    CHECK_FALSE(typed_list(field, name + "a", some_person).ok());
}

TEST_CASE("a list holds 1 to 256 pieces, each of them text") {
    const Field field = of(FieldType::list);
    CHECK(read(field, "") == "has 0 pieces; it needs 1");
    CHECK(read(field, " , ") == "has 0 pieces; it needs 1");
    const auto many = [](std::size_t count) { return joined(std::vector<std::string>(count, "R1"), ","); };
    CHECK(typed_list(field, many(256), some_person).ok());
    CHECK(typed_list(field, many(257), some_person).fault().code == Code::field_out_of_range);
    CHECK(typed_list(field, "R1,a\x01", some_person).fault().code == Code::text_not_utf8);
}

TEST_CASE("what was typed is given back where it reads differently") {
    CHECK(typed_list(of(FieldType::list), "R1,R2", some_person)->raw.empty());
    CHECK(typed_list(of(FieldType::list), "R1, R2", some_person)->raw == "R1, R2");
    CHECK(typed_list(of(FieldType::points), "0,0 3.20,0", some_person)->raw.empty());
    CHECK(typed_list(of(FieldType::list), json(R"(["R1"])"), some_person)->raw.empty());
}
