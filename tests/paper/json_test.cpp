#include "paper/json.h"

#include "entry/json.h"
#include "schema/embedded.h"
#include "tests/paper/approved.h"
#include "tests/paper/sample.h"

#include <catch2/catch.hpp>

#include <set>

using namespace undersheet;
using namespace undersheet::paper;
using entry::Value;

namespace {

std::set<std::string> keys(const Value& object) {
    std::set<std::string> found;
    for (const entry::Member& member : *object.map()) found.insert(member.key);
    return found;
}

std::set<std::string> words(const entry::List& list) {
    std::set<std::string> found;
    for (const Value& word : list) found.insert(*word.text());
    return found;
}

// The alternative of the schema for blocks of that type.
const Value* shape_of(const Value& schema, const std::string& type) {
    for (const Value& shape : schema.find("$defs")->find("block")->list_of("oneOf")) {
        const Value& of_type = *shape.find("properties")->find("type");
        if (of_type.text_of("const") == type || words(of_type.list_of("enum")).count(type) == 1)
            return &shape;
    }
    return nullptr;
}

void check_members(const Value& object, const Value& shape) {
    CHECK(keys(object) == words(shape.list_of("required")));
    CHECK(keys(object) == keys(*shape.find("properties")));
}

} // namespace

TEST_CASE("a usual paper in JSON is the approved one") {
    CHECK(test::differs_from_approved("usual.json", render_json(test::usual_paper())) == "");
}

TEST_CASE("a paper in JSON reads back to the same value, names of any sort in it") {
    for (const std::string name : {"<script>\"\\", "محمد", "王小明", "two\nlines"}) {
        const auto value = document_value(test::hostile_paper(name));
        const auto again = entry::read_json(render_json(test::hostile_paper(name)));
        REQUIRE(again.ok());
        CHECK(*again == value);
        CHECK(again->find("head")->text_of("customer") == name);
    }
}

TEST_CASE("a line without weights is a string, one with weights a list of pieces") {
    Document paper;
    paper.paragraph("plain").paragraph(Text("a").add("b", Weight::struck));
    const auto value = document_value(paper);
    const auto& blocks = value.list_of("blocks");
    CHECK(blocks[0].text_of("text") == "plain");
    REQUIRE(blocks[1].list_of("text").size() == 2);
    CHECK(blocks[1].list_of("text")[1].text_of("weight") == "struck");
}

TEST_CASE("every sort of block says what it is, and no photograph's bytes are carried") {
    const auto value = document_value(test::usual_paper());
    std::set<std::string> types;
    for (const auto& block : value.list_of("blocks")) types.insert(block.text_of("type"));
    CHECK(types == std::set<std::string>{"facts", "heading", "item", "listing", "page_break", "paragraph",
                                         "photographs", "signature", "table", "verdict"});
    CHECK(render_json(test::usual_paper()).find("PNG") == std::string::npos);
}

TEST_CASE("head, foot and every block have just the members that schema/paper.schema.json gives them") {
    const auto schema = entry::read_json(schema::paper_schema_json());
    REQUIRE(schema.ok());
    const Value value = document_value(test::usual_paper());
    const Value& top = *schema->find("properties");
    check_members(value, *schema);
    check_members(*value.find("head"), *top.find("head"));
    check_members(*value.find("foot"), *top.find("foot"));
    for (const Value& block : value.list_of("blocks")) {
        CAPTURE(block.text_of("type"));
        const Value* shape = shape_of(*schema, block.text_of("type"));
        REQUIRE(shape != nullptr);
        check_members(block, *shape);
    }
}
