#include "paper/pdf_setter.h"

#include <algorithm>

namespace undersheet::paper {

using namespace style;

namespace {

// The first and the last two lines of a paragraph stay together: a single line on a page looks lost.
pdf::Strips without_lost_lines(pdf::Strips lines) {
    if (lines.size() < 4) return lines.empty() ? lines : pdf::Strips{joined(lines)};
    const pdf::Strips first(lines.begin(), lines.begin() + 2), last(lines.end() - 2, lines.end());
    pdf::Strips all{joined(first)};
    all.insert(all.end(), lines.begin() + 2, lines.end() - 2);
    all.push_back(joined(last));
    return all;
}

pdf::Strips parting_line(double air_pt) {
    pdf::Strip strip = pdf::gap(air_pt);
    strip.marks.emplace_back(pdf::rule(0, kWidth_pt, 0, kHair_pt, kLine));
    return {std::move(strip)};
}

struct BlockSetter {
    PdfSetter& setter;

    void operator()(const Heading& heading) const;
    void operator()(const Verdict& verdict) const { running(verdict.text, kVerdict, 9); }
    void operator()(const Paragraph& said) const { running(said.text, kBody, kBlock_pt, said.keeps_next); }
    void operator()(const Listing& listing) const;
    void operator()(const Facts& facts) const;
    void operator()(const Table& table) const { set_table(setter, table); }
    void operator()(const Drawing& drawing) const { set_drawing(setter, drawing); }
    void operator()(const Photographs& photographs) const {
        // Two are shown larger than three.
        const std::size_t across = photographs.pictures.size() <= 2 ? 2 : 3;
        setter.add(picture_strips(setter, photographs.pictures, across), 8);
    }
    void operator()(const Item& item) const;
    void operator()(const Signature& signature) const { set_signatures(setter, {&signature}); }
    void operator()(const PageBreak&) const {
        pdf::Group overleaf;
        overleaf.starts_page = true;
        setter.add(std::move(overleaf));
    }

private:
    void running(const Text& text, const Look& look, double before_pt, bool keeps_next = false) const {
        pdf::Group group;
        group.strips = without_lost_lines(setter.lines(text, look, kWidth_pt));
        group.before_pt = before_pt;
        group.is_whole = false;
        group.keeps_next = keeps_next;
        setter.add(std::move(group));
    }
};

void BlockSetter::operator()(const Heading& heading) const {
    const bool is_main = heading.level <= 2;
    pdf::Group group;
    if (is_main) group.lead = parting_line(5);
    group.strips = kept_together(setter.lines(heading.text, is_main ? kHeading : kSubheading, kWidth_pt));
    group.before_pt = is_main ? 14 : 9;
    group.keeps_next = true;
    group.level = is_main ? 1 : 2;
    group.title = setter.printable(heading.text);
    setter.add(std::move(group));
}

void BlockSetter::operator()(const Listing& listing) const {
    constexpr double kPoint_pt = 2.2;
    double before_pt = kBlock_pt;
    for (const Text& point : listing.points) {
        pdf::Strips lines = without_lost_lines(setter.lines(point, kBody, kWidth_pt - kIndent_pt));
        if (lines.empty()) continue;
        for (pdf::Strip& strip : lines)
            for (pdf::Mark& mark : strip.marks) mark = moved(mark, kIndent_pt, 0);
        const double y = kBody.style.leading_pt / 2 - kPoint_pt / 2 + 0.4;
        lines.front().marks.emplace_back(
            pdf::Path{{{2, y}, {2 + kPoint_pt, y}, {2 + kPoint_pt, y + kPoint_pt}, {2, y + kPoint_pt}},
                      true,
                      0,
                      false,
                      0,
                      true,
                      kQuiet});
        pdf::Group group{std::move(lines), before_pt};
        group.is_whole = false;
        setter.add(std::move(group));
        before_pt = 1.5;
    }
}

// Neither the first nor the last of them stands alone on a page.
void BlockSetter::operator()(const Facts& facts) const {
    const std::size_t count = facts.rows.size();
    for (std::size_t i = 0; i < count; ++i) {
        setter.add(fact_strips(setter, {facts.rows[i]}, kWidth_pt, kFactName_pt), i == 0 ? kBlock_pt : 1.2);
        setter.story.groups.back().keeps_next = i + 1 < count && (i == 0 || i + 2 == count);
    }
}

// "1. put right before covering: a head stands proud", then what belongs to it.
void BlockSetter::operator()(const Item& item) const {
    std::vector<pdf::Run> title;
    if (!item.number.empty()) title = setter.runs(item.number + ". ", kItem);
    if (!item.standing.empty())
        for (pdf::Run& run : setter.runs(item.standing + ": ", kStanding)) title.push_back(std::move(run));
    for (pdf::Run& run : setter.runs(item.what, kItem)) title.push_back(std::move(run));

    pdf::Strips top = pdf::set_lines(title, kItem.style, kWidth_pt);
    pdf::Strips facts = fact_strips(setter, item.facts, kWidth_pt, kFactName_pt);
    if (!facts.empty()) facts.insert(facts.begin(), pdf::gap(2));
    pdf::Strips shown = picture_strips(setter, item.pictures, 3);
    if (!shown.empty()) shown.insert(shown.begin(), pdf::gap(6));

    // The title stays with what it is about.
    pdf::Group group;
    pdf::add(top, std::move(facts));
    group.strips = kept_together(std::move(top));
    pdf::add(group.strips, std::move(shown));
    group.lead = parting_line(6);
    group.is_whole = height_of(group.strips) <= kMostWhole_pt;
    group.before_pt = 9;
    setter.add(std::move(group));
}

std::string beneath_signature(const Signature& signature) {
    std::string line = signature.role;
    for (const std::string* more : {&signature.when, &signature.note})
        if (!more->empty()) line += (line.empty() ? "" : ", ") + *more;
    return line;
}

// A line to sign on has room above it; one that is signed has its words right under it.
pdf::Strips signature_strips(PdfSetter& setter, const Signature& signature, double width_pt) {
    const bool waits = signature.name.empty();
    Text says = signature.meaning;
    if (!waits)
        says.add(": ").add(signature.name,
                           signature.weight == Weight::struck ? Weight::struck : Weight::strong);
    pdf::Strips strips{pdf::gap(waits ? kPenRoom_pt : 3)};
    strips.back().marks.emplace_back(pdf::rule(0, width_pt, waits ? kPenRoom_pt - 2 : 0, kPen_pt, kInk));
    pdf::add(strips, setter.lines(says, kBody, width_pt));
    pdf::add(strips, setter.lines(beneath_signature(signature), kSmall, width_pt));
    return strips;
}

} // namespace

pdf::Strips fact_strips(PdfSetter& setter, const std::vector<Fact>& facts, double width_pt, double name_pt) {
    pdf::Strips all;
    for (const Fact& fact : facts) {
        const double value_pt = name_pt + kColumnGap_pt;
        pdf::add(all, pdf::beside({{0, setter.lines(fact.name, kQuietBody, name_pt)},
                                   {value_pt, setter.lines(fact.value, kBody, width_pt - value_pt)}},
                                  kMostWhole_pt));
    }
    return all;
}

void set_block(PdfSetter& setter, const Block& block) { std::visit(BlockSetter{setter}, block); }

void set_signatures(PdfSetter& setter, const std::vector<const Signature*>& signatures) {
    constexpr std::size_t kAcross = 3;
    constexpr double kGap_pt = 18, kColumn_pt = (kWidth_pt - 2 * kGap_pt) / 3;
    for (std::size_t first = 0; first < signatures.size(); first += kAcross) {
        std::vector<pdf::Beside> columns;
        for (std::size_t i = first; i < std::min(first + kAcross, signatures.size()); ++i)
            columns.push_back({static_cast<double>(i - first) * (kColumn_pt + kGap_pt),
                               kept_together(signature_strips(setter, *signatures[i], kColumn_pt))});
        setter.add(pdf::beside(columns, kMostWhole_pt), 9);
    }
}

} // namespace undersheet::paper
