#include "picture/smaller.h"

#include "picture/camera.h"
#include "picture/jpeg.h"

#include <catch2/catch.hpp>
#include <turbojpeg.h>

#include <array>
#include <cmath>
#include <cstdint>

using namespace undersheet::picture;

namespace {

constexpr int kWanted = 1000;

unsigned char* raw(std::string& bytes) { return reinterpret_cast<unsigned char*>(bytes.data()); }
const unsigned char* raw(const std::string& bytes) {
    return reinterpret_cast<const unsigned char*>(bytes.data());
}

// Three slow waves, one a colour: any part of it can be worked out without a picture.
int light(int colour, double across, double down) {
    const double turn = colour == 0 ? across * 7 : colour == 1 ? down * 5 : across * 3 + down * 4;
    return static_cast<int>(std::lround(127.5 + 100 * std::sin(turn)));
}

struct Drawn {
    int width = 0, height = 0;
    int format = TJPF_RGB;
    std::string points = {};

    [[nodiscard]] int colours() const { return tjPixelSize[format]; }
    [[nodiscard]] int at(int x, int y, int colour) const {
        const int index = (y * width + x) * colours() + colour;
        return static_cast<unsigned char>(points[static_cast<std::size_t>(index)]);
    }
};

Drawn waves(int width, int height, int format = TJPF_RGB) {
    Drawn drawn{width, height, format};
    for (int y = 0; y < height; ++y)
        for (int x = 0; x < width; ++x)
            for (int colour = 0; colour < drawn.colours(); ++colour)
                drawn.points += static_cast<char>(light(colour, (x + 0.5) / width, (y + 0.5) / height));
    return drawn;
}

std::string photograph(Drawn drawn, int sampling = TJSAMP_422, int flags = 0) {
    tjhandle codec = tjInitCompress();
    unsigned long size = tjBufSize(drawn.width, drawn.height, sampling);
    std::string jpeg(size, '\0');
    unsigned char* into = raw(jpeg);
    REQUIRE(tjCompress2(codec, raw(drawn.points), drawn.width, 0, drawn.height, drawn.format, &into, &size,
                        sampling, 95, flags | TJFLAG_NOREALLOC) == 0);
    tjDestroy(codec);
    jpeg.resize(size);
    return jpeg;
}

Drawn looked_at(const std::string& jpeg, int format = TJPF_RGB) {
    tjhandle codec = tjInitDecompress();
    Drawn drawn{0, 0, format};
    int sampling = 0, colours = 0;
    REQUIRE(tjDecompressHeader3(codec, raw(jpeg), jpeg.size(), &drawn.width, &drawn.height, &sampling,
                                &colours) == 0);
    drawn.points.resize(static_cast<std::size_t>(drawn.width * drawn.height * drawn.colours()));
    REQUIRE(tjDecompress2(codec, raw(jpeg), jpeg.size(), raw(drawn.points), drawn.width, 0, drawn.height,
                          format, 0) == 0);
    tjDestroy(codec);
    return drawn;
}

const std::string& large() {
    static const std::string jpeg = photograph(waves(2000, 1500));
    return jpeg;
}

int longer_side_of(const std::string& jpeg) {
    const auto frame = frame_among(segments_of(jpeg));
    return frame ? std::max(frame->width, frame->height) : 0;
}

// The picture's bytes with these segments behind its first.
std::string with(const std::string& jpeg, const std::string& more) {
    const auto first = segments_of(jpeg).front().whole.size() + 2;
    return jpeg.substr(0, first) + more + jpeg.substr(first);
}

// Plain grey, its coefficients one a scan, as nobody would write it but anybody may: up to 65 scans.
std::string of_scans(int count) {
    const auto table = [](char which) {
        return segment_of(static_cast<Marker>(0xC4),
                          std::string(1, which) + '\1' + std::string(15 + 1, '\0'));
    };
    const auto scan = [](int coefficient, char bits) { // 250 blocks, a bit for each
        const auto at = static_cast<char>(coefficient);
        return segment_of(kScan, std::string("\1\1\0", 3) + at + at + bits) + std::string(32, '\0');
    };
    const std::string head = std::string("\x08\0\x08\x07\xD0\1\1\x11\0", 9); // 2000 by 8
    std::string jpeg = "\xFF\xD8" + segment_of(kApp0, std::string("JFIF\0\1\1\0\0\1\0\1\0\0", 14)) +
                       segment_of(static_cast<Marker>(0xDB), '\0' + std::string(64, '\1')) +
                       segment_of(static_cast<Marker>(0xC2), head) + table('\0') + table('\x10');
    jpeg += scan(0, count > 64 ? '\1' : '\0');
    for (int i = 1; i < std::min(count, 64); ++i) jpeg += scan(i, '\0');
    if (count > 64) jpeg += scan(0, '\x10');
    return jpeg + segment_of(kComment, std::string(4000, ' ')) + "\xFF\xD9"; // long enough to become shorter
}

} // namespace

TEST_CASE("a photograph of more points than wanted shows the same with about as many as wanted") {
    const std::string made = smaller(large(), kWanted);
    CHECK(made.size() < large().size() / 2);
    const Drawn seen = looked_at(made);
    CHECK(seen.width == 1000);
    CHECK(seen.height == 750);
    int furthest = 0;
    for (int y = 0; y < seen.height; y += 7)
        for (int x = 0; x < seen.width; x += 7)
            for (int colour = 0; colour < 3; ++colour)
                furthest =
                    std::max(furthest, std::abs(seen.at(x, y, colour) - light(colour, (x + 0.5) / seen.width,
                                                                              (y + 0.5) / seen.height)));
    CHECK(furthest <= 12); // of 255, after two times JPEG
}

