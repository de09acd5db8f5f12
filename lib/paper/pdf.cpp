#include "paper/pdf.h"

#include "paper/head.h"
#include "paper/pdf_setter.h"
#include "pdf/write.h"

#include <utility>

namespace undersheet::paper {

using namespace style;

namespace {

// "Deck inspection, HF-12", as the title of the HTML page.
std::string name_of(const Head& head) { return head.job.empty() ? head.name : head.name + ", " + head.job; }

void set_blocks(PdfSetter& setter, const std::vector<Block>& blocks) {
    std::vector<const Signature*> signatures; // those one after the other are set side by side
    for (const Block& block : blocks) {
        if (const auto* signature = std::get_if<Signature>(&block)) {
            signatures.push_back(signature);
            continue;
        }
        set_signatures(setter, std::exchange(signatures, {}));
        set_block(setter, block);
    }
    set_signatures(setter, signatures);
}

// As much of a name as a running line holds.
std::string shortened(const std::string& text, double width_pt) {
    const auto lines = pdf::broken({{text}}, kSmall.style.size_pt, width_pt);
    if (lines.empty()) return {};
    std::string out;
    for (const pdf::Run& run : lines.front().runs) out += run.text;
    return lines.size() == 1 ? out : out + "...";
}

void put(pdf::Page& page, const std::string& text, double down_pt, bool is_right) {
    const double wide_pt = pdf::font(kSmall.face).width_pt(text, kSmall.style.size_pt);
    const double left_pt = is_right ? kPageWidth_pt - kSide_pt - wide_pt : kSide_pt;
    page.marks.emplace_back(
        pdf::Letters{{left_pt, down_pt}, text, kSmall.face, kSmall.style.size_pt, kSmall.grey});
}

// Whose it is and of which roof, on every page but the first, which has it in large; which paper and which page, on all.
void add_running_lines(pdf::File& file, PdfSetter& setter, const Head& head) {
    const double half_pt = kWidth_pt / 2 - 3 * kColumnGap_pt;
    const std::string name = shortened(setter.printable(name_of(head)), half_pt);
    const std::string firm = shortened(setter.printable(head.firm), half_pt);
    const std::string roof = shortened(setter.printable(head.roof), half_pt);
    const std::string of = setter.words.say("page.before_total") + std::to_string(file.pages.size());
    for (std::size_t i = 0; i < file.pages.size(); ++i) {
        pdf::Page& page = file.pages[i];
        if (i > 0) {
            put(page, firm, kRunningHead_pt, false);
            put(page, roof, kRunningHead_pt, true);
            page.marks.emplace_back(pdf::rule(kSide_pt, kPageWidth_pt - kSide_pt,
                                              kRunningHead_pt + kSmall.style.size_pt / 2, kHair_pt, kLine));
        }
        put(page, name, kRunningFoot_pt, false);
        put(page, setter.words.say("page.before_number") + std::to_string(i + 1) + of, kRunningFoot_pt, true);
    }
}

} // namespace

pdf::File pdf_pages(const Document& document, const Words& words) {
    PdfSetter setter(words);
    set_head(setter, document.head);
    set_blocks(setter, document.blocks);
    set_foot(setter, document.foot);

    pdf::Flowed laid = pdf::flowed(setter.story, {kSide_pt, kTop_pt, kHeight_pt});
    pdf::File file{kPageWidth_pt, kPageHeight_pt, std::move(laid.pages), std::move(laid.bookmarks)};
    add_running_lines(file, setter, document.head);
    file.pictures = std::move(setter.pictures);
    file.title = name_of(document.head);
    file.author = document.head.firm;
    file.subject = document.head.roof;
    file.language = document.language;
    return file;
}

std::string render_pdf(const Document& document, const Words& words) {
    return pdf::write(pdf_pages(document, words));
}

} // namespace undersheet::paper
