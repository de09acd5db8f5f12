#include "base/exif.h"
#include "pdf/picture.h"
#include "pdf/true_type.h" // numbers with the high byte first, as in JPEG

namespace undersheet::pdf {
namespace {

// The frame of ITU-T T.81, B.2.2, of the three processes that PDF readers know: baseline, extended, progressive.
bool read_frame(std::string_view frame, Picture& picture) {
    if (frame.size() < 6 || frame[0] != 8) return false;
    picture.height = u16_at(frame, 1);
    picture.width = u16_at(frame, 3);
    switch (frame[5]) {
    case 1:
        picture.colours = Colours::grey;
        break;
    case 3:
        picture.colours = Colours::rgb;
        break;
    case 4:
        picture.colours = Colours::cmyk_inverted; // as every program that writes such files does
        break;
    default:
        return false;
    }
    return picture.width > 0 && picture.height > 0;
}

bool stands_alone(unsigned marker) { return marker == 0x01 || (marker >= 0xD0 && marker <= 0xD7); }

} // namespace

std::optional<Picture> read_jpeg(std::string_view bytes) {
    Picture picture;
    bool has_frame = false;
    std::size_t at = 2; // behind the start mark
    while (at + 4 <= bytes.size() && bytes[at] == '\xFF') {
        const auto marker = static_cast<unsigned char>(bytes[at + 1]);
        if (marker == 0xFF || stands_alone(marker)) { // filling, or a mark without a body
            at += marker == 0xFF ? 1 : 2;
            continue;
        }
        const std::size_t length = u16_at(bytes, at + 2);
        if (length < 2 || length > bytes.size() - at - 2) return std::nullopt;
        const std::string_view body = bytes.substr(at + 4, length - 2);
        if (marker >= 0xC0 && marker <= 0xC2) {
            has_frame = read_frame(body, picture);
            if (!has_frame) return std::nullopt;
        }
        if (marker == 0xE1 && body.starts_with(kExifMark)) picture.turned = read_exif(body).turned;
        if (marker == 0xDA) { // the picture itself begins; its end mark says that it is whole
            if (!has_frame || bytes.find("\xFF\xD9", at) == std::string_view::npos) return std::nullopt;
            picture.bytes = bytes;
            return picture;
        }
        at += 2 + length;
    }
    return std::nullopt;
}

std::optional<Picture> read_picture(std::string_view bytes) {
    if (bytes.starts_with("\xFF\xD8\xFF")) return read_jpeg(bytes);
    if (bytes.starts_with("\x89PNG\r\n\x1A\n")) return read_png(bytes);
    return std::nullopt;
}

} // namespace undersheet::pdf
