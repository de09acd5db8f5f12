#include "picture/exif.h"

#include <catch2/catch.hpp>

using namespace undersheet::picture;

namespace {

std::string number(std::size_t value, std::size_t bytes, bool low_first) {
    std::string out(bytes, '\0');
    for (std::size_t i = 0; i < bytes; ++i)
        out[low_first ? i : bytes - 1 - i] = static_cast<char>(value >> (8 * i) & 0xFFU);
    return out;
}

// One row of a directory: tag, type, count, and the value or where it lies.
std::string row(unsigned tag, unsigned type, std::size_t count, const std::string& value, bool low_first) {
    return number(tag, 2, low_first) + number(type, 2, low_first) + number(count, 4, low_first) + value;
}

// Held on its side, taken on 11 June, with a directory of where: laid out as Exif 2.32, 4.5 and 4.6, has it.
std::string block(bool low_first, const std::string& time = "2026:06:11 08:05:00") {
    const auto short_value = [&](std::size_t value) {
        return number(value, 2, low_first) + std::string(2, '\0');
    };
    std::string tiff = (low_first ? "II" : "MM") + number(42, 2, low_first) + number(8, 4, low_first);
    tiff += number(3, 2, low_first);
    tiff += row(0x0112, 3, 1, short_value(6), low_first);
    tiff += row(0x8769, 4, 1, number(50, 4, low_first), low_first);
    tiff += row(0x8825, 4, 1, number(200, 4, low_first), low_first);
    tiff += number(0, 4, low_first); // 50 bytes so far
    tiff += number(1, 2, low_first) + row(0x9003, 2, 20, number(68, 4, low_first), low_first);
    tiff += number(0, 4, low_first) + time;
    return std::string(kExifMark) + tiff;
}

} // namespace

TEST_CASE(
    "how the camera was held, when by its clock and that it says where are read with either byte first") {
    for (const bool low_first : {true, false}) {
        const Exif exif = read_exif(block(low_first));
        CHECK(exif.turned == 6);
        CHECK(exif.taken == "2026-06-11T08:05:00");
        CHECK(exif.has_position);
    }
}

TEST_CASE("a block that is cut off anywhere gives what could be read up to there") {
    const std::string whole = block(true);
    for (std::size_t length = 0; length < whole.size(); ++length) {
        const Exif exif = read_exif(whole.substr(0, length));
        CHECK((exif.turned == 1 || exif.turned == 6));
        CHECK(exif.taken == "");
    }
}

TEST_CASE("a time that is none is not taken for one") {
    for (const char* time :
         {"2026-06-11 08:05:00", "    :  :     :  :  ", "2026:06:11T08:05:00", "2O26:06:11 08:05:00"}) {
        INFO(time);
        CHECK(read_exif(block(false, time)).taken == "");
    }
}

TEST_CASE("a directory that claims more rows than there are bytes ends where the bytes end") {
    std::string lying = block(true);
    lying[kExifMark.size() + 8] = lying[kExifMark.size() + 9] = '\xFF';
    CHECK(read_exif(lying).turned == 6);
    lying.replace(kExifMark.size() + 4, 4, "\xFF\xFF\xFF\xFF");
    CHECK(read_exif(lying).turned == 1);
    CHECK(read_exif("Exif").turned == 1);
    CHECK(read_exif("").turned == 1);
}

TEST_CASE("the block that is written says how the camera was held and nothing else") {
    for (int turned = 1; turned <= 8; ++turned) {
        const Exif exif = read_exif(exif_turned(turned));
        CHECK(exif.turned == turned);
        CHECK(exif.taken == "");
        CHECK_FALSE(exif.has_position);
    }
}
