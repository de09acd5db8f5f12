#include "picture/camera.h"

#include "picture/jpeg.h"
#include "picture/media.h"

#include <algorithm>
#include <array>

namespace undersheet::picture {
namespace {

// Colours need their profile and how they were transformed; the rest of APPn, and comments, say things of the camera.
bool is_needed(const Segment& segment) {
    const bool is_app = segment.marker >= 0xE0 && segment.marker <= 0xEF;
    if (segment.marker == kApp2) return segment.body.starts_with("ICC_PROFILE");
    return segment.marker != kComment && (!is_app || segment.marker == kApp0 || segment.marker == kAdobe);
}

std::string held_as_before(const Exif& exif) {
    return exif.turned == 1 ? std::string() : segment_of(kApp1, exif_turned(exif.turned));
}

std::string jpeg_for_others(std::string_view bytes) {
    const auto segments = segments_of(bytes);
    if (!has_points(segments)) return {};
    std::string first, rest; // APP0 has to stand first where there is one
    for (const Segment& segment : segments)
        if (is_needed(segment)) (segment.marker == kApp0 ? first : rest).append(segment.whole);
    return "\xFF\xD8" + first + held_as_before(exif_among(segments)) + rest + "\xFF\xD9";
}

// --- PNG: ISO/IEC 15948 ---

bool is_needed(std::string_view name) {
    constexpr std::array<std::string_view, 11> kDrawn{"IHDR", "PLTE", "IDAT", "IEND", "tRNS", "gAMA",
                                                      "cHRM", "sRGB", "iCCP", "sBIT", "pHYs"};
    return std::find(kDrawn.begin(), kDrawn.end(), name) != kDrawn.end();
}

std::string png_for_others(std::string_view bytes) {
    constexpr std::size_t kStart = 8, kRound = 12; // signature; length, name and check of a chunk
    std::string out(bytes.substr(0, kStart));
    std::size_t at = kStart;
    while (bytes.size() - at >= kRound) {
        std::size_t length = 0;
        for (std::size_t i = 0; i < 4; ++i) length = length << 8U | static_cast<unsigned char>(bytes[at + i]);
        if (length > bytes.size() - at - kRound) break;
        const std::string_view name = bytes.substr(at + 4, 4);
        if (is_needed(name)) out.append(bytes.substr(at, length + kRound));
        if (name == "IEND") return out;
        at += length + kRound;
    }
    return {};
}

} // namespace

std::string camera_time(std::string_view bytes) { return exif_among(segments_of(bytes)).taken; }

std::string for_others(std::string_view bytes) {
    if (is_jpeg(bytes)) return jpeg_for_others(bytes);
    if (is_png(bytes)) return png_for_others(bytes);
    return {};
}

} // namespace undersheet::picture
