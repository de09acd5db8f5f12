#include "pdf/content.h"

#include "base/text.h"

namespace undersheet::pdf {
namespace {

// Drawing orders count upwards from the bottom of the page; marks count down from its top.
class Drawer {
public:
    Drawer(const File& file, UsedFonts& used) : file_(file), used_(used) {}

    void operator()(const Letters& letters);
    void operator()(const Path& path);
    void operator()(const Shown& shown);
    [[nodiscard]] std::string orders() && { return std::move(orders_); }

private:
    [[nodiscard]] std::string point(Point at) const {
        return number_text(at.x_pt) + " " + number_text(file_.height_pt - at.y_pt) + " ";
    }

    const File& file_;
    UsedFonts& used_;
    std::string orders_;
};

void Drawer::operator()(const Letters& letters) {
    if (letters.text.empty()) return;
    const bool is_bold = letters.face == Face::bold;
    const Font& face = font(letters.face);
    Used& used = is_bold ? used_.bold : used_.regular;
    orders_ += number_text(letters.grey) + " g BT /F" + (is_bold ? "1 " : "0 ") +
               number_text(letters.size_pt) + " Tf " + point(letters.at) + "Td <";
    for (std::string_view rest = letters.text; !rest.empty();) {
        const char32_t code = take_character(rest).code;
        const std::uint16_t glyph = face.glyph(code);
        used.emplace(glyph, code);
        orders_ += hex4(glyph);
    }
    orders_ += "> Tj ET\n";
}

void Drawer::operator()(const Path& path) {
    if (path.points.empty()) return;
    const bool has_line = path.line_pt > 0;
    if (has_line) orders_ += number_text(path.line_pt) + " w " + number_text(path.line_grey) + " G ";
    if (path.is_dashed) orders_ += "[3.4 2.8] 0 d ";
    if (path.is_filled) orders_ += number_text(path.fill_grey) + " g ";
    const char* step = "m ";
    for (const Point& at : path.points) {
        orders_ += point(at) + step;
        step = "l ";
    }
    if (path.is_closed) orders_ += "h ";
    orders_ += path.is_filled ? (has_line ? "B" : "f") : has_line ? "S" : "n";
    orders_ += path.is_dashed ? " [] 0 d\n" : "\n";
}

// The picture fills a square of one by one, drawn through this matrix: Exif 2.32, 4.6.4, says which edge is up.
void Drawer::operator()(const Shown& shown) {
    const double w = shown.width_pt, h = shown.height_pt;
    struct Matrix {
        double a, b, c, d, e, f;
    };
    const Matrix by_turn[] = {{w, 0, 0, h, 0, 0},  {-w, 0, 0, h, w, 0},  {-w, 0, 0, -h, w, h},
                              {w, 0, 0, -h, 0, h}, {0, -h, -w, 0, w, h}, {0, -h, w, 0, 0, h},
                              {0, h, w, 0, 0, 0},  {0, h, -w, 0, w, 0}};
    const Matrix& m = by_turn[file_.pictures[shown.picture].turned - 1];
    const double x = shown.corner.x_pt, y = file_.height_pt - shown.corner.y_pt - h;
    orders_ += "q ";
    for (const double value : {m.a, m.b, m.c, m.d, x + m.e, y + m.f}) orders_ += number_text(value) + " ";
    orders_ += "cm /P" + std::to_string(shown.picture) + " Do Q\n";
}

} // namespace

std::string content_of(const Page& page, const File& file, UsedFonts& used) {
    Drawer drawer(file, used);
    for (const Mark& mark : page.marks) std::visit(drawer, mark);
    return std::move(drawer).orders();
}

} // namespace undersheet::pdf
