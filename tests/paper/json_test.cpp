#include "paper/json.h"

#include "entry/json.h"
#include "tests/paper/approved.h"
#include "tests/paper/sample.h"

#include <catch2/catch.hpp>

#include <set>

using namespace undersheet;
using namespace undersheet::paper;

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
