// Lines, pictures and drawings on the pages of a PDF.
#include "paper/pdf.h"

#include "paper/pdf_style.h"
#include "tests/paper/pdf_words.h"

#include <catch2/catch.hpp>

using namespace undersheet;
using namespace undersheet::paper;

namespace {

// 2 by 1 points of grey: the smallest JPEG header that a reader believes, with a picture of no account behind it.
const std::string
    kJpeg("\xFF\xD8\xFF\xC0\x00\x0B\x08\x00\x01\x00\x02\x01\x01\x11\x00\xFF\xDA\x00\x08\x01\x01\x00\x00\x3F"
          "\x00\x7F\xFF\xD9",
          28);

pdf::File pages_of(std::vector<Block> blocks) {
    Document paper;
    paper.head.name = "Punch list";
    paper.blocks = std::move(blocks);
    return pdf_pages(paper, Words::english());
}

template <class Kind>
std::vector<Kind> all_of(const pdf::File& file) {
    std::vector<Kind> all;
    for (const pdf::Page& page : file.pages)
        for (const pdf::Mark& mark : page.marks)
            if (const auto* one = std::get_if<Kind>(&mark)) all.push_back(*one);
    return all;
}

Photograph photograph(char hash, std::string bytes) {
    return {std::string(64, hash), std::string("view ") + hash, "image/jpeg", std::move(bytes)};
}

} // namespace

TEST_CASE("a JPEG goes into the file as it came, once however often it is shown") {
    const Item item{"1", "", "a scuff", {}, {photograph('a', kJpeg)}};
    const pdf::File file = pages_of({item, Photographs{{photograph('a', kJpeg), photograph('b', kJpeg)}}});
    CHECK(file.pictures.size() == 2);
    CHECK(file.pictures.front().bytes == kJpeg);
    const auto shown = all_of<pdf::Shown>(file);
    REQUIRE(shown.size() == 3);
    CHECK(shown[1].corner.y_pt == Approx(shown[2].corner.y_pt)); // side by side
    CHECK(shown[1].corner.x_pt + shown[1].width_pt < shown[2].corner.x_pt);
    for (const auto& one : shown) CHECK(one.width_pt / one.height_pt == Approx(2));
}

TEST_CASE("a picture that cannot be drawn leaves its caption and says so") {
    const auto said = [](const std::string& bytes) {
        const pdf::File file = pages_of({Photographs{{photograph('c', bytes)}}});
        CHECK(file.pictures.empty());
        return test::words_on(file);
    };
    CHECK(said(kJpeg.substr(0, 20)).find("viewc(Thepictureiskeptwiththerecordandcannotbedrawn") !=
          std::string::npos);
    CHECK(said("GIF89a").find("cannotbedrawn") != std::string::npos);
    CHECK(said("").find("viewc(Thepictureiskeptwiththerecordandisnotathandhere.)") != std::string::npos);
}

TEST_CASE("what is struck has a line through it, what is strong is bold") {
    const pdf::File file =
        pages_of({Paragraph{Text("kept ").add("gone", Weight::struck).add(" firm", Weight::strong)}});
    const auto letters = all_of<pdf::Letters>(file);
    const auto gone = std::find_if(letters.begin(), letters.end(),
                                   [](const pdf::Letters& one) { return one.text == "gone"; });
    REQUIRE(gone != letters.end());
    const auto paths = all_of<pdf::Path>(file);
    CHECK(std::any_of(paths.begin(), paths.end(), [&](const pdf::Path& path) {
        return path.points.front().x_pt == Approx(gone->at.x_pt) &&
               path.points.back().x_pt == Approx(gone->at.x_pt + test::width_pt(*gone)) &&
               path.points.front().y_pt < gone->at.y_pt &&
               path.points.front().y_pt > gone->at.y_pt - gone->size_pt / 2;
    }));
    CHECK(std::any_of(letters.begin(), letters.end(), [](const pdf::Letters& one) {
        return one.face == pdf::Face::bold && one.text.find("firm") != std::string::npos;
    }));
}

TEST_CASE("a signature that waits has a line to sign on, with room above it") {
    const pdf::File file = pages_of({Paragraph{"Above."}, Signature{"Seen by the customer", ""}});
    const auto letters = all_of<pdf::Letters>(file);
    double above_pt = 0, meaning_pt = 0;
    for (const auto& one : letters) {
        if (one.text == "Above.") above_pt = one.at.y_pt;
        if (one.text == "Seen by the customer") meaning_pt = one.at.y_pt;
    }
    const auto paths = all_of<pdf::Path>(file);
    CHECK(std::any_of(paths.begin(), paths.end(), [&](const pdf::Path& path) {
        const double y_pt = path.points.front().y_pt;
        return y_pt > above_pt + 10 * style::kPt && y_pt < meaning_pt && path.line_pt > 0;
    }));
}

TEST_CASE("a drawing keeps its millimetres, and shrinks only when the page is too narrow") {
    const auto drawn = [](double width_mm) {
        Drawing drawing{"bars", width_mm, 40};
        drawing.line({0, 0}, {width_mm, 0}, Stroke::heavy).label({width_mm, 10}, "end", Anchor::end);
        const pdf::File file = pages_of({drawing});
        CHECK(test::off_the_page(file) == "");
        for (const auto& path : all_of<pdf::Path>(file))
            if (path.line_pt == Approx(0.7 * style::kPt))
                return (path.points.back().x_pt - path.points.front().x_pt) / style::kPt;
        return 0.0;
    };
    CHECK(drawn(100) == Approx(100));
    CHECK(drawn(352) == Approx(176));
}
