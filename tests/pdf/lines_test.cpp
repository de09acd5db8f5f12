#include "pdf/lines.h"

#include <catch2/catch.hpp>

using namespace undersheet;
using namespace undersheet::pdf;

namespace {

std::vector<std::string> texts(const std::vector<Run>& runs, double width_pt) {
    std::vector<std::string> all;
    for (const Line& line : broken(runs, 10, width_pt)) {
        CHECK(line.width_pt <= width_pt + 0.01);
        all.emplace_back();
        for (const Run& run : line.runs) all.back() += run.text;
    }
    return all;
}

using Lines = std::vector<std::string>;

} // namespace

TEST_CASE("a line is filled with as many words as it holds") {
    const double two_pt = font(Face::regular).width_pt("read it", 10);
    CHECK(texts({{"read it again"}}, two_pt) == Lines{"read it", "again"});
    CHECK(texts({{"read it again"}}, two_pt - 0.1) == Lines{"read", "it", "again"});
}

TEST_CASE("typed line breaks stay, blanks at the ends and several together do not") {
    CHECK(texts({{"  a  b \n c"}}, 100) == Lines{"a b", "c"});
    CHECK(texts({{"a\n\nb"}}, 100) == Lines{"a", "", "b"});
    CHECK(texts({{""}}, 100).empty());
}

TEST_CASE("a word too long for a line is broken, and no letter of it is lost") {
    const std::string name(200, 'W');
    std::string all;
    for (const std::string& line : texts({{"by " + name}}, 60)) all += line;
    CHECK(all == "by" + name);
    // Even where a single letter is wider than the line.
    CHECK(broken({{"WWW"}}, 10, 1).size() == 3);
}

TEST_CASE("a word may change its weight within") {
    const auto lines = broken({{"kept"}, {"-out", Face::bold}, {" now"}}, 10, 1000);
    REQUIRE(lines.size() == 1);
    REQUIRE(lines[0].runs.size() == 3);
    CHECK(lines[0].runs[1].face == Face::bold);
    CHECK(lines[0].runs[2].text == " now");
    const double word_pt = font(Face::regular).width_pt("kept", 10) + font(Face::bold).width_pt("-out", 10);
    CHECK(texts({{"kept"}, {"-out", Face::bold}, {" now"}}, word_pt) == Lines{"kept-out", "now"});
}

TEST_CASE("what a text needs is its longest line and its longest word") {
    const Font& regular = font(Face::regular);
    const Widths widths = widths_of({{"a longer line\nshort"}}, 10);
    CHECK(widths.whole_pt == Approx(regular.width_pt("a longer line", 10)));
    CHECK(widths.word_pt == Approx(regular.width_pt("longer", 10)));
}
