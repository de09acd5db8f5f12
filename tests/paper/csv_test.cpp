#include "paper/csv.h"

#include <catch2/catch.hpp>

using namespace undersheet;
using namespace undersheet::paper;

namespace {

std::string csv(const std::vector<Text>& cells, const std::string& header = "what") {
    Document document;
    document.head.name = "Order";
    Table table{"Lines", {{header}, {"price", Column::figures}}};
    table.rows.push_back({cells, {}});
    document.add(table);
    return render_csv(document, Words::english());
}

std::string after_mark(const std::string& text) { return text.substr(3); }

} // namespace

TEST_CASE("a table is written with its name first, a mark for UTF-8 before it, lines ended by CR LF") {
    const std::string text = csv({"plate", "33.60"});
    CHECK(text.substr(0, 3) == "\xEF\xBB\xBF");
    CHECK(after_mark(text) == "Lines,what,price\r\nLines,plate,33.60\r\n");
}

TEST_CASE("commas, quotes, semicolons and line breaks stand in quotes") {
    CHECK(after_mark(csv({"a \"b\", c", "1"})) == "Lines,what,price\r\nLines,\"a \"\"b\"\", c\",1\r\n");
    CHECK(after_mark(csv({"a;b", "1"})) == "Lines,what,price\r\nLines,\"a;b\",1\r\n");
    CHECK(after_mark(csv({"a\nb", "1"})) == "Lines,what,price\r\nLines,\"a\nb\",1\r\n");
}

TEST_CASE("what a spreadsheet would take for a formula begins with an apostrophe, a number does not") {
    for (const std::string bad : {"=1+1", "+cmd", "@sum", "-2+3", "=HYPERLINK(1)", "-"}) {
        const std::string text = after_mark(csv({bad, "1"}));
        CAPTURE(text);
        CHECK(text.find("'" + bad) != std::string::npos);
    }
    for (const std::string number : {"-1.5", "+3", "12,5", "-0.25"})
        CHECK(after_mark(csv({number, "1"})).find('\'') == std::string::npos);
    CHECK(after_mark(csv({"x", "1"}, "=1+1")).find("'=1+1") != std::string::npos);
}

TEST_CASE("every line has as many fields, and lines beneath a row follow it") {
    Document document;
    document.head.name = "Order";
    document.add(Facts{{{"kerb", "5 m"}}});
    Table table{"Lines", {{"a"}, {"b"}, {"c"}}};
    table.rows.push_back({{"1", "2", "3"}, {"see below"}});
    document.add(table);
    CHECK(after_mark(render_csv(document, Words::english())) ==
          "Order,kerb,5 m,\r\nLines,a,b,c\r\nLines,1,2,3\r\nLines,see below,,\r\n");
}

TEST_CASE("each point of a list is a line under its heading, and a formula in it is none") {
    Document document;
    document.head.name = "Completion record";
    document.heading("Where this roof differs");
    document.add(Listing{{"a fall of 1:85.6", "=1+1"}});
    document.heading("Guarantee");
    document.add(Facts{{{"Runs", "10 years"}}});
    CHECK(after_mark(render_csv(document, Words::english())) ==
          "Where this roof differs,a fall of 1:85.6,\r\nWhere this roof differs,'=1+1,\r\nGuarantee,Runs,10 "
          "years\r\n");
}
