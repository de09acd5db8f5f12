#include "pdf/font.h"

#include "pdf/embedded_font.h"
#include "pdf/true_type.h"

#include <catch2/catch.hpp>

using namespace undersheet;
using namespace undersheet::pdf;

TEST_CASE("the typeface has what the trades of Europe write, in both weights") {
    for (const char32_t code : std::u32string(U"AZaz09 .,:;!?()/%&'\"+-=<>@#*_|~"
                                              U"°≥≤€£ß½¼¾×–—“”‘’²³·•…±−→□"
                                              U"àâäåæçèéêëìíîïñòóôöøùúûüýÿÀÄÉÖØÜŒœ"
                                              U"ąćęłńśźżčďěňřšťůžőűășțğışŵŷ"
                                              U"αβγΩЖдя"))
        for (const Face face : {Face::regular, Face::bold}) {
            CAPTURE(static_cast<unsigned>(code));
            CHECK(font(face).draws(code));
        }
}

TEST_CASE("both weights draw the same characters, and none that is written from right to left") {
    for (char32_t code = 0; code < 0x10000; ++code) {
        const bool draws = font(Face::regular).draws(code);
        if (draws != font(Face::bold).draws(code)) FAIL(static_cast<unsigned>(code));
        if (draws && code >= 0x590 && code <= 0x8FF) FAIL(static_cast<unsigned>(code));
    }
    CHECK_FALSE(font(Face::regular).draws(0x4E2D));
    CHECK_FALSE(font(Face::regular).draws(0x1F3E0));
}

TEST_CASE("figures are all as wide as one another, so that columns of them stand straight") {
    for (const Face face : {Face::regular, Face::bold})
        for (const char* figure : {"1", "4", "7", "9"})
            CHECK(font(face).width_pt(figure, 10) == Approx(font(face).width_pt("0", 10)));
    // The advance of "0" in the file's hmtx table is 1038 of 2048 units.
    CHECK(font(Face::regular).width_pt("0", 1000) == Approx(506));
}

TEST_CASE("a text is as wide as its letters together") {
    const Font& regular = font(Face::regular);
    CHECK(regular.width_pt("AV", 12) == Approx(regular.width_pt("A", 12) + regular.width_pt("V", 12)));
    CHECK(regular.width_pt("\xC3\xA9", 12) == Approx(regular.width_pt("e", 12)));
    CHECK(regular.width_pt("", 12) == 0);
}

TEST_CASE("a part of the font keeps the outlines it needs, those of accents too, and no others") {
    const Font& regular = font(Face::regular);
    const std::uint16_t plain = regular.glyph(U'e'), accented = regular.glyph(U'é'),
                        other = regular.glyph(U'Q');
    const std::string part = subset_of(regular, {{accented, U'é'}});
    CHECK(part.size() < regular.file().size() / 10);
    CHECK(outline_of(part, accented).substr(0, 10) == outline_of(regular.file(), accented).substr(0, 10));
    CHECK(outline_of(part, other).empty());
    const bool is_put_together = i16_at(outline_of(regular.file(), accented), 0) < 0;
    CHECK(outline_of(part, plain).empty() == !is_put_together);
    CHECK(part == subset_of(regular, {{accented, U'é'}}));
}

TEST_CASE("a font file that is cut short is not read past its end") {
    const std::string_view whole = font(Face::regular).file();
    for (const std::size_t size : {0U, 3U, 12U, 60U, 300U, 5000U, 20000U}) {
        const Font part(whole.substr(0, size), "Part");
        CHECK(part.width_pt("x", 10) >= 0);
        CHECK(outline_of(whole.substr(0, size), 40).size() < whole.size());
    }
}
