// The head of the first page and the foot of the last, as html.cpp has them.
#include "base/text.h"
#include "paper/head.h"
#include "paper/pdf_setter.h"
#include "pdf/objects.h"

namespace undersheet::paper {

using namespace style;

namespace {

// Facts in two columns, down the first and then down the second.
pdf::Strips head_fact_strips(PdfSetter& setter, const std::vector<Fact>& facts) {
    constexpr double kHalf_pt = (kWidth_pt - 2 * kColumnGap_pt) / 2;
    const auto middle = facts.begin() + static_cast<std::ptrdiff_t>((facts.size() + 1) / 2);
    return pdf::beside(
        {{0, fact_strips(setter, {facts.begin(), middle}, kHalf_pt, kHeadName_pt)},
         {kHalf_pt + 2 * kColumnGap_pt, fact_strips(setter, {middle, facts.end()}, kHalf_pt, kHeadName_pt)}},
        kMostWhole_pt);
}

std::string characters_named(const std::set<char32_t>& all) {
    std::vector<std::string> names;
    for (const char32_t code : all) {
        const auto value = static_cast<unsigned>(code);
        std::string high = value > 0xFFFF ? pdf::hex4(value >> 16U) : "";
        high.erase(0, high.find_first_not_of('0'));
        names.push_back("U+" + high + pdf::hex4(value & 0xFFFFU));
    }
    return joined(names, ", ");
}

} // namespace

void set_head(PdfSetter& setter, const Head& head) {
    constexpr double kName_pt = kWidth_pt * 0.56, kFirm_pt = kWidth_pt - kName_pt - kColumnGap_pt;
    pdf::Strips firm = setter.lines(head.firm, {kBody.style, pdf::Face::bold}, kFirm_pt, pdf::Align::right);
    for (const std::string* line : {&head.firm_address, &head.firm_phone})
        pdf::add(firm, setter.lines(*line, kQuietBody, kFirm_pt, pdf::Align::right));
    // The firm comes first for whoever copies the text or has it read aloud, as in HTML.
    setter.add(pdf::beside({{kName_pt + kColumnGap_pt, std::move(firm)},
                            {0, setter.lines(head.name, kName, kName_pt)}},
                           kMostWhole_pt),
               0);
    setter.add(head_fact_strips(setter, head_facts(head, setter.words)), 10);
}

void set_foot(PdfSetter& setter, const Foot& foot) {
    pdf::Strips strips{pdf::gap(5)};
    strips.back().marks.emplace_back(pdf::rule(0, kWidth_pt, 0, kHair_pt, kQuiet));
    for (const std::string& caution : foot.cautions)
        pdf::add(strips, setter.lines(caution, kSmall, kWidth_pt));
    strips.push_back(pdf::gap(2));
    for (const std::string* line : {&foot.standing, &foot.made_with})
        pdf::add(strips, setter.lines(*line, kSmall, kWidth_pt));
    if (!foot.check_value.empty())
        pdf::add(strips, setter.lines(setter.words.say("foot.check_value") + ": " + foot.check_value, kSmall,
                                      kWidth_pt));
    if (!setter.missing.empty())
        pdf::add(strips, setter.lines(setter.words.say("pdf.not_drawn",
                                                       {{"characters", characters_named(setter.missing)}}),
                                      kMissing, kWidth_pt));
    pdf::Group group;
    group.is_whole = height_of(strips) <= kMostWhole_pt;
    group.strips = std::move(strips);
    group.before_pt = 18;
    group.sinks = group.is_whole;
    setter.add(std::move(group));
}

} // namespace undersheet::paper
