#include "method/meant.h"

#include <catch2/catch.hpp>

using namespace undersheet::method;

TEST_CASE("what was meant is the only word that begins so, or one within two slips") {
    const std::vector<std::string> known{"reading_pct", "board_c", "board_d"};
    CHECK(probably_meant("reading", known) == "reading_pct");
    CHECK(probably_meant("READING_PCT", known) == "reading_pct");
    CHECK(probably_meant("raeding_pct", known) == "reading_pct");
    CHECK(probably_meant("boord_c", known) == "board_c");
    CHECK(probably_meant("board", known) ==
          "board_c"); // two begin so; both are two slips away, the first is named
    CHECK(probably_meant("wind", known) == "");
    CHECK(probably_meant("", known) == "");
}

TEST_CASE("what was typed is shown on one line, whole characters, cut when it is long") {
    CHECK(shown("a\nb\x07") == "a?b?");
    CHECK(shown("\xFF") == "(bytes that are no text)");
    CHECK(shown(std::string(60, 'x')) == std::string(60, 'x'));
    CHECK(shown(std::string(61, 'x')) == std::string(60, 'x') + "…");
    CHECK(shown(std::string(59, 'x') + "éé") == std::string(59, 'x') + "é…");
}