TEST_CASE("a photograph never gets fewer points than wanted") {
    for (const auto& [from, to] :
         {std::pair{1998, 1998}, {1999, 1000}, {2000, 1000}, {2001, 1001}, {8000, 1000}, {9000, 1125}}) {
        INFO(from);
        CHECK(longer_side_of(smaller(photograph(waves(from, 24)), kWanted)) == to);
        CHECK(longer_side_of(smaller(photograph(waves(24, from)), kWanted)) == to);
    }
}

TEST_CASE("a photograph that cannot be halved and have enough points stays byte for byte as it came") {
    for (const int from : {1, 1000, 1001, 1998}) {
        const std::string came = photograph(waves(from, 16));
        CHECK(smaller(came, kWanted) == came);
    }
}

TEST_CASE("a smaller photograph is held the same way round, and its colours mean the same") {
    const std::string profile = segment_of(kApp2, std::string("ICC_PROFILE\0\1\1measured", 22));
    const std::string came =
        with(large(), segment_of(kApp1, exif_turned(6)) + profile + segment_of(kComment, "51.5N"));
    const std::string made = smaller(for_others(came), kWanted);
    CHECK(longer_side_of(made) == 1000);
    CHECK(exif_among(segments_of(made)).turned == 6);
    CHECK(made.find(profile) != std::string::npos);
    CHECK(made.find("51.5N") == std::string::npos);
    CHECK(segments_of(made).front().marker == kApp0);
    CHECK(for_others(made) == made);
}

TEST_CASE("a grey photograph stays grey, and one in several scans is read like any other") {
    const std::string grey = smaller(photograph(waves(2000, 100, TJPF_GRAY), TJSAMP_GRAY), kWanted);
    CHECK(longer_side_of(grey) == 1000);
    CHECK(frame_among(segments_of(grey))->components == 1);
    const std::string slow = smaller(photograph(waves(2000, 100), TJSAMP_420, TJFLAG_PROGRESSIVE), kWanted);
    CHECK(longer_side_of(slow) == 1000);
}

TEST_CASE("what cannot be made smaller without doubt stays as it came") {
    const auto stays = [](const std::string& came) { return smaller(came, kWanted) == came; };
    CHECK(stays(""));
    CHECK(stays("\x89PNG\r\n\x1A\n and so on"));
    CHECK(stays(large().substr(0, large().size() / 2)));
    std::string shortened =
        large().substr(0, large().size() / 2) + "\xFF\xD9"; // whole, to who only walks over it
    CHECK(!segments_of(shortened).empty());
    CHECK(stays(shortened));
    CHECK(stays(photograph(waves(2000, 100, TJPF_CMYK), TJSAMP_444))); // for printing
}

TEST_CASE("a photograph that claims to be too large to bear stays as it came") {
    const auto claiming = [](int width, int height) {
        std::string jpeg = large();
        const auto segments = segments_of(jpeg);
        const auto frame = std::find_if(segments.begin(), segments.end(),
                                        [](const Segment& segment) { return segment.marker == 0xC0; });
        const auto at = static_cast<std::size_t>(frame->body.data() - jpeg.data());
        for (const auto& [where, value] : {std::pair{at + 1, height}, {at + 3, width}}) {
            jpeg[where] = static_cast<char>(value >> 8);
            jpeg[where + 1] = static_cast<char>(value & 0xFF);
        }
        return jpeg;
    };
    CHECK(smaller(claiming(2000, 1500), kWanted) != large());
    const std::string vast = claiming(65500, 65500);
    CHECK(smaller(vast, kWanted) == vast);
}

TEST_CASE("a picture of one size behind a frame of another, or of another process, stays as it came") {
    const auto frame_of = [](unsigned marker, int side) {
        const auto high = static_cast<char>(side >> 8), low = static_cast<char>(side & 0xFF);
        return segment_of(static_cast<Marker>(marker),
                          std::string("\x08") + high + low + high + low + std::string("\1\1\x11\0", 4));
    };
    for (const unsigned marker :
         {0xC9U, 0xCAU, 0xC3U, 0xC0U}) { // arithmetic, arithmetic in scans, lossless, ours
        const std::string came = "\xFF\xD8" + frame_of(marker, 65500) +
                                 segment_of(kScan, std::string("\1\1\0\0\x3f\0", 6)) +
                                 std::string(200, '\0') + frame_of(0xC0, 3000) + "\xFF\xD9";
        INFO(marker);
        CHECK(segments_of(came).size() == 3);
        CHECK(longer_side_of(came) == (marker == 0xC0U ? 65500 : 0));
        CHECK(smaller(came, kWanted) == came);
    }
}

TEST_CASE("64 scans are borne, 65 are not") {
    CHECK(longer_side_of(smaller(of_scans(63), kWanted)) == 1000);
    CHECK(longer_side_of(smaller(of_scans(64), kWanted)) == 1000);
    CHECK(smaller(of_scans(65), kWanted) == of_scans(65));
}

TEST_CASE("a smaller photograph has the same bytes on every machine") {
    std::uint32_t sum = 2166136261U; // FNV-1a
    for (const char byte : smaller(photograph(waves(2000, 400), TJSAMP_420, TJFLAG_ACCURATEDCT), kWanted))
        sum = (sum ^ static_cast<unsigned char>(byte)) * 16777619U;
    CHECK(sum == 239786389U); // libjpeg-turbo 2.1.5, on x86-64 with its vector code; plain C has to agree
}
