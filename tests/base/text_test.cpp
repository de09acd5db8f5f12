#include "base/text.h"

#include <catch2/catch.hpp>

using namespace undersheet;
using namespace std::string_literals;

TEST_CASE("well-formed text is text, in any script") {
    CHECK(is_utf8(""));
    CHECK(is_utf8("Kehle 12 mm"));
    CHECK(is_utf8("\xC2\x80"));         // U+0080, the first of two bytes
    CHECK(is_utf8("\xDF\xBF"));         // U+07FF, the last
    CHECK(is_utf8("\xE0\xA0\x80"));     // U+0800, the first of three
    CHECK(is_utf8("\xED\x9F\xBF"));     // U+D7FF, the last before the surrogates
    CHECK(is_utf8("\xEE\x80\x80"));     // U+E000, the first after them
    CHECK(is_utf8("\xEF\xBF\xBF"));     // U+FFFF
    CHECK(is_utf8("\xF0\x90\x80\x80")); // U+10000, the first of four
    CHECK(is_utf8("\xF4\x8F\xBF\xBF")); // U+10FFFF, the last there is
    CHECK(is_utf8("a\0b"s));
}

TEST_CASE("bytes that are not well formed are not text") {
    CHECK_FALSE(is_utf8("\x80")); // a follower alone
    CHECK_FALSE(is_utf8("\xC3")); // cut short
    CHECK_FALSE(is_utf8("\xE2\x82"));
    CHECK_FALSE(is_utf8("\xF0\x9F\x98"));
    CHECK_FALSE(is_utf8("\xC3("));    // a lead without its follower
    CHECK_FALSE(is_utf8("\xC0\x80")); // longer than need be
    CHECK_FALSE(is_utf8("\xC1\xBF"));
    CHECK_FALSE(is_utf8("\xE0\x9F\xBF"));
    CHECK_FALSE(is_utf8("\xF0\x8F\xBF\xBF"));
    CHECK_FALSE(is_utf8("\xED\xA0\x80"));     // U+D800, a surrogate
    CHECK_FALSE(is_utf8("\xED\xBF\xBF"));     // U+DFFF
    CHECK_FALSE(is_utf8("\xF4\x90\x80\x80")); // past U+10FFFF
    CHECK_FALSE(is_utf8("\xF5\x80\x80\x80"));
    CHECK_FALSE(is_utf8("\xFF"));
    CHECK_FALSE(is_utf8("good then \xE9")); // Latin-1
}

TEST_CASE("control characters are found, a new line is not one") {
    CHECK_FALSE(has_control_characters("two\nlines"));
    CHECK(has_control_characters("a\tb"));
    CHECK(has_control_characters("a\rb"));
    CHECK(has_control_characters("a\0b"s));
    CHECK(has_control_characters("\x1F"));
    CHECK_FALSE(has_control_characters(" "));
    CHECK(has_control_characters("\x7F"));
    CHECK_FALSE(has_control_characters("é€"));
}

TEST_CASE("a character that nobody sees is found with its place, and what scripts are joined with only where "
          "asked") {
    const auto at = [](std::string_view text, Joiners joiners) {
        const auto found = find_unseen(text, joiners);
        return found ? code_name(found->code) + " at " + std::to_string(found->at) : "none";
    };
    CHECK(at("", Joiners::unseen) == "none");
    CHECK(at("Ödön Šťastný, محمد, 王小明, two\nlines, 🙂", Joiners::unseen) == "none");
    CHECK(at("é\u202Ea", Joiners::allowed) == "U+202E at 2");
    CHECK(at("I\u200BP", Joiners::allowed) == "U+200B at 2");
    CHECK(at("a\xC2\x9B", Joiners::allowed) == "U+009B at 2");
    CHECK(at("\U000E0041", Joiners::allowed) == "U+E0041 at 1");
    CHECK(at("می\u200Cخواهم", Joiners::allowed) == "none");
    CHECK(at("می\u200Cخواهم", Joiners::unseen) == "U+200C at 3");
    CHECK(at("\U0001F468\u200D\U0001F527\uFE0F", Joiners::allowed) == "none");
    CHECK(at("\U0001F527\uFE0F", Joiners::unseen) == "U+FE0F at 2");
    CHECK(at("葛\U000E0100", Joiners::allowed) == "none");
}

TEST_CASE("the first and last of each run of characters that nobody sees are among them, their neighbours "
          "are not") {
    // Unicode 15.0, DerivedCoreProperties.txt, Default_Ignorable_Code_Point
    for (const char32_t unseen : std::initializer_list<char32_t>{
             0xAD,   0x34F,   0x61C,   0x115F,  0x1160,  0x17B4,  0x17B5,  0x180E,  0x200B,
             0x200F, 0x202A,  0x202E,  0x2060,  0x206F,  0x3164,  0xFEFF,  0xFFA0,  0xFFF0,
             0xFFF8, 0x1BCA0, 0x1BCA3, 0x1D173, 0x1D17A, 0xE0000, 0xE00FF, 0xE01F0, 0xE0FFF}) {
        INFO(code_name(unseen));
        CHECK(is_unseen(unseen));
        CHECK_FALSE(is_joiner(unseen));
    }
    for (const char32_t seen :
         std::initializer_list<char32_t>{0xAC, 0xAE, 0x34E, 0x350, 0x200A, 0x2010, 0x2027, 0x202F, 0x205F,
                                         0x2070, 0xFFFC, 0x1D17B, 0xE1000}) {
        INFO(code_name(seen));
        CHECK_FALSE(is_unseen(seen));
        CHECK_FALSE(is_joiner(seen));
    }
}

