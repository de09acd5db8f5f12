#include "paper/html.h"

#include "paper/head.h"
#include "paper/html_style.h"
#include "paper/markup.h"
#include "paper/svg.h"

#include <algorithm>

namespace undersheet::paper {

namespace {

// A table with this many columns of words is set row under row on a narrow screen; others scroll sideways.
constexpr std::ptrdiff_t kWordsThatScroll = 2;

Markup running(const Text& text) {
    Markup out;
    for (const Run& run : text.runs) {
        switch (run.weight) {
        case Weight::plain:
            out.text(run.text);
            break;
        case Weight::strong:
            out.raw("<strong>").text(run.text).raw("</strong>");
            break;
        case Weight::struck:
            out.raw("<s>").text(run.text).raw("</s>");
            break;
        }
    }
    return out;
}

// Which way a text runs is for its first letter to say, but not for a name set apart (words.h) that begins a sentence of ours.
Literal direction(std::string_view text) {
    constexpr std::string_view kSetApart = "\xE2\x81\xA8"; // U+2068
    return text.starts_with(kSetApart) ? Literal("") : Literal(" dir=\"auto\"");
}

// A tag round a text of that direction.
Markup in_tag(Literal name, const Text& text) {
    return Markup()
        .raw("<")
        .raw(name)
        .raw(direction(text.words()))
        .raw(">")
        .add(running(text))
        .raw("</")
        .raw(name)
        .raw(">");
}

Markup facts_list(const std::vector<Fact>& facts) {
    Markup out;
    if (facts.empty()) return out;
    out.raw("<dl class=\"facts\">\n");
    for (const Fact& fact : facts)
        out.raw("<div><dt>").text(fact.name).raw("</dt>").add(in_tag("dd", fact.value)).raw("</div>\n");
    return out.raw("</dl>\n");
}

struct HtmlBlock {
    const Words& words;
    const std::string& under; // the heading above

