#include "paper/document.h"

#include <catch2/catch.hpp>

using namespace undersheet::paper;

TEST_CASE("a line of text is its pieces in order, whatever their weight") {
    CHECK(Text("a ").add("b", Weight::strong).add(" c", Weight::struck).words() == "a b c");
    CHECK(strong("b").runs.front().weight == Weight::strong);
    CHECK(struck("c").runs.front().weight == Weight::struck);
}

TEST_CASE("an empty line of text has no pieces") {
    CHECK(Text().is_empty());
    CHECK(Text("").is_empty());
    CHECK(Text().add("", Weight::strong).is_empty());
    CHECK_FALSE(Text(" ").is_empty());
}

TEST_CASE("blocks stand in the order they were added, headings on the second level unless said") {
    Document paper;
    paper.heading("one").paragraph("two").heading("three", 3).add(PageBreak{});
    REQUIRE(paper.blocks.size() == 4);
    CHECK(std::get<Heading>(paper.blocks[0]).level == 2);
    CHECK(std::get<Paragraph>(paper.blocks[1]).text.words() == "two");
    CHECK(std::get<Heading>(paper.blocks[2]).level == 3);
    CHECK(std::holds_alternative<PageBreak>(paper.blocks[3]));
}
