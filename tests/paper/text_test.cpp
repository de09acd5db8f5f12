#include "paper/text.h"

#include "base/text.h"
#include "paper/clean.h"
#include "tests/paper/approved.h"
#include "tests/paper/sample.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace undersheet;
using namespace undersheet::paper;

namespace {

std::string text_of(const Document& document) { return render_text(document, Words::english()); }

std::size_t widest_line(const std::string& text) {
    std::size_t widest = 0;
    for (const std::string& line : split(text, '\n')) widest = std::max(widest, columns(line));
    return widest;
}

std::string without_breaks(std::string text) {
    text.erase(std::remove_if(text.begin(), text.end(), [](char c) { return c == '\n' || c == ' '; }),
               text.end());
    return text;
}

} // namespace

TEST_CASE("a usual paper in plain text is the approved one") {
    CHECK(test::differs_from_approved("usual.txt", text_of(test::usual_paper())) == "");
}

TEST_CASE("no line of plain text is wider than 80 columns, whatever was typed") {
    for (const std::string& name :
         {std::string("x"), std::string(200, 'W'), std::string("two words ") + std::string(90, 'y'),
          std::string("王小明王小明王小明王小明王小明王小明王小明王小明王小明王小明王小明王小明王小明王小明王"
                      "小明")}) {
        CAPTURE(name);
        CHECK(widest_line(text_of(test::hostile_paper(name))) <= 80);
    }
}

TEST_CASE("a name of 200 characters is broken over lines, not cut off") {
    Document paper;
    const std::string name(200, 'W');
    paper.paragraph(name);
    CHECK(without_breaks(text_of(paper)).find(name) != std::string::npos);
}

TEST_CASE("an escape sequence in a name does not reach the terminal") {
    CHECK(text_of(test::hostile_paper("\x1b[2J")).find('\x1b') == std::string::npos);
}
