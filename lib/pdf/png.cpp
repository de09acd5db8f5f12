#include "pdf/deflate.h"
#include "pdf/picture.h"
#include "pdf/true_type.h" // numbers with the high byte first, as in PNG

#include <algorithm>
#include <cstdlib>

namespace undersheet::pdf {
namespace {

// The PNG specification (ISO/IEC 15948), 11.2.2: what the header says.
struct Header {
    std::size_t width = 0, height = 0, bits = 0, colour_type = 0, interlaced = 0;

    [[nodiscard]] bool has_alpha() const { return (colour_type & 4U) != 0; }
    [[nodiscard]] std::size_t channels() const {
        return (colour_type == 2 || colour_type == 6 ? 3U : 1U) + (has_alpha() ? 1U : 0U);
    }
    [[nodiscard]] std::size_t row_bytes() const { return (width * channels() * bits + 7) / 8; }
    [[nodiscard]] std::size_t point_bytes() const { return std::max<std::size_t>(channels() * bits / 8, 1); }
};

constexpr std::size_t kMostPoints = 200'000'000; // more is no photograph but an attempt on the memory

struct Chunks {
    Header header;
    std::string palette, data;
    bool is_whole = false;
};

Header header_in(std::string_view body) {
    return {u32_at(body, 0), u32_at(body, 4), static_cast<unsigned char>(body[8]),
            static_cast<unsigned char>(body[9]), static_cast<unsigned char>(body[12])};
}

Chunks chunks_of(std::string_view bytes) {
    Chunks all;
    std::size_t at = 8;
    while (at + 12 <= bytes.size()) {
        const std::size_t length = u32_at(bytes, at);
        if (length > bytes.size() - at - 12) break;
        const std::string_view name = bytes.substr(at + 4, 4), body = bytes.substr(at + 8, length);
        if (name == "IHDR" && length == 13) all.header = header_in(body);
        if (name == "PLTE") all.palette = body;
        if (name == "IDAT") all.data += body;
        if (name == "IEND") {
            all.is_whole = true;
            break;
        }
        at += length + 12;
    }
    return all;
}

bool is_drawable(const Chunks& chunks) {
    const Header& header = chunks.header;
    const bool has_size =
        header.width > 0 && header.height > 0 && header.height <= kMostPoints / header.width;
    const bool has_palette =
        header.colour_type != 3 || (!chunks.palette.empty() && chunks.palette.size() % 3 == 0 &&
                                    chunks.palette.size() <= 768 && header.bits <= 8);
    const bool is_known = header.colour_type <= 6 && header.colour_type != 1 && header.colour_type != 5;
    const bool has_bits = header.bits == 8 || header.bits == 16 ||
                          ((header.colour_type == 0 || header.colour_type == 3) &&
                           (header.bits == 1 || header.bits == 2 || header.bits == 4));
    return chunks.is_whole && has_size && has_palette && is_known && has_bits && header.interlaced == 0;
}

int nearest(int left, int up, int corner) {
    const int guess = left + up - corner;
    const int far_left = std::abs(guess - left), far_up = std::abs(guess - up),
              far_corner = std::abs(guess - corner);
    if (far_left <= far_up && far_left <= far_corner) return left;
    return far_up <= far_corner ? up : corner;
}

// What row filter `kind` of 9.2 foretells for a byte, from the bytes to the left, above, and above to the left.
int foretold(int kind, int left, int up, int corner) {
    switch (kind) {
    case 1:
        return left;
    case 2:
        return up;
    case 3:
        return (left + up) / 2;
    case 4:
        return nearest(left, up, corner);
    default:
        return 0;
    }
}

// Rows without their filters, in place of `rows`.
std::string unfiltered(const std::string& rows, const Header& header) {
    const std::size_t wide = header.row_bytes(), step = header.point_bytes();
    std::string out(wide * header.height, '\0');
    const auto value = [&](std::size_t at) { return static_cast<int>(static_cast<unsigned char>(out[at])); };
    for (std::size_t y = 0; y < header.height; ++y) {
        const std::size_t from = y * (wide + 1), to = y * wide;
        for (std::size_t x = 0; x < wide; ++x) {
            const int left = x >= step ? value(to + x - step) : 0, up = y > 0 ? value(to + x - wide) : 0;
            const int corner = x >= step && y > 0 ? value(to + x - wide - step) : 0;
            out[to + x] = static_cast<char>(static_cast<unsigned char>(rows[from + 1 + x]) +
                                            foretold(rows[from], left, up, corner));
        }
    }
    return out;
}

// The points laid on white paper, eight bits a colour: what shines through is paper.
std::string on_white(const std::string& points, const Header& header) {
    const std::size_t bytes = header.bits / 8, colours = header.channels() - 1, step = header.point_bytes();
    std::string out;
    out.reserve(header.width * header.height * colours);
    const auto high = [&](std::size_t at) {
        return static_cast<int>(static_cast<unsigned char>(points[at]));
    };
    for (std::size_t at = 0; at + step <= points.size(); at += step) {
        const int cover = high(at + colours * bytes);
        for (std::size_t colour = 0; colour < colours; ++colour)
            out += static_cast<char>((high(at + colour * bytes) * cover + 255 * (255 - cover) + 127) / 255);
    }
    return out;
}

} // namespace

std::optional<Picture> read_png(std::string_view bytes) {
    Chunks chunks = chunks_of(bytes);
    if (!is_drawable(chunks)) return std::nullopt;
    const Header& header = chunks.header;
    // A byte of deflate makes at most 1032 of picture: what claims more is not asked for.
    const std::size_t expected = (header.row_bytes() + 1) * header.height;
    if (expected / 1032 > chunks.data.size()) return std::nullopt;
    const auto rows = inflated(chunks.data, expected);
    if (!rows) return std::nullopt;

    Picture picture;
    picture.width = static_cast<int>(header.width);
    picture.height = static_cast<int>(header.height);
    picture.bits = header.has_alpha() ? 8 : static_cast<int>(header.bits);
    picture.filter = header.has_alpha() ? Filter::flate : Filter::png_rows;
    picture.colours = header.colour_type == 3  ? Colours::palette
                      : header.channels() >= 3 ? Colours::rgb
                                               : Colours::grey;
    picture.palette = std::move(chunks.palette);
    picture.bytes =
        header.has_alpha() ? deflated(on_white(unfiltered(*rows, header), header)) : std::move(chunks.data);
    return picture;
}

} // namespace undersheet::pdf
