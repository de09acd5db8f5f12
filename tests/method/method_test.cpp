#include "base/text.h"
#include "method/method.h"
#include "schema/embedded.h"

#include <catch2/catch.hpp>

using namespace undersheet;

namespace {

std::string with(std::string_view what, std::string_view by) {
    std::string text(schema::method_json());
    const auto at = text.find(what);
    REQUIRE(at != std::string::npos);
    return text.replace(at, what.size(), by);
}

Fault fault_of(const std::string& text) {
    const auto read = method::Method::read(text);
    REQUIRE_FALSE(read.ok());
    CHECK(read.fault().code == Code::method_malformed);
    return read.fault();
}

} // namespace

TEST_CASE("the default method holds together") { CHECK(method::Method::read(schema::method_json()).ok()); }

TEST_CASE("a method file that is no JSON is refused with its line") {
    CHECK(one_line(fault_of("{\n \"format\": }")).find("line 2") != std::string::npos);
}

TEST_CASE("a method file that breaks its schema is refused with line and place") {
    const auto fault = fault_of(with("\"mark\": \"G\"", "\"mark\": \"X\""));
    INFO(one_line(fault));
    CHECK(one_line(fault).find("line 6") != std::string::npos);
    CHECK(one_line(fault).find("mark") != std::string::npos);
}

TEST_CASE("a rule that uses a limit nobody gave is refused by name and line") {
    const auto line = one_line(fault_of(with("\"limit\": \"gap_wide_mm\"", "\"limit\": \"gap_huge_mm\"")));
    CHECK(line.find("there is no limit 'gap_huge_mm'") != std::string::npos);
    CHECK(line.find("line ") != std::string::npos);
}

TEST_CASE("a hold on a stage that is not there, and one that is misspelt, are refused") {
    CHECK(one_line(fault_of(with("\"deck:sign\"", "\"dock:sign\""))).find("there is no stage 'dock'") !=
          std::string::npos);
    CHECK(one_line(fault_of(with("\"deck:sign\"", "\"deck:seal\""))).find("'deck:seal' is no hold") !=
          std::string::npos);
    CHECK(one_line(fault_of(with("\"wall:start:part\"", "\"wall:start:near\""))).find("'near' is no reach") !=
          std::string::npos);
}

TEST_CASE("an order of work that names an unknown stage is refused") {
    CHECK(one_line(fault_of(with("\"needs\": \"lay-out\"", "\"needs\": \"laying\"")))
              .find("there is no stage 'laying'") != std::string::npos);
}

TEST_CASE("a limit that stands twice is refused") {
    CHECK(one_line(fault_of(with("\"key\": \"gap_most_mm\"", "\"key\": \"gap_least_mm\"")))
              .find("'gap_least_mm' stands twice") != std::string::npos);
}

TEST_CASE("a rule that neither looks at a field nor is worked out is refused") {
    CHECK(one_line(fault_of(with("\"worked\": \"alone\", ", ""))).find("rule 'alone' says neither") !=
          std::string::npos);
}

TEST_CASE("a firm's own limit changes the method's hash and nothing else") {
    const auto own = method::Method::read(with("\"key\": \"moisture_stop_pct\", \"value\": 20",
                                               "\"key\": \"moisture_stop_pct\", \"value\": 19"));
    const auto usual = method::Method::read(schema::method_json());
    REQUIRE(own.ok());
    CHECK(own->limit("moisture_stop_pct") == 19);
    CHECK(own->hash() != usual->hash());
    CHECK(own->rules().size() == usual->rules().size());
}

TEST_CASE("asking for a limit that is not there is our own mistake") {
    const auto method = method::Method::read(schema::method_json());
    CHECK_THROWS_AS(method->limit("no_such_limit"), std::logic_error);
}
