#include "paper/clean.h"

#include <catch2/catch.hpp>

using namespace undersheet::paper;

namespace {
const std::string kReplacement = "\xEF\xBF\xBD";
}

TEST_CASE("letters of every script and line breaks pass") {
    for (const std::string text :
         {"Ada Harrow", "Ödön Šťastný", "محمد", "王小明", "two\nlines", "€ ≥ °C", "🙂"})
        CHECK(clean(text) == text);
}

TEST_CASE("control characters become the replacement character") {
    CHECK(clean(std::string("a\0b", 3)) == "a" + kReplacement + "b");
    CHECK(clean("a\x1b[31m\r\t\x7f") ==
          "a" + kReplacement + "[31m" + kReplacement + kReplacement + kReplacement);
}

TEST_CASE("characters that turn the writing direction of what follows are taken out") {
    CHECK(clean("a\u202Eb\u202Ac") == "a" + kReplacement + "b" + kReplacement + "c");
    CHECK(clean("a\u2066b\u2067c") == "a" + kReplacement + "b" + kReplacement + "c");
}

TEST_CASE(
    "a character that nobody sees is made visible, and joiners, soft hyphens and direction marks stay") {
    for (const std::string unseen : {"\u200B", "\u2060", "\uFEFF", "\u2028", "\u0085", "\U000E0041"})
        CHECK(clean("I" + unseen + "P") == "I" + kReplacement + "P");
    for (const std::string kept :
         {"\u0646\u200C\u0645", "\U0001F468\u200D\U0001F527", "Bau\u00ADwerk", "a\u200Fb"})
        CHECK(clean(kept) == kept);
}

TEST_CASE("bytes that are no text become the replacement character, one for each") {
    CHECK(clean("\xC3") == kReplacement);
    CHECK(clean("a\xFF\xFEz") == "a" + kReplacement + kReplacement + "z");
    CHECK(clean("\xE2\x82") == kReplacement + kReplacement);
}

TEST_CASE("room in a terminal: two for Chinese and emoji, none for an accent on the letter before") {
    CHECK(columns("abc") == 3);
    CHECK(columns("é") == 1);
    CHECK(columns("e\u0301") == 1);
    CHECK(columns("王小明") == 6);
    CHECK(columns("🙂") == 2);
    CHECK(columns("محمد") == 4);
    CHECK(columns("") == 0);
}

TEST_CASE("right-to-left letters are noticed") {
    CHECK(has_right_to_left("Mr محمد"));
    CHECK(has_right_to_left("שלום"));
    CHECK_FALSE(has_right_to_left("Ödön 王小明"));
}
