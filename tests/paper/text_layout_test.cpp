#include "paper/text_layout.h"

#include <catch2/catch.hpp>

using namespace undersheet::paper;

TEST_CASE("words are wrapped at blanks and typed line breaks are kept") {
    CHECK(wrapped("one two three", 7) == std::vector<std::string>{"one two", "three"});
    CHECK(wrapped("one\ntwo", 7) == std::vector<std::string>{"one", "two"});
    CHECK(wrapped("abcdefghij", 4) == std::vector<std::string>{"abcd", "efgh", "ij"});
    CHECK(wrapped("", 4) == std::vector<std::string>{""});
    CHECK(wrapped("王小明", 4) == std::vector<std::string>{"王小", "明"});
}

TEST_CASE("a table lines up its columns, figures to the right") {
    const Table table{"", {{"Point"}, {"%", Column::figures}}, {{{"P1", "9.5"}}, {{"P10", "12.1"}}}};
    CHECK(table_lines(table) == "Point     %\n-----  ----\nP1      9.5\nP10    12.1\n");
}

TEST_CASE("a table that is too wide wraps its words and keeps its figures whole") {
    const Table table{"", {{"n", Column::figures}, {"What"}}, {{{"100", "a long tale of a wet board"}}}};
    CHECK(table_lines(table, 20) ==
          "  n  What\n---  ---------------\n100  a long tale of\n     a wet board\n");
}

TEST_CASE("no word of a table is cut while another column has blanks to give") {
    const Table table{"", {{"What"}, {"When"}}, {{{"Kontaktklebstoff", "on a day in May, about noon"}}}};
    CHECK(table_lines(table, 30) == "What              When\n"
                                    "----------------  ------------\n"
                                    "Kontaktklebstoff  on a day in\n"
                                    "                  May, about\n"
                                    "                  noon\n");
}

TEST_CASE("a table that cannot be narrowed enough is written row by row") {
    const Table table{"", {{"Point"}, {"Figure", Column::figures}}, {{{"P1", "123456789"}, {"seen twice"}}}};
    CHECK(table_lines(table, 15) == "Point: P1\n  Figure:\n  123456789\n    seen twice\n");
}

TEST_CASE("what is struck stands between two marks") {
    CHECK(plain_words(Text("a ").add("b", Weight::struck).add(" c")) == "a ~b~ c");
}
