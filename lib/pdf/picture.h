// A photograph as a PDF file can hold it: JPEG as it came; PNG as it came where that can be, else its points on white.
//
// Promises: bytes that are no picture, are cut short, or are of a sort no reader of PDF has to know give nothing; nothing is believed
//   of a size before the bytes bear it out. How a camera was held (Exif) is kept, so that the picture is turned when it is drawn.
// Does not: shrink, turn or sharpen anything; does not read interlaced PNG.
// Threads: pure functions.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace undersheet::pdf {

enum class Filter { jpeg, flate, png_rows }; // png_rows: deflated, each row with its filter before it
enum class Colours { grey, rgb, cmyk_inverted, palette };

struct Picture {
    std::string bytes;
    Filter filter = Filter::jpeg;
    Colours colours = Colours::rgb;
    std::string palette = {}; // three bytes a colour
    int bits = 8;             // a colour
    int width = 0, height = 0;
    int turned = 1; // as Exif counts: 1 upright, 3 upside down, 6 and 8 on its side, the even pairs mirrored

    [[nodiscard]] bool is_on_its_side() const { return turned >= 5; }
    [[nodiscard]] int shown_width() const { return is_on_its_side() ? height : width; }
    [[nodiscard]] int shown_height() const { return is_on_its_side() ? width : height; }
};

[[nodiscard]] std::optional<Picture> read_picture(std::string_view bytes);

// The two sorts there are; jpeg.cpp and png.cpp.
[[nodiscard]] std::optional<Picture> read_jpeg(std::string_view bytes);
[[nodiscard]] std::optional<Picture> read_png(std::string_view bytes);

} // namespace undersheet::pdf
