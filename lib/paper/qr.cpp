#include "paper/qr.h"

#include <qrcodegen/qrcodegen.hpp>

namespace undersheet::paper {
namespace {

constexpr double kModule_mm = 0.7;
constexpr int kQuietModules = 4; // modules, ISO/IEC 18004, 6.3.8

// Dark modules beside one another are one rectangle: fewer shapes, and no hair lines between them.
void draw_row(const qrcodegen::QrCode& code, int y, Drawing& drawing) {
    for (int x = 0; x < code.getSize(); ++x) {
        if (!code.getModule(x, y)) continue;
        int end = x;
        while (end < code.getSize() && code.getModule(end, y)) ++end;
        drawing.rectangle({(kQuietModules + x) * kModule_mm, (kQuietModules + y) * kModule_mm},
                          (end - x) * kModule_mm, kModule_mm, Stroke::none, Fill::ink);
        x = end;
    }
}

} // namespace

Drawing qr_drawing(const std::string& text, std::string title) {
    const auto code = qrcodegen::QrCode::encodeText(text.c_str(), qrcodegen::QrCode::Ecc::MEDIUM);
    const double side_mm = (code.getSize() + 2 * kQuietModules) * kModule_mm;
    Drawing drawing{std::move(title), side_mm, side_mm};
    drawing.rectangle({0, 0}, side_mm, side_mm, Stroke::none, Fill::paper);
    for (int y = 0; y < code.getSize(); ++y) draw_row(code, y, drawing);
    return drawing;
}

} // namespace undersheet::paper
