#include "method/words.h"

#include "base/text.h"

#include <catch2/catch.hpp>

using namespace undersheet;
using namespace undersheet::method;

namespace {

Field choice_of(std::vector<std::string> words) {
    Field field;
    field.type = FieldType::choice;
    field.meanings.resize(words.size());
    field.choices = std::move(words);
    return field;
}

} // namespace

TEST_CASE("a word of the list is taken with capitals, blanks or hyphens") {
    const Field field = choice_of({"none", "scaffold_rail", "other"});
    for (const std::string_view typed :
         {"scaffold_rail", "Scaffold rail", "SCAFFOLD-RAIL", " scaffold rail "}) {
        CHECK(*one_of_choices(field, typed) == "scaffold_rail");
    }
}

TEST_CASE("a word that is not of the list is refused with the nearest and all of them") {
    const Field field = choice_of({"osb3", "plywood3", "chipboard"});
    const auto refused = one_of_choices(field, "plywod");
    REQUIRE_FALSE(refused.ok());
    CHECK(refused.fault().code == Code::choice_unknown);
    CHECK(one_line(refused.fault()) ==
          "'plywod' is not one of its words; did you mean plywood3? there are osb3, plywood3, chipboard");
    CHECK(one_of_choices(field, "steel").fault().clears == "there are osb3, plywood3, chipboard");
    CHECK(one_of_choices(field, "").fault().code == Code::choice_unknown);
}

TEST_CASE("yes and no have three spellings each and no more") {
    for (const std::string_view typed : {"yes", "Y", "true", "YES"}) CHECK(*yes_or_no(typed) == "yes");
    for (const std::string_view typed : {"no", "N", "False"}) CHECK(*yes_or_no(typed) == "no");
    for (const std::string_view typed : {"maybe", "1", "0", "on", ""}) {
        CHECK(yes_or_no(typed).fault().code == Code::choice_unknown);
    }
}

TEST_CASE("not looked and cannot reach are known, and nothing else is taken for them") {
    CHECK(gap_word("Not looked") == "not_looked");
    CHECK(gap_word("not-looked") == "not_looked");
    CHECK(gap_word("can't reach") == "cant_reach");
    CHECK(gap_word("can not reach") == "cant_reach");
    CHECK(gap_word("looked") == "");
    CHECK(gap_word("not seen") == "");
    CHECK(gap_word("") == "");
}

TEST_CASE("a text shorter than its field wants is refused at one character less") {
    Field field;
    field.shortest = 10;
    CHECK(check_length(field, "ten signs.").ok());
    CHECK(check_length(field, "nine sign").fault().code == Code::reason_needed);
    CHECK(check_length(field, "zéhnzéhnzé").ok()); // ten characters, more bytes
    CHECK(check_length(field, "zéhnzéhnz").fault().clears == "type 10 characters or more");
}
