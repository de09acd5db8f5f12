#include "picture/smaller.h"

#include "picture/jpeg.h"

#include <turbojpeg.h>

#include <algorithm>
#include <cstdint>
#include <memory>

namespace undersheet::picture {
namespace {

// A JPEG can be read at so many eighths of its size without unfolding it whole.
constexpr int kEighths = 8;
constexpr int kMostEighths = kEighths / 2;
constexpr int kQuality = 85; // of 100, libjpeg's scale
// A file may claim what it has not: a picture in several scans of so many points takes up to 400 MB, and each scan goes over them all.
constexpr std::int64_t kMostPoints = 64'000'000;
constexpr std::ptrdiff_t kMostScans = 64; // cameras write about ten

using Codec = std::unique_ptr<void, int (*)(tjhandle)>;

struct Points {
    std::string bytes;
    int width = 0, height = 0;
    bool is_grey = false;

    [[nodiscard]] int format() const { return is_grey ? TJPF_GRAY : TJPF_RGB; }
};

unsigned char* raw(std::string& bytes) { return reinterpret_cast<unsigned char*>(bytes.data()); }
const unsigned char* raw(std::string_view bytes) {
    return reinterpret_cast<const unsigned char*>(bytes.data());
}

bool is_bearable(const Frame& frame, const std::vector<Segment>& segments) {
    const auto scans = std::count_if(segments.begin(), segments.end(),
                                     [](const Segment& segment) { return segment.marker == kScan; });
    return std::int64_t{frame.width} * frame.height <= kMostPoints && scans <= kMostScans;
}

// The fewest that leave the longer side with so many points.
int eighths_for(const Frame& frame, int longer_side_px) {
    return kEighths * (longer_side_px - 1) / std::max(frame.width, frame.height) + 1;
}

// Nothing when the reader has anything to say against the picture.
std::optional<Points> read_at(std::string_view jpeg, const Frame& frame, int eighths) {
    const Codec codec(tjInitDecompress(), tjDestroy);
    int width = 0, height = 0, sampling = 0, colours = 0;
    const auto size = static_cast<unsigned long>(jpeg.size());
    if (!codec ||
        tjDecompressHeader3(codec.get(), raw(jpeg), size, &width, &height, &sampling, &colours) != 0)
        return std::nullopt;
    if (colours == TJCS_CMYK || colours == TJCS_YCCK) return std::nullopt;
    // Else it reads another picture than was judged.
    if (width != frame.width || height != frame.height) return std::nullopt;
    const tjscalingfactor scale{eighths, kEighths};
    Points points{{}, TJSCALED(width, scale), TJSCALED(height, scale), colours == TJCS_GRAY};
    const int row = points.width * tjPixelSize[points.format()];
    points.bytes.resize(static_cast<std::size_t>(row) * static_cast<std::size_t>(points.height));
    constexpr int kHow = TJFLAG_ACCURATEDCT | TJFLAG_STOPONWARNING;
    if (tjDecompress2(codec.get(), raw(jpeg), size, raw(points.bytes), points.width, row, points.height,
                      points.format(), kHow) != 0)
        return std::nullopt;
    return points;
}

std::string written(Points& points) {
    const Codec codec(tjInitCompress(), tjDestroy);
    if (!codec) return {};
    const int sampling = points.is_grey ? TJSAMP_GRAY : TJSAMP_420;
    unsigned long size = tjBufSize(points.width, points.height, sampling);
    std::string jpeg(size, '\0');
    unsigned char* into = raw(jpeg);
    if (tjCompress2(codec.get(), raw(points.bytes), points.width, 0, points.height, points.format(), &into,
                    &size, sampling, kQuality, TJFLAG_ACCURATEDCT | TJFLAG_NOREALLOC) != 0)
        return {};
    jpeg.resize(size);
    return jpeg;
}

// How it was held, and what its colours mean, go behind the first segment, which has to stand first.
std::string with_what_it_means(const std::string& jpeg, const std::vector<Segment>& of) {
    const auto drawn = segments_of(jpeg);
    if (drawn.empty()) return {};
    std::string meaning;
    for (const Segment& segment : of)
        if (segment.marker == kApp1 || segment.marker == kApp2) meaning.append(segment.whole);
    const auto first =
        static_cast<std::size_t>(drawn.front().whole.data() - jpeg.data()) + drawn.front().whole.size();
    return jpeg.substr(0, first) + meaning + jpeg.substr(first);
}

} // namespace

std::string smaller(std::string_view bytes, int longer_side_px) {
    const auto segments = segments_of(bytes);
    const auto frame = frame_among(segments);
    if (!frame || !is_bearable(*frame, segments)) return std::string(bytes);
    const int eighths = eighths_for(*frame, longer_side_px);
    if (eighths > kMostEighths) return std::string(bytes);
    auto points = read_at(bytes, *frame, eighths);
    if (!points) return std::string(bytes);
    std::string made = with_what_it_means(written(*points), segments);
    if (made.empty() || made.size() >= bytes.size()) return std::string(bytes);
    return made;
}

} // namespace undersheet::picture
