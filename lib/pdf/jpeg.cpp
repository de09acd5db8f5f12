#include "picture/jpeg.h"
#include "pdf/picture.h"
#include "picture/media.h"

namespace undersheet::pdf {
namespace {

std::optional<Colours> colours_of(int components) {
    switch (components) {
    case 1:
        return Colours::grey;
    case 3:
        return Colours::rgb;
    case 4:
        return Colours::cmyk_inverted; // as every program that writes such files does
    default:
        return std::nullopt;
    }
}

} // namespace

std::optional<Picture> read_jpeg(std::string_view bytes) {
    const auto segments = picture::segments_of(bytes);
    const auto frame = picture::frame_among(segments);
    const auto colours = frame ? colours_of(frame->components) : std::nullopt;
    if (!colours || !picture::has_points(segments)) return std::nullopt;
    Picture read;
    read.bytes = bytes;
    read.colours = *colours;
    read.width = frame->width;
    read.height = frame->height;
    read.turned = picture::exif_among(segments).turned;
    return read;
}

std::optional<Picture> read_picture(std::string_view bytes) {
    if (picture::is_jpeg(bytes)) return read_jpeg(bytes);
    if (picture::is_png(bytes)) return read_png(bytes);
    return std::nullopt;
}

} // namespace undersheet::pdf
