#include "pdf/picture.h"
#include "pdf/true_type.h" // numbers with the high byte first, as in JPEG

namespace undersheet::pdf {
namespace {

std::uint16_t low_first_u16(std::string_view bytes, std::size_t at) {
    const std::uint16_t turned = u16_at(bytes, at);
    return static_cast<std::uint16_t>(turned >> 8U | turned << 8U);
}

std::uint32_t low_first_u32(std::string_view bytes, std::size_t at) {
    return low_first_u16(bytes, at) | static_cast<std::uint32_t>(low_first_u16(bytes, at + 2)) << 16U;
}

// Exif 2.32, 4.6.4: tag 0x0112 of the first directory says how the camera was held; 1 where it does not.
int orientation_in(std::string_view exif) {
    constexpr std::string_view kMark("Exif\0\0", 6);
    if (!exif.starts_with(kMark)) return 1;
    const std::string_view tiff = exif.substr(kMark.size());
    const bool low_first = tiff.starts_with("II");
    const auto u16 = [&](std::size_t at) { return low_first ? low_first_u16(tiff, at) : u16_at(tiff, at); };
    const std::size_t directory = low_first ? low_first_u32(tiff, 4) : u32_at(tiff, 4);
    if (directory > tiff.size()) return 1;
    for (std::size_t row = 0; row < u16(directory); ++row) {
        const std::size_t at = directory + 2 + row * 12;
        if (at + 12 > tiff.size()) break;
        if (u16(at) != 0x0112) continue;
        const int held = u16(at + 8);
        return held >= 1 && held <= 8 ? held : 1;
    }
    return 1;
}

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
        if (marker == 0xE1 && body.starts_with("Exif")) picture.turned = orientation_in(body);
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
