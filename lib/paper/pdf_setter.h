// What every block of a paper needs while it is set as PDF: the words, the pages so far, pictures, and which characters could not be drawn.
//
// Only the files pdf*.cpp include this.
#pragma once

#include "paper/document.h"
#include "paper/pdf_style.h"
#include "paper/words.h"
#include "pdf/flow.h"

#include <map>
#include <set>

namespace undersheet::paper {

class PdfSetter {
public:
    explicit PdfSetter(const Words& all_words) : words(all_words) {}

    // Only characters that the typeface has; others become □ and are remembered.
    [[nodiscard]] std::string printable(std::string_view text);
    [[nodiscard]] std::vector<pdf::Run> runs(const Text& text, const style::Look& look);
    [[nodiscard]] pdf::Strips lines(const Text& text, const style::Look& look, double width_pt,
                                    pdf::Align align = pdf::Align::left);
    // Where the picture stands among the pictures of the file; nothing when there is none or it cannot be drawn. A picture
    // that is shown twice is kept once.
    [[nodiscard]] std::optional<std::size_t> picture_of(const Photograph& photograph);

    void add(pdf::Strips strips, double before_pt = style::kBlock_pt);
    void add(pdf::Group group) { story.groups.push_back(std::move(group)); }

    const Words& words;
    pdf::Story story;
    std::vector<pdf::Picture> pictures;
    std::set<char32_t> missing;

private:
    std::map<std::string, std::size_t, std::less<>> kept_; // by SHA-256
};

// As one strip, unless it is too high for that.
[[nodiscard]] pdf::Strips kept_together(pdf::Strips strips);

// One function for each sort of block that takes more than a few lines; pdf_blocks.cpp, pdf_table.cpp, pdf_pictures.cpp.
[[nodiscard]] pdf::Strips fact_strips(PdfSetter& setter, const std::vector<Fact>& facts, double width_pt,
                                      double name_pt);
[[nodiscard]] pdf::Strips picture_strips(PdfSetter& setter, const std::vector<Photograph>& taken,
                                         std::size_t across);
void set_block(PdfSetter& setter, const Block& block); // any but a signature
void set_table(PdfSetter& setter, const Table& table);
void set_drawing(PdfSetter& setter, const Drawing& drawing);
void set_signatures(PdfSetter& setter, const std::vector<const Signature*>& signatures); // side by side
void set_head(PdfSetter& setter, const Head& head);
void set_foot(PdfSetter& setter, const Foot& foot);

} // namespace undersheet::paper
