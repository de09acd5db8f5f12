#include "picture/jpeg.h"

#include "picture/media.h"

#include <algorithm>

namespace undersheet::picture {
namespace {

unsigned u8_at(std::string_view bytes, std::size_t at) { return static_cast<unsigned char>(bytes[at]); }
int u16_at(std::string_view bytes, std::size_t at) {
    return static_cast<int>(u8_at(bytes, at) << 8U | u8_at(bytes, at + 1));
}

constexpr unsigned kFirstFrame = 0xC0;

bool stands_alone(unsigned marker) { return marker == 0x01 || (marker >= 0xD0 && marker <= 0xD7); }

// Where the points of a scan end: at the next mark that is neither a stuffed zero nor a restart.
std::size_t end_of_scan(std::string_view bytes, std::size_t at) {
    for (at = bytes.find('\xFF', at); at < bytes.size() - 1; at = bytes.find('\xFF', at + 1)) {
        const unsigned marker = u8_at(bytes, at + 1);
        if (marker != 0 && marker != 0xFF && !stands_alone(marker)) return at;
    }
    return bytes.size();
}

} // namespace

std::vector<Segment> segments_of(std::string_view bytes) {
    if (!is_jpeg(bytes)) return {};
    std::vector<Segment> segments;
    std::size_t at = 2; // behind the start mark
    while (at + 1 < bytes.size() && u8_at(bytes, at) == 0xFF) {
        const unsigned marker = u8_at(bytes, at + 1);
        if (marker == kEnd) return segments;
        if (marker == 0xFF || stands_alone(marker)) { // filling, or a mark without a body
            at += marker == 0xFF ? 1 : 2;
            continue;
        }
        // Below the frames lie reserved marks and the stuffed zero.
        if (marker < kFirstFrame || at + 4 > bytes.size()) break;
        const auto length = static_cast<std::size_t>(u16_at(bytes, at + 2));
        if (length < 2 || length > bytes.size() - at - 2) break;
        std::size_t next = at + 2 + length;
        if (marker == kScan) next = end_of_scan(bytes, next);
        segments.push_back({marker, bytes.substr(at, next - at), bytes.substr(at + 4, length - 2)});
        at = next;
    }
    return {};
}

std::optional<Frame> frame_among(const std::vector<Segment>& segments) {
    constexpr std::size_t kHead = 6; // B.2.2: bits, height, width, how many components
    // The first of any process, as whoever unfolds it takes it: a later one of ours would be a lie.
    const auto found = std::find_if(segments.begin(), segments.end(), [](const Segment& segment) {
        const bool is_table = segment.marker == 0xC4 || segment.marker == 0xC8 || segment.marker == 0xCC;
        return segment.marker >= kFirstFrame && segment.marker <= 0xCF && !is_table;
    });
    if (found == segments.end() || found->marker > 0xC2 || found->body.size() < kHead ||
        u8_at(found->body, 0) != 8)
        return std::nullopt;
    const Frame frame{u16_at(found->body, 3), u16_at(found->body, 1), static_cast<int>(u8_at(found->body, 5)),
                      found->marker == 0xC2};
    return frame.width > 0 && frame.height > 0 ? std::optional(frame) : std::nullopt;
}

bool has_points(const std::vector<Segment>& segments) {
    return std::any_of(segments.begin(), segments.end(),
                       [](const Segment& segment) { return segment.marker == kScan; });
}

Exif exif_among(const std::vector<Segment>& segments) {
    const auto found = std::find_if(segments.begin(), segments.end(), [](const Segment& segment) {
        return segment.marker == kApp1 && segment.body.starts_with(kExifMark);
    });
    return found == segments.end() ? Exif() : read_exif(found->body);
}

std::string segment_of(Marker marker, std::string_view body) {
    const std::size_t length = body.size() + 2;
    std::string out("\xFF");
    for (const std::size_t byte : {static_cast<std::size_t>(marker), length >> 8U, length & 0xFFU})
        out += static_cast<char>(byte);
    return out.append(body);
}

} // namespace undersheet::picture
