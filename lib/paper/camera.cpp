#include "paper/camera.h"

#include <algorithm>
#include <array>
#include <vector>

namespace undersheet::paper {
namespace {

unsigned byte_at(std::string_view bytes, std::size_t at) { return static_cast<unsigned char>(bytes[at]); }

std::string u16(std::size_t value) {
    return {static_cast<char>(value >> 8U & 0xFFU), static_cast<char>(value & 0xFFU)};
}

// --- JPEG: ITU-T T.81, annex B ---

constexpr unsigned kScan = 0xDA, kEnd = 0xD9, kFirst = 0xE0, kExif = 0xE1, kColourProfile = 0xE2,
                   kTransform = 0xEE;

bool stands_alone(unsigned marker) { return marker == 0x01 || (marker >= 0xD0 && marker <= 0xD7); }

// Colours need their profile and how they were transformed; the rest of APPn, and comments, say things of the camera.
bool is_needed(unsigned marker, std::string_view body) {
    const bool is_app = marker >= 0xE0 && marker <= 0xEF;
    if (marker == kColourProfile) return body.starts_with("ICC_PROFILE");
    return marker != 0xFE && (!is_app || marker == kFirst || marker == kTransform);
}

// Where the points of a scan end: at the next mark that is neither a stuffed zero nor a restart.
std::size_t end_of_scan(std::string_view bytes, std::size_t at) {
    while (at + 1 < bytes.size()) {
        if (byte_at(bytes, at) == 0xFF && byte_at(bytes, at + 1) != 0 &&
            !stands_alone(byte_at(bytes, at + 1)) && byte_at(bytes, at + 1) != 0xFF)
            return at;
        ++at;
    }
    return bytes.size();
}

std::string held_as_before(const Exif& exif) {
    if (exif.turned == 1) return {};
    const std::string block = exif_turned(exif.turned);
    return std::string("\xFF\xE1") + u16(block.size() + 2) + block;
}

struct Segment {
    unsigned marker;
    std::string_view whole, body;
};

// The pieces up to the end mark; none when there is no way to it.
std::vector<Segment> segments_of(std::string_view bytes) {
    std::vector<Segment> segments;
    std::size_t at = 2; // behind the start mark
    while (at + 1 < bytes.size() && byte_at(bytes, at) == 0xFF) {
        const unsigned marker = byte_at(bytes, at + 1);
        if (marker == kEnd) return segments;
        if (marker == 0xFF || stands_alone(marker)) { // filling, or a mark without a body
            at += marker == 0xFF ? 1 : 2;
            continue;
        }
        if (at + 4 > bytes.size()) break;
        const std::size_t length = byte_at(bytes, at + 2) << 8U | byte_at(bytes, at + 3);
        if (length < 2 || length > bytes.size() - at - 2) break;
        std::size_t next = at + 2 + length;
        if (marker == kScan) next = end_of_scan(bytes, next);
        segments.push_back({marker, bytes.substr(at, next - at), bytes.substr(at + 4, length - 2)});
        at = next;
    }
    return {};
}

Exif exif_among(const std::vector<Segment>& segments) {
    const auto found = std::find_if(segments.begin(), segments.end(), [](const Segment& segment) {
        return segment.marker == kExif && segment.body.starts_with(kExifMark);
    });
    return found == segments.end() ? Exif() : read_exif(found->body);
}

std::string jpeg_for_others(std::string_view bytes) {
    const auto segments = segments_of(bytes);
    if (segments.empty()) return {};
    std::string first, rest; // APP0 has to stand first where there is one
    for (const Segment& segment : segments)
        if (is_needed(segment.marker, segment.body))
            (segment.marker == kFirst ? first : rest).append(segment.whole);
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
        for (std::size_t i = 0; i < 4; ++i) length = length << 8U | byte_at(bytes, at + i);
        if (length > bytes.size() - at - kRound) break;
        const std::string_view name = bytes.substr(at + 4, 4);
        if (is_needed(name)) out.append(bytes.substr(at, length + kRound));
        if (name == "IEND") return out;
        at += length + kRound;
    }
    return {};
}

} // namespace

std::string camera_time(std::string_view bytes) {
    return bytes.starts_with("\xFF\xD8\xFF") ? exif_among(segments_of(bytes)).taken : std::string();
}

std::string for_others(std::string_view bytes) {
    if (bytes.starts_with("\xFF\xD8\xFF")) return jpeg_for_others(bytes);
    if (bytes.starts_with("\x89PNG\r\n\x1A\n")) return png_for_others(bytes);
    return {};
}

} // namespace undersheet::paper
