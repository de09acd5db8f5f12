#include "picture/camera.h"

#include "picture/exif.h"

#include <catch2/catch.hpp>

using namespace undersheet::picture;

namespace {

std::string segment(char marker, const std::string& body) {
    const std::size_t length = body.size() + 2;
    return std::string("\xFF") + marker + static_cast<char>(length >> 8U) +
           static_cast<char>(length & 0xFFU) + body;
}

const std::string kPoints("\x12\xFF\x00\x34\xFF\xD0\x56", 7); // a stuffed zero, a restart
const std::string kFrame = segment('\xC0', std::string("\x08\0\x1e\0\x28\x01\x01\x11\0", 9));
const std::string kApp0 = segment('\xE0', std::string("JFIF\0", 5));
const std::string kTransform = segment('\xEE', "Adobe");
const std::string kProfile = segment('\xE2', std::string("ICC_PROFILE\0\1\1", 14));

std::string jpeg(const std::string& before, const std::string& behind = {}) {
    return "\xFF\xD8" + before + kFrame + segment('\xDA', "\1\1") + kPoints + "\xFF\xD9" + behind;
}

std::string chunk(const std::string& name, const std::string& body) {
    return std::string(3, '\0') + static_cast<char>(body.size()) + name + body + "....";
}

std::string png(const std::string& more) {
    return "\x89PNG\r\n\x1A\n" + chunk("IHDR", "head") + more + chunk("IDAT", "points") + chunk("IEND", "");
}

bool holds(const std::string& bytes, const std::string& piece) {
    return bytes.find(piece) != std::string::npos;
}

} // namespace

TEST_CASE("of a JPEG the picture, its colours and how it was held go on, and nothing else of the camera") {
    const std::string secret = "51.5N 0.1W";
    const std::string taken =
        jpeg(kApp0 + segment('\xE1', exif_turned(6) + secret) + segment('\xE1', "http://xmp " + secret) +
                 segment('\xE2', "MPF " + secret) + kProfile + segment('\xED', secret) + kTransform +
                 segment('\xFE', "comment " + secret),
             "hung behind: " + secret);
    const std::string given = for_others(taken);
    CHECK_FALSE(holds(given, secret));
    CHECK_FALSE(holds(given, "comment"));
    for (const std::string& piece : {kApp0, kProfile, kTransform, kFrame, kPoints, exif_turned(6)})
        CHECK(holds(given, piece));
    CHECK(given.ends_with("\xFF\xD9"));
    CHECK(for_others(given) == given); // handed on once more it is the same
}

TEST_CASE("a JPEG that says nothing of how it was held goes on as it is") {
    CHECK(for_others(jpeg(kApp0)) == jpeg(kApp0));
    CHECK(for_others(jpeg("")) == jpeg(""));
}

TEST_CASE("a JPEG of several scans keeps them all") {
    const std::string two = "\xFF\xD8" + kFrame + segment('\xDA', "\1\1") + kPoints +
                            segment('\xC4', "table") + segment('\xDA', "\1\2") + kPoints + "\xFF\xD9";
    CHECK(for_others(two) == two);
}

TEST_CASE("a stuffed zero between segments is no segment, which would be read as points once a segment "
          "before it is gone") {
    const std::string stray = segment('\0', "stray");
    const std::string scan = segment('\xDA', "\1\1") + kPoints;
    CHECK(for_others("\xFF\xD8" + kFrame + scan + segment('\xE1', "camera") + stray + "\xFF\xD9").empty());
}

TEST_CASE("a JPEG with nothing to draw is not handed on") {
    CHECK(for_others("\xFF\xD8" + kApp0 + kFrame + "\xFF\xD9").empty());
    CHECK(for_others("\xFF\xD8" + segment('\xE1', exif_turned(6)) + "\xFF\xD9").empty());
}

TEST_CASE("what cannot be walked to its end is not handed on") {
    const std::string whole = jpeg(kApp0 + segment('\xE1', exif_turned(3)));
    for (std::size_t length = 0; length < whole.size(); ++length) {
        INFO(length);
        CHECK(for_others(whole.substr(0, length)).empty());
    }
    const std::string drawn = png("");
    for (std::size_t length = 0; length < drawn.size(); ++length)
        CHECK(for_others(drawn.substr(0, length)).empty());
    CHECK(for_others("no picture").empty());
}

TEST_CASE("of a PNG what is drawn goes on, and no text and no place") {
    const std::string colours = chunk("PLTE", "abc") + chunk("tRNS", "\1") + chunk("gAMA", "1234");
    const std::string given =
        for_others(png(colours + chunk("eXIf", "51.5N") + chunk("tEXt", "who") + chunk("tIME", "when")));
    CHECK(given == png(colours));
}

TEST_CASE("the camera's own time is read out of a JPEG, and of nothing else") {
    CHECK(camera_time(jpeg(segment('\xE1', exif_turned(3)))) == "");
    CHECK(camera_time(png("")) == "");
    CHECK(camera_time("") == "");
}
