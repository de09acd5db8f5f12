#include "job/rules.h"
#include "tests/support/site.h"

using namespace undersheet;

TEST_CASE(
    "every computation that a rule of the default method names is there, and none is there for nothing") {
    std::set<std::string> named;
    for (const auto& rule : test::default_method().rules()) {
        if (!rule.worked.empty()) named.insert(rule.worked);
    }
    std::set<std::string> known;
    for (const auto& [name, worked] : job::worked_table()) known.insert(name);
    CHECK(named == known);
}

TEST_CASE("every field that a rule of the default method looks at stands in the catalogue") {
    for (const auto& rule : test::default_method().rules()) {
        const auto* kind = test::default_kinds().find(rule.kind);
        if (rule.kind == "punch") continue; // hand-added items are no kind of reading
        INFO(rule.name << " of " << rule.kind);
        REQUIRE(kind != nullptr);
        for (const auto& field : rule.fields) {
            INFO(field);
            CHECK(kind->field(field) != nullptr);
        }
        for (const auto& condition : rule.only_if) {
            INFO(condition.field);
            CHECK(kind->field(condition.field) != nullptr);
        }
    }
}

TEST_CASE("every step of the default method asks for fields and records of the catalogue") {
    const auto* tick = test::default_kinds().find("tick");
    for (const auto& stage : test::default_method().stages()) {
        for (const auto& step : stage.steps) {
            INFO(stage.name << " " << step.name);
            for (const auto& field : step.fields) CHECK(tick->field(field) != nullptr);
            if (step.by_record.empty()) continue;
            const auto* kind = test::default_kinds().find(step.by_record);
            REQUIRE(kind != nullptr);
            CHECK((step.by_field.empty() || kind->field(step.by_field) != nullptr));
        }
    }
}
