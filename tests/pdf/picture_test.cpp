#include "pdf/picture.h"

#include "pdf/deflate.h"

#include <catch2/catch.hpp>

using namespace undersheet::pdf;

namespace {

std::string u16(unsigned value) { return {static_cast<char>(value >> 8U), static_cast<char>(value & 255U)}; }
std::string u32(unsigned value) { return u16(value >> 16U) + u16(value & 0xFFFFU); }

std::string segment(char marker, const std::string& body) {
    return std::string("\xFF") + marker + u16(static_cast<unsigned>(body.size() + 2)) + body;
}

// A JPEG as far as a reader of its header looks.
std::string jpeg(const std::string& before, int components = 3) {
    const std::string frame = std::string("\x08") + u16(30) + u16(40) + static_cast<char>(components) +
                              std::string(static_cast<std::size_t>(components) * 3, '\1');
    return "\xFF\xD8" + before + segment('\xC0', frame) + segment('\xDA', "\1\1") + "picture\xFF\xD9";
}

std::string exif(bool low_first, char held) {
    const std::string row =
        low_first ? std::string("\x12\x01\x03\x00\x01\x00\x00\x00", 8) + held + std::string(3, '\0')
                  : std::string("\x01\x12\x00\x03\x00\x00\x00\x01\x00", 9) + held + std::string(2, '\0');
    const std::string head =
        low_first ? std::string("II*\0\x08\0\0\0\x01\0", 10) : std::string("MM\0*\0\0\0\x08\0\x01", 10);
    return segment('\xE1', std::string("Exif\0\0", 6) + head + row);
}

std::string chunk(const std::string& name, const std::string& body) {
    return u32(static_cast<unsigned>(body.size())) + name + body + "....";
}

// Two by two points, unless `size` says otherwise.
std::string png(char bits, char colours, const std::string& rows, char interlaced = 0,
                const std::string& more = {}, const std::string& size = u32(2) + u32(2)) {
    return "\x89PNG\r\n\x1A\n" + chunk("IHDR", size + bits + colours + std::string(2, '\0') + interlaced) +
           more + chunk("IDAT", deflated(rows)) + chunk("IEND", "");
}

const std::string kGrey("\0\x10\x20\0\x30\x40", 6);

} // namespace

TEST_CASE("a JPEG is kept as it came, with its size and its colours") {
    const std::string bytes = jpeg(segment('\xE0', "JFIF"));
    const auto picture = read_picture(bytes);
    REQUIRE(picture);
    CHECK(picture->bytes == bytes);
    CHECK(picture->filter == Filter::jpeg);
    CHECK(picture->width == 40);
    CHECK(picture->height == 30);
    CHECK(picture->colours == Colours::rgb);
    CHECK(read_picture(jpeg("", 1))->colours == Colours::grey);
    CHECK(read_picture(jpeg("", 4))->colours == Colours::cmyk_inverted);
    CHECK_FALSE(read_picture(jpeg("", 2)));
}

TEST_CASE("how the camera was held turns the picture") {
    for (const bool low_first : {true, false}) {
        CHECK(read_picture(jpeg(exif(low_first, 6)))->turned == 6);
        CHECK(read_picture(jpeg(exif(low_first, 6)))->shown_width() == 30);
        CHECK(read_picture(jpeg(exif(low_first, 3)))->turned == 3);
        CHECK(read_picture(jpeg(exif(low_first, 9)))->turned == 1);
        CHECK(read_picture(jpeg(exif(low_first, 0)))->turned == 1);
    }
    CHECK(read_picture(jpeg(segment('\xE1', std::string("Exif\0\0II*\0\xFF\xFF\xFF\xFF", 14))))->turned == 1);
    CHECK(read_picture(jpeg(segment('\xE1', "Exif")))->turned == 1);
}

