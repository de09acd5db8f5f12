// Goes through the whole catalogue, so that a field that is added to the data is tested without a line being added here.
#include "tests/support/catalogue.h"

#include "base/text.h"

#include <set>

using namespace undersheet;
using namespace undersheet::method;

namespace {

bool is_number(const Field& field) {
    return field.type == FieldType::number || field.type == FieldType::whole;
}

// One step of what can be typed: the last decimal that people give, a whole one for counts.
Decimal step_of(const Field& field) {
    return *Decimal::scaled(1, field.type == FieldType::whole ? 0 : std::max(field.places, 1));
}

Decimal plus(const Decimal& a, const Decimal& b, int sign) {
    return *Decimal::rounded(a.value() + sign * b.value(), 3);
}

// Only this one field is typed; whatever else the kind wants stands already.
Result<Checked> check_one(const Kind& kind, const Field& field, const entry::Value& value) {
    Input input = typed({{field.name, value}});
    for (const Field& other : kind.fields) {
        if (other.required && other.name != field.name) input.before.set(other.name, "given");
    }
    for (const char* place : {"AB", "A", "AB+1.20", "2.10,0.80", "R1"}) {
        const auto form = entry::parse_place(place)->form;
        if (kind.place_required && std::count(kind.places.begin(), kind.places.end(), form) > 0)
            input.place = place;
    }
    return check(the_catalogue(), kind, input);
}

// Calls `use(kind, field)` for every field that `wanted` picks; the count guards against a loop over nothing.
template <class Wanted, class Use>
int each_field(Wanted wanted, Use use) {
    int count = 0;
    for (const Kind& kind : the_catalogue().kinds()) {
        for (const Field& field : kind.fields) {
            if (!wanted(field)) continue;
            INFO(kind.name << " " << field.name);
            use(kind, field);
            ++count;
        }
    }
    return count;
}

void refused(const Result<Checked>& checked, const Kind& kind, const Field& field, Code code) {
    REQUIRE_FALSE(checked.ok());
    CHECK(checked.fault().code == code);
    CHECK(checked.fault().where == kind.name + " " + field.name);
}

} // namespace

TEST_CASE("every number is taken at its least and most, and refused one step beyond") {
    const int count = each_field(is_number, [](const Kind& kind, const Field& field) {
        for (const auto& [end, away] : {std::pair{field.range->least, -1}, std::pair{field.range->most, 1}}) {
            const auto at_end = check_one(kind, field, end.text());
            REQUIRE(at_end.ok());
            REQUIRE(at_end->data.find(field.name) != nullptr);
            CHECK(*at_end->data.find(field.name)->number() == end);
            const Decimal inside = plus(end, step_of(field), -away);
            const auto just_inside = check_one(kind, field, inside.text());
            REQUIRE(just_inside.ok());
            CHECK(*just_inside->data.find(field.name)->number() == inside);
            refused(check_one(kind, field, plus(end, step_of(field), away).text()), kind, field,
                    Code::field_out_of_range);
        }
    });
    CHECK(count > 120);
}

TEST_CASE("every number is asked about one step beyond what is usual, and not at its ends") {
    const auto has_usual = [](const Field& field) { return field.usual.has_value(); };
    const int count = each_field(has_usual, [](const Kind& kind, const Field& field) {
        const auto asked = [&](const Decimal& value) {
            return check_one(kind, field, value.text())->questions.size();
        };
        CHECK(asked(field.usual->least) == 0);
        CHECK(asked(field.usual->most) == 0);
        const Decimal over = plus(field.usual->most, step_of(field), 1);
        if (!(field.range->most < over)) CHECK(asked(over) == 1);
        const Decimal under = plus(field.usual->least, step_of(field), -1);
        if (!(under < field.range->least)) CHECK(asked(under) == 1);
    });
    CHECK(count > 100);
}