    Markup operator()(const Heading& heading) const;
    Markup operator()(const Verdict& verdict) const {
        return Markup().raw("<p class=\"verdict\">").add(running(verdict.text)).raw("</p>\n");
    }
    Markup operator()(const Paragraph& said) const { return in_tag("p", said.text).raw("\n"); }
    Markup operator()(const Listing& listing) const;
    Markup operator()(const Facts& facts) const { return facts_list(facts.rows); }
    Markup operator()(const Table& table) const;
    Markup operator()(const Drawing& drawing) const;
    Markup operator()(const Photographs& photographs) const { return pictures(photographs.pictures); }
    Markup operator()(const Item& item) const;
    Markup operator()(const Signature& signature) const;
    Markup operator()(const PageBreak&) const { return Markup().raw("<div class=\"page-break\"></div>\n"); }

private:
    [[nodiscard]] Markup pictures(const std::vector<Photograph>& taken) const;
};

Markup HtmlBlock::operator()(const Heading& heading) const {
    return heading.level <= 2 ? Markup().raw("<h2>").text(heading.text).raw("</h2>\n")
                              : Markup().raw("<h3>").text(heading.text).raw("</h3>\n");
}

// What can be moved sideways can be reached by the keyboard too, and says what it is. A group and no region: a page may have many,
// and two of the same name.
Markup scrolling(Literal kind, const std::string& name) {
    Markup out;
    out.raw("<div class=\"").raw(kind).raw("\" tabindex=\"0\"");
    if (!name.empty()) out.raw(" role=\"group\"").attribute("aria-label", name);
    return out.raw(">\n");
}

Markup HtmlBlock::operator()(const Drawing& drawing) const {
    const bool is_small = drawing.width_mm <= kSmallDrawing_mm;
    return (is_small ? Markup().raw("<div class=\"small drawing\">\n")
                     : scrolling("scroll drawing", drawing.title))
        .add(svg(drawing))
        .raw("</div>\n");
}

Markup HtmlBlock::operator()(const Listing& listing) const {
    Markup out;
    if (listing.points.empty()) return out;
    out.raw("<ul>\n");
    for (const Text& point : listing.points) out.add(in_tag("li", point)).raw("\n");
    return out.raw("</ul>\n");
}

Markup picture(const Photograph& photograph) {
    Markup source;
    source.text(photograph.media_type).raw(";base64,").base64(photograph.bytes);
    return Markup()
        .raw("<img src=\"data:")
        .add(source)
        .raw("\"")
        .attribute("alt", photograph.caption)
        .raw(">");
}

Markup HtmlBlock::pictures(const std::vector<Photograph>& taken) const {
    Markup out;
    if (taken.empty()) return out;
    out.raw("<div class=\"pictures\">\n");
    for (const Photograph& photograph : taken) {
        out.raw("<figure>");
        if (!photograph.bytes.empty()) out.add(picture(photograph));
        out.raw("<figcaption").raw(direction(photograph.caption)).raw(">").text(photograph.caption);
        if (photograph.bytes.empty()) out.raw(" ").text(words.say("photograph.elsewhere"));
        out.raw("</figcaption></figure>\n");
    }
    return out.raw("</div>\n");
}

void open_cell(Markup& out, const Header& header, const Text& cell, bool is_first) {
    out.raw(is_first ? Literal("<th scope=\"row\"") : Literal("<td"));
    if (header.column == Column::figures)
        out.raw(" class=\"figures\"");
    else
        out.raw(" class=\"words\"").raw(direction(cell.words()));
    if (!is_first) out.attribute("data-header", header.text);
    out.raw(">");
}

void add_row(Markup& out, const Row& row, const std::vector<Header>& headers) {
    out.raw("<tr>");
    for (std::size_t i = 0; i < headers.size(); ++i) {
        const Text cell = i < row.cells.size() ? row.cells[i] : Text();
        open_cell(out, headers[i], cell, i == 0);
        out.add(running(cell));
        out.raw(i == 0 ? Literal("</th>") : Literal("</td>"));
    }
    out.raw("</tr>\n");
    if (row.beneath.empty()) return;
    out.raw("<tr class=\"beneath\"><td").attribute("colspan", std::to_string(headers.size())).raw(">");
    for (const Text& line : row.beneath) out.add(in_tag("p", line));
    out.raw("</td></tr>\n");
}

bool stacks(const Table& table) {
    const auto words = std::count_if(table.headers.begin(), table.headers.end(),
                                     [](const Header& header) { return header.column == Column::words; });
    return words > kWordsThatScroll;
}

Markup HtmlBlock::operator()(const Table& table) const {
    Markup out = scrolling("scroll", table.caption.empty() ? under : table.caption);
    out.raw(stacks(table) ? Literal("<table class=\"stacks\">\n") : Literal("<table>\n"));
    if (!table.caption.empty()) out.raw("<caption>").text(table.caption).raw("</caption>\n");
    out.raw("<thead><tr>");
    for (const Header& header : table.headers) {
        out.raw(header.column == Column::figures ? Literal("<th scope=\"col\" class=\"figures\">")
                                                 : Literal("<th scope=\"col\" class=\"words\">"));
        out.text(header.text).raw("</th>");
    }
    out.raw("</tr></thead>\n<tbody>\n");
    for (const Row& row : table.rows) add_row(out, row, table.headers);
    return out.raw("</tbody>\n</table>\n</div>\n");
}

Markup HtmlBlock::operator()(const Item& item) const {
    Markup out;
    out.raw("<section class=\"item\">\n<h3 dir=\"auto\">");
    if (!item.number.empty()) out.text(item.number).raw(". ");
    if (!item.standing.empty()) out.raw("<span class=\"standing\">").text(item.standing).raw(":</span> ");
    out.add(running(item.what)).raw("</h3>\n");
    return out.add(facts_list(item.facts)).add(pictures(item.pictures)).raw("</section>\n");
}

void add_line(Markup& out, std::string_view text) {
    if (!text.empty()) out.raw("<p class=\"quiet\">").text(text).raw("</p>");
}

Markup HtmlBlock::operator()(const Signature& signature) const {
    Markup out;
    if (signature.name.empty()) {
        out.raw("<div class=\"signature\"><p class=\"pen\">").text(signature.meaning).raw("</p>");
        add_line(out, signature.note);
        return out.raw("</div>\n");
    }
    out.raw("<div class=\"signature\"><p dir=\"auto\">").text(signature.meaning).raw(": ");
    Text name;
    name.add(signature.name, signature.weight == Weight::struck ? Weight::struck : Weight::strong);
    out.add(running(name)).raw("</p>");
    std::string line = signature.role;
    for (const std::string* more : {&signature.when, &signature.note})
        if (!more->empty()) line += (line.empty() ? "" : ", ") + *more;
    add_line(out, line);
    return out.raw("</div>\n");
}

void add_top(Markup& out, const Document& document, const Words& words) {
    const Head& head = document.head;
    const std::string name = head.job.empty() ? head.name : head.name + ", " + head.job;
    out.raw("<!DOCTYPE html>\n<html")
        .attribute("lang", document.language)
        .raw(">\n<head>\n<meta charset=\"utf-8\">\n");
    out.raw("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
            "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; img-src data:; "
            "style-src 'unsafe-inline'\">\n<title>");
    out.text(name).raw("</title>\n<style>").raw(style_sheet());
    out.raw("@page { @bottom-left { content: ").css_string(name);
    out.raw("; font: 8pt system-ui, sans-serif; } @bottom-right { content: ")
        .css_string(words.say("page.before_number"));
    out.raw(" counter(page) ").css_string(words.say("page.before_total"));
    out.raw(" counter(pages); font: 8pt system-ui, sans-serif; } }\n</style>\n</head>\n");
}

void add_head(Markup& out, const Head& head, const Words& words) {
    out.raw("<header>\n<div class=\"from\">\n");
    if (!head.firm.empty()) out.raw("<p class=\"firm\"><strong>").text(head.firm).raw("</strong></p>\n");
    for (const std::string* line : {&head.firm_address, &head.firm_phone})
        if (!line->empty()) out.raw("<p class=\"firm\">").text(*line).raw("</p>\n");
    out.raw("</div>\n<h1>").text(head.name).raw("</h1>\n");
    out.add(facts_list(head_facts(head, words))).raw("</header>\n");
}

void add_foot(Markup& out, const Foot& foot, const Words& words) {
    out.raw("<footer>\n");
    if (!foot.cautions.empty()) out.raw("<ul>\n");
    for (const std::string& caution : foot.cautions) out.raw("<li>").text(caution).raw("</li>\n");
    if (!foot.cautions.empty()) out.raw("</ul>\n");
    for (const std::string* line : {&foot.standing, &foot.made_with})
        if (!line->empty()) out.raw("<p>").text(*line).raw("</p>\n");
    if (!foot.check_value.empty()) {
        out.raw("<p>").text(words.say("foot.check_value"));
        out.raw(": <code>").text(foot.check_value).raw("</code></p>\n");
    }
    out.raw("</footer>\n");
}

} // namespace

std::string render_html(const Document& document, const Words& words) {
    Markup page;
    add_top(page, document, words);
    page.raw("<body>\n");
    add_head(page, document.head, words);
    page.raw("<main>\n");
    std::string under;
    for (const Block& block : document.blocks) {
        if (const auto* heading = std::get_if<Heading>(&block)) under = heading->text;
        page.add(std::visit(HtmlBlock{words, under}, block));
    }
    page.raw("</main>\n");
    add_foot(page, document.foot, words);
    return page.raw("</body>\n</html>\n").written();
}

} // namespace undersheet::paper