TEST_CASE("a JPEG that is cut short or lies about its lengths is none") {
    const std::string whole = jpeg(exif(true, 6));
    for (std::size_t size = 0; size < whole.size(); ++size) CHECK_FALSE(read_picture(whole.substr(0, size)));
    CHECK_FALSE(
        read_picture(std::string("\xFF\xD8\xFF\xE0\0\0\xFF\xE0\0\0\xFF\xE0\0\0", 14))); // no length at all
    CHECK_FALSE(read_picture("\xFF\xD8\xFF\xDA" + u16(4) + "xx\xFF\xD9"));              // no frame
    CHECK_FALSE(read_picture("\xFF\xD8" + segment('\xC0', std::string("\x08\0\0\0\0\3", 6)))); // no size
}

TEST_CASE("a PNG without transparency is kept as it is stored") {
    const auto picture = read_picture(png(8, 0, kGrey));
    REQUIRE(picture);
    CHECK(picture->filter == Filter::png_rows);
    CHECK(picture->colours == Colours::grey);
    CHECK(picture->bytes == deflated(kGrey));
    CHECK(picture->width == 2);
    const std::string rgb(2 * 7, '\0');
    CHECK(read_picture(png(8, 2, rgb))->colours == Colours::rgb);
    const auto named = read_picture(png(1, 3, std::string(4, '\0'), 0, chunk("PLTE", "abcdef")));
    REQUIRE(named);
    CHECK(named->palette == "abcdef");
    CHECK(named->bits == 1);
    CHECK_FALSE(read_picture(png(1, 3, std::string(4, '\0')))); // no palette
}

TEST_CASE("what shines through a PNG is white paper, whatever filter its rows have") {
    // Grey and cover: 0 opaque, 0 see-through, then by each row filter what makes 100 and 100 half covered.
    const auto points = [](const std::string& second_row) {
        const auto picture = read_picture(png(8, 4, std::string("\0\0\xFF\0\0", 5) + second_row));
        REQUIRE(picture);
        CHECK(picture->filter == Filter::flate);
        return *inflated(picture->bytes, 4);
    };
    const std::string wanted("\x00\xFF\xB1\xB1", 4); // 100 * 128 + 255 * 127, over 255, is 177
    CHECK(points(std::string("\0\x64\x80\x64\x80", 5)) == wanted);
    CHECK(points(std::string("\1\x64\x80\0\0", 5)) == wanted);     // the byte to the left
    CHECK(points(std::string("\2\x64\x81\x64\x80", 5)) == wanted); // the byte above
    CHECK(points(std::string("\3\x64\x01\x32\x40", 5)) == wanted); // half of both
    CHECK(points(std::string("\4\x64\x81\0\x80", 5)) == wanted);   // the nearest of three
}

TEST_CASE("a PNG that is interlaced, cut short, damaged or far too large is none") {
    CHECK_FALSE(read_picture(png(8, 0, kGrey, 1)));
    CHECK_FALSE(read_picture(png(8, 0, kGrey.substr(1))));
    CHECK_FALSE(read_picture(png(8, 0, kGrey + "x")));
    CHECK_FALSE(read_picture(png(7, 0, kGrey)));
    CHECK_FALSE(read_picture(png(8, 5, kGrey)));
    CHECK_FALSE(read_picture(png(8, 0, kGrey, 0, "", u32(0) + u32(2))));
    CHECK_FALSE(read_picture(png(8, 6, kGrey, 0, "", u32(0x7FFFFFFF) + u32(0x7FFFFFFF))));
    CHECK_FALSE(read_picture(png(8, 6, kGrey, 0, "", u32(10000) + u32(10000)))); // not enough bytes for that
    const std::string whole = png(8, 0, kGrey);
    for (std::size_t size = 0; size < whole.size() - 4; ++size)
        CHECK_FALSE(read_picture(whole.substr(0, size)));
}

TEST_CASE("anything else is no picture") {
    for (const char* other : {"", "GIF89a", "<svg/>", "\xFF", "\x89PNG"}) CHECK_FALSE(read_picture(other));
}