TEST_CASE("what nobody sees can be left out of a text, and the rest stays byte for byte") {
    CHECK(without_unseen("\u200EIMG-2026\u200B.jpg") == "IMG-2026.jpg");
    CHECK(without_unseen("می\u200Cخواهم") == "می\u200Cخواهم");
    CHECK(without_unseen("a\xFFz") == "a\xFFz");
    CHECK(code_name(0) == "U+0000");
}

TEST_CASE("characters are counted, not bytes") {
    CHECK(character_count("") == 0);
    CHECK(character_count("abc") == 3);
    CHECK(character_count("é€\xF0\x9F\x98\x80") == 3);
}

TEST_CASE("blanks are trimmed from the ends only") {
    CHECK(trimmed("  a b \t\r\n") == "a b");
    CHECK(trimmed("a") == "a");
    CHECK(trimmed("") == "");
    CHECK(trimmed(" \t ") == "");
}

TEST_CASE("only ASCII letters change case, so a name in any script survives") {
    CHECK(lower_ascii("AZaz[@09") == "azaz[@09");
    CHECK(lower_ascii("ÉCOLE Ж") == "École Ж");
}

TEST_CASE("text is cut at every mark, and joined again to what it was") {
    CHECK(split("a||b", '|') == std::vector<std::string>{"a", "", "b"});
    CHECK(split("", '|') == std::vector<std::string>{""});
    CHECK(split("|", '|') == std::vector<std::string>{"", ""});
    CHECK(split("a|", '|') == std::vector<std::string>{"a", ""});
    for (const auto* text : {"", "|", "a|b|c", "||", "a||"}) CHECK(joined(split(text, '|'), "|") == text);
    CHECK(joined({}, ", ").empty());
    CHECK(joined({"a"}, ", ") == "a");
    CHECK(joined({"a", "b"}, ", ") == "a, b");
}

TEST_CASE("every occurrence is replaced once, and nothing is replaced by nothing") {
    CHECK(replaced("a.b.c", ".", "-") == "a-b-c");
    CHECK(replaced("aaa", "a", "aa") == "aaaaaa");
    CHECK(replaced("aaaa", "aa", "a") == "aa");
    CHECK(replaced("abc", "x", "y") == "abc");
    CHECK(replaced("abc", "b", "") == "ac");
    CHECK(replaced("abc", "", "x") == "abc"); // once ran for ever
    CHECK(replaced("", "", "x").empty());
}

TEST_CASE("bytes are written in hexadecimal and read back") {
    const std::vector<std::uint8_t> bytes{0x00, 0x0F, 0xA5, 0xFF};
    CHECK(hex(bytes) == "000fa5ff");
    CHECK(unhex("000fa5ff") == bytes);
    CHECK(hex({}).empty());
    CHECK(unhex("") == std::vector<std::uint8_t>{});
}

TEST_CASE("what is not lower-case hexadecimal of even length is not read") {
    CHECK_FALSE(unhex("0"));
    CHECK_FALSE(unhex("0f1"));
    CHECK_FALSE(unhex("0F"));
    CHECK_FALSE(unhex("0g"));
    CHECK_FALSE(unhex("g0"));
    CHECK_FALSE(unhex("0 "));
    CHECK_FALSE(unhex("0/"));
    CHECK_FALSE(unhex("0:"));
    CHECK_FALSE(unhex("0`"));
}

TEST_CASE("slips are letters changed, dropped or added") {
    CHECK(slips_between("", "") == 0);
    CHECK(slips_between("deck", "deck") == 0);
    CHECK(slips_between("", "deck") == 4);
    CHECK(slips_between("deck", "") == 4);
    CHECK(slips_between("deck", "dock") == 1);
    CHECK(slips_between("deck", "decks") == 1);
    CHECK(slips_between("deck", "eck") == 1);
    CHECK(slips_between("deck", "dcek") == 2);
    CHECK(slips_between("kitten", "sitting") == 3); // the usual example
    CHECK(slips_between("sitting", "kitten") == 3);
}

TEST_CASE("the nearest known word is offered up to two slips away and no further") {
    const std::vector<std::string> known{"moisture", "heads", "joint", "air"};
    CHECK(nearest_word("moistuer", known) == "moisture");
    CHECK(nearest_word("haeds", known) == "heads");
    CHECK(nearest_word("joints", known) == "joint");
    CHECK(nearest_word("heads", known) == "heads");
    CHECK(nearest_word("mxistxxe", known).empty()); // three slips
    CHECK(nearest_word("wind", known).empty());
    CHECK(nearest_word("x", {"ab"}).empty()); // two slips, but nothing of the word is left
    CHECK(nearest_word("air", {}).empty());
}
