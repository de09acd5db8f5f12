#include "paper/pdf_setter.h"

#include "base/text.h"
#include "paper/clean.h"

#include <algorithm>

namespace undersheet::paper {
namespace {

constexpr std::string_view kBox = "\xE2\x96\xA1"; // □

bool is_unseen(char32_t c) {
    return (c >= 0x200B && c <= 0x200F) || c == 0x2068 || c == 0x2069 || (c >= 0xFE00 && c <= 0xFE0F);
}

// Blanks of every width, where the typeface has none of its own.
bool is_blank(char32_t c) {
    return c == 0x00A0 || (c >= 0x2000 && c <= 0x200A) || c == 0x202F || c == 0x205F;
}

} // namespace

std::string PdfSetter::printable(std::string_view text) {
    std::string out;
    while (!text.empty()) {
        const Character c = take_character(text);
        if (is_unseen(c.code)) continue;
        const bool is_clean = clean(c.bytes) == c.bytes && !has_right_to_left(c.bytes);
        if (c.code == '\n' || (is_clean && pdf::font(pdf::Face::regular).draws(c.code))) {
            out += c.bytes;
        } else if (is_blank(c.code)) {
            out += ' ';
        } else {
            out += kBox;
            missing.insert(c.code);
        }
    }
    return out;
}

std::vector<pdf::Run> PdfSetter::runs(const Text& text, const style::Look& look) {
    std::vector<pdf::Run> all;
    for (const Run& run : text.runs) {
        const bool is_struck = run.weight == Weight::struck;
        all.push_back({printable(run.text), run.weight == Weight::strong ? pdf::Face::bold : look.face,
                       is_struck ? std::max(look.grey, style::kQuiet) : look.grey, is_struck});
    }
    return all;
}

pdf::Strips PdfSetter::lines(const Text& text, const style::Look& look, double width_pt, pdf::Align align) {
    return pdf::set_lines(runs(text, look), look.style, width_pt, align);
}

std::optional<std::size_t> PdfSetter::picture_of(const Photograph& photograph) {
    if (const auto found = kept_.find(photograph.hash); found != kept_.end()) return found->second;
    auto picture = pdf::read_picture(photograph.bytes);
    if (!picture) return std::nullopt;
    pictures.push_back(*std::move(picture));
    kept_.emplace(photograph.hash, pictures.size() - 1);
    return pictures.size() - 1;
}

pdf::Strips kept_together(pdf::Strips strips) {
    if (strips.empty() || height_of(strips) > style::kMostWhole_pt) return strips;
    return {joined(strips)};
}

void PdfSetter::add(pdf::Strips strips, double before_pt) {
    pdf::Group group;
    group.is_whole = height_of(strips) <= style::kMostWhole_pt;
    group.strips = std::move(strips);
    group.before_pt = before_pt;
    add(std::move(group));
}

} // namespace undersheet::paper
