#include "paper/head.h"

#include <catch2/catch.hpp>

using namespace undersheet::paper;

TEST_CASE("the head of a paper names job, roof, customer, address, number, issue and date in that order") {
    const Head head{.job = "HF-12",
                    .roof = "dormer",
                    .customer = "Ada",
                    .customer_address = "Hull",
                    .number = "3",
                    .issue = "1",
                    .date = "3 March 2026"};
    std::vector<std::string> values;
    for (const Fact& fact : head_facts(head, Words::english())) values.push_back(fact.value.words());
    CHECK(values == std::vector<std::string>{"HF-12", "dormer", "Ada", "Hull", "3", "1", "3 March 2026"});
}

TEST_CASE("what is not known is left out of the head") {
    const auto facts = head_facts({.job = "HF-12"}, Words::english());
    REQUIRE(facts.size() == 1);
    CHECK(facts[0].name == "Job");
}
