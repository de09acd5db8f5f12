#include "pdf/write.h"

#include "pdf/content.h"
#include "pdf/objects.h"

#include <catch2/catch.hpp>

using namespace undersheet::pdf;

namespace {

File one_page() {
    File file{100, 200, {Page{{Letters{{10, 20}, "A\xC3\xA9"}}}}};
    file.title = "Roof \xF0\x9F\x8F\xA0";
    file.language = "en";
    return file;
}

std::string orders(const Mark& mark, const std::vector<Picture>& pictures = {}) {
    File file{100, 200, {Page{{mark}}}};
    file.pictures = pictures;
    UsedFonts used;
    return content_of(file.pages.front(), file, used);
}

std::size_t count(const std::string& text, const std::string& what) {
    std::size_t times = 0;
    for (std::size_t at = text.find(what); at != text.npos; at = text.find(what, at + 1)) ++times;
    return times;
}

} // namespace

TEST_CASE("every object of a file lies where its table says") {
    const std::string bytes = write(one_page());
    const std::size_t table = bytes.rfind("\nxref\n") + 1;
    CHECK(bytes.ends_with("startxref\n" + std::to_string(table) + "\n%%EOF\n"));
    const std::size_t objects = std::stoul(bytes.substr(table + 7));
    REQUIRE(objects > 8);
    const std::size_t rows = bytes.find('\n', table + 5) + 1;
    for (std::size_t i = 1; i < objects; ++i) {
        const std::string row = bytes.substr(rows + i * 20, 20);
        CHECK(row.substr(10) == " 00000 n \n");
        CHECK(bytes.substr(std::stoul(row)).starts_with(std::to_string(i) + " 0 obj\n"));
    }
}

TEST_CASE("a file says its title in any script, its language, and no date") {
    const std::string bytes = write(one_page());
    CHECK(bytes.find("/Title<FEFF0052006F006F00660020D83CDFE0>") != std::string::npos);
    CHECK(bytes.find("/Lang(en)") != std::string::npos);
    CHECK(bytes.find("Date") == std::string::npos);
    File strange = one_page();
    strange.language = "en)/Evil(";
    CHECK(write(strange).find("/Lang") == std::string::npos);
    CHECK(bytes == write(one_page()));
}

TEST_CASE("only the weights that are used are embedded, each as a part of the font") {
    const std::string bytes = write(one_page());
    CHECK(count(bytes, "/FontFile2") == 1);
    CHECK(bytes.find("+Carlito/") != std::string::npos);
    File both = one_page();
    both.pages.front().marks.emplace_back(Letters{{10, 40}, "b", Face::bold});
    CHECK(count(write(both), "/FontFile2") == 2);
}

TEST_CASE("bookmarks are a tree that a reader can walk") {
    File file = one_page();
    file.pages.resize(2);
    file.bookmarks = {{1, "A", 0, 20}, {2, "A1", 0, 30}, {2, "A2", 1, 20}, {1, "B", 1, 50}};
    const std::string bytes = write(file);
    CHECK(count(bytes, "/Parent") == 4 + 2); // and those of the pages
    CHECK(count(bytes, "/Prev") == 2);
    CHECK(count(bytes, "/Next") == 2);
    CHECK(count(bytes, "/First") == 2);
    CHECK(bytes.find("/XYZ null 150 null") != std::string::npos); // 50 down is 150 up
}

TEST_CASE("marks count down from the top, a PDF up from the bottom") {
    CHECK(orders(Path{{{0, 0}, {50, 10}}, false, 0.5, false, 0.25}) == "0.5 w 0.25 G 0 200 m 50 190 l S\n");
    CHECK(orders(Path{{{0, 0}, {5, 0}, {5, 5}}, true, 0, false, 0, true, 0.9}) ==
          "0.9 g 0 200 m 5 200 l 5 195 l h f\n");
    CHECK(orders(Path{{{0, 0}, {5, 0}}, false, 1, true}).find(" 0 d ") != std::string::npos);
    CHECK(orders(Letters{{1, 2}, ""}).empty());
}

TEST_CASE("a picture lies upright in its place, however the camera was held") {
    // Where the corners of the square come to lie: (0,0) is the picture's bottom left. ISO 32000-1, 8.3.3.
    const auto matrix = [](int turned) {
        return orders(Shown{{10, 20}, 30, 40, 0},
                      {Picture{"", Filter::jpeg, Colours::rgb, "", 8, 3, 4, turned}});
    };
    CHECK(matrix(1) == "q 30 0 0 40 10 140 cm /P0 Do Q\n");
    CHECK(matrix(3) == "q -30 0 0 -40 40 180 cm /P0 Do Q\n");
    // The top left corner of what is stored, (0,1), is shown top right for 6 and bottom left for 8: Exif 2.32, 4.6.4.
    CHECK(matrix(6) == "q 0 -40 30 0 10 180 cm /P0 Do Q\n");
    CHECK(matrix(8) == "q 0 40 -30 0 40 140 cm /P0 Do Q\n");
}

TEST_CASE("numbers never have an exponent, and hexadecimal has four digits") {
    CHECK(number_text(0.00001) == "0");
    CHECK(number_text(12.5) == "12.5");
    CHECK(number_text(-0.004) == "0");
    CHECK(number_text(1e6) == "1000000");
    CHECK(hex4(0xE9) == "00E9");
}
