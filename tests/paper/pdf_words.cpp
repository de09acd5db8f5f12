#include "tests/paper/pdf_words.h"

#include "paper/pdf_style.h"

#include <algorithm>

namespace undersheet::test {

using namespace paper;

namespace {

constexpr double kDust_pt = 0.1;

struct Gatherer {
    std::vector<std::string>& all;

    void add(const std::string& text) const {
        if (!text.empty()) all.push_back(text);
    }
    void add(const Text& text) const {
        for (const Run& run : text.runs) add(run.text);
    }
    void add(const std::vector<Fact>& facts) const {
        for (const Fact& fact : facts) {
            add(fact.name);
            add(fact.value);
        }
    }
    void add(const std::vector<Photograph>& pictures) const {
        for (const Photograph& picture : pictures) add(picture.caption);
    }
    void operator()(const Heading& heading) const { add(heading.text); }
    void operator()(const Verdict& verdict) const { add(verdict.text); }
    void operator()(const Paragraph& said) const { add(said.text); }
    void operator()(const Facts& facts) const { add(facts.rows); }
    void operator()(const Photographs& photographs) const { add(photographs.pictures); }
    void operator()(const PageBreak&) const {}
    void operator()(const Listing& listing) const {
        for (const Text& point : listing.points) add(point);
    }
    void operator()(const Drawing& drawing) const {
        for (const std::string& line : drawing.words) add(line);
    }
    void operator()(const Table& table) const {
        add(table.caption);
        for (const Header& header : table.headers) add(header.text);
        for (const Row& row : table.rows) {
            for (const Text& cell : row.cells) add(cell);
            for (const Text& line : row.beneath) add(line);
        }
    }
    void operator()(const Item& item) const {
        add(item.number);
        add(item.standing);
        add(item.what);
        add(item.facts);
        add(item.pictures);
    }
    void operator()(const Signature& signature) const {
        for (const std::string* text :
             {&signature.meaning, &signature.name, &signature.role, &signature.when, &signature.note})
            add(*text);
    }
};

struct Edges {
    double left_pt, right_pt, top_pt, bottom_pt;
};

Edges edges_of(const pdf::Mark& mark) {
    if (const auto* letters = std::get_if<pdf::Letters>(&mark))
        return {letters->at.x_pt, letters->at.x_pt + width_pt(*letters),
                letters->at.y_pt - letters->size_pt * 0.75, letters->at.y_pt + letters->size_pt * 0.25};
    if (const auto* shown = std::get_if<pdf::Shown>(&mark))
        return {shown->corner.x_pt, shown->corner.x_pt + shown->width_pt, shown->corner.y_pt,
                shown->corner.y_pt + shown->height_pt};
    Edges edges{1e9, -1e9, 1e9, -1e9};
    for (const pdf::Point& at : std::get<pdf::Path>(mark).points)
        edges = {std::min(edges.left_pt, at.x_pt), std::max(edges.right_pt, at.x_pt),
                 std::min(edges.top_pt, at.y_pt), std::max(edges.bottom_pt, at.y_pt)};
    return edges;
}

} // namespace

std::vector<Placed> letters_of(const pdf::File& file) {
    std::vector<Placed> all;
    for (std::size_t page = 0; page < file.pages.size(); ++page)
        for (const pdf::Mark& mark : file.pages[page].marks)
            if (const auto* letters = std::get_if<pdf::Letters>(&mark)) all.push_back({page, *letters});
    return all;
}

double width_pt(const pdf::Letters& letters) {
    return pdf::font(letters.face).width_pt(letters.text, letters.size_pt);
}

std::string without_blanks(std::string_view text) {
    std::string out;
    for (const char c : text)
        if (c != ' ' && c != '\n') out += c;
    return out;
}

std::string words_on(const pdf::File& file) {
    std::string all;
    for (const Placed& placed : letters_of(file)) {
        const double y_pt = placed.letters.at.y_pt;
        if (y_pt > style::kTop_pt && y_pt < style::kTop_pt + style::kHeight_pt)
            all += without_blanks(placed.letters.text);
    }
    return all;
}

std::vector<std::string> texts_of(const paper::Document& document) {
    std::vector<std::string> all;
    const Gatherer gatherer{all};
    for (const Block& block : document.blocks) std::visit(gatherer, block);
    for (const std::string& caution : document.foot.cautions) gatherer.add(caution);
    for (const std::string* text :
         {&document.foot.standing, &document.foot.made_with, &document.foot.check_value})
        gatherer.add(*text);
    return all;
}

std::string off_the_page(const pdf::File& file) {
    for (std::size_t page = 0; page < file.pages.size(); ++page)
        for (const pdf::Mark& mark : file.pages[page].marks) {
            const Edges edges = edges_of(mark);
            const bool is_on = edges.left_pt >= style::kSide_pt - kDust_pt &&
                               edges.right_pt <= file.width_pt - style::kSide_pt + kDust_pt &&
                               edges.top_pt >= kDust_pt &&
                               edges.bottom_pt <= file.height_pt - style::kPt * 10;
            if (is_on) continue;
            const auto* letters = std::get_if<pdf::Letters>(&mark);
            return "page " + std::to_string(page + 1) + ": " +
                   (letters != nullptr ? letters->text : "a line or a picture");
        }
    return {};
}

} // namespace undersheet::test