TEST_CASE("every number refuses words, two commas, several values and a unit of another quantity") {
    const int count = each_field(is_number, [](const Kind& kind, const Field& field) {
        refused(check_one(kind, field, "plenty"), kind, field, Code::number_malformed);
        refused(check_one(kind, field, "1,2,3"), kind, field, Code::number_malformed);
        refused(check_one(kind, field, "1,000.5"), kind, field, Code::number_malformed);
        refused(check_one(kind, field, entry::List{1, 2}), kind, field, Code::json_shape);
        refused(check_one(kind, field, field.unit == "kg" ? "1 mm" : "1 kg"), kind, field,
                Code::unit_unknown);
    });
    CHECK(count > 120);
}

TEST_CASE("every whole number refuses half a one") {
    const auto is_whole = [](const Field& field) { return field.type == FieldType::whole; };
    const int count = each_field(is_whole, [](const Kind& kind, const Field& field) {
        refused(check_one(kind, field, field.range->least.text() + ".5"), kind, field,
                Code::number_malformed);
    });
    CHECK(count > 20);
}

TEST_CASE("every choice takes each of its words and no other") {
    const auto is_choice = [](const Field& field) { return field.type == FieldType::choice; };
    const int count = each_field(is_choice, [](const Kind& kind, const Field& field) {
        for (const std::string& word : field.choices) {
            const auto checked = check_one(kind, field, replaced(word, "_", " "));
            REQUIRE(checked.ok());
            CHECK(checked->data.text_of(field.name) == word);
        }
        refused(check_one(kind, field, "purple"), kind, field, Code::choice_unknown);
    });
    CHECK(count > 50);
}

TEST_CASE("every yes or no takes both and nothing else") {
    const auto is_yes_no = [](const Field& field) { return field.type == FieldType::yes_no; };
    const int count = each_field(is_yes_no, [](const Kind& kind, const Field& field) {
        CHECK(check_one(kind, field, "y")->data.text_of(field.name) == "yes");
        CHECK(check_one(kind, field, false)->data.text_of(field.name) == "no");
        refused(check_one(kind, field, "perhaps"), kind, field, Code::choice_unknown);
    });
    CHECK(count > 80);
}

TEST_CASE("every field that may be skipped takes not looked, every other one does not") {
    const auto skips = [](const Field& field) { return field.may_skip; };
    const int taken = each_field(skips, [](const Kind& kind, const Field& field) {
        CHECK(check_one(kind, field, "not looked")->data.text_of(field.name) == "not_looked");
        CHECK(check_one(kind, field, "can't reach")->data.text_of(field.name) == "cant_reach");
    });
    CHECK(taken > 250);
    const auto keeps = [](const Field& field) { return !field.may_skip && !field.personal; };
    const int refusals = each_field(keeps, [](const Kind& kind, const Field& field) {
        if (field.type == FieldType::list || field.type == FieldType::people) return; // a list of such names
        CHECK_FALSE(check_one(kind, field, "not looked").ok());
    });
    CHECK(refusals > 50);
}

TEST_CASE("every reading's numbers, choices, times and days may be skipped, unless they name or key it") {
    for (const Kind& kind : the_catalogue().kinds()) {
        if (kind.group != Group::reading) continue;
        for (const Field& field : kind.fields) {
            const bool is_key = std::count(kind.key_fields.begin(), kind.key_fields.end(), field.name) > 0;
            const bool names =
                field.required && field.type == FieldType::choice; // what it is, without which it is nothing
            INFO(kind.name << " " << field.name);
            if (is_number(field)) CHECK(field.may_skip);
            if (field.type == FieldType::yes_no) CHECK((field.may_skip || is_key));
            if (field.type == FieldType::choice) CHECK((field.may_skip || names));
            if (field.type == FieldType::time || field.type == FieldType::date)
                CHECK((field.may_skip || is_key));
        }
    }
}

TEST_CASE("every personal field stays out of data and raw") {
    const auto is_personal = [](const Field& field) { return field.personal; };
    const int count = each_field(is_personal, [](const Kind& kind, const Field& field) {
        const auto checked = check_one(kind, field, "  Mrs Harbin of Saltmarsh ");
        REQUIRE(checked.ok());
        CHECK(checked->personal.at(field.name) == "Mrs Harbin of Saltmarsh");
        CHECK(checked->data.find(field.name) == nullptr);
        CHECK(checked->raw.find(field.name) == nullptr);
    });
    CHECK(count > 10);
}
