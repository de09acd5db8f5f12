#include "paper/text.h"

#include "paper/clean.h"
#include "paper/head.h"
#include "paper/text_layout.h"

#include <algorithm>

namespace undersheet::paper {

namespace {

constexpr std::size_t kHashShown = 8;     // as entries and photographs are named to people everywhere
constexpr std::size_t kLongestName = 24;  // a fact with a longer name is not lined up with its neighbours
constexpr std::size_t kLongestNumber = 6; // an item with a longer one has it on a line of its own

std::string underlined(std::string_view text, char with) {
    std::string out;
    std::size_t widest = 0;
    for (const std::string& line : wrapped(clean(text), kPageColumns)) {
        widest = std::max(widest, columns(line));
        out += line + "\n";
    }
    return out + std::string(widest, with) + "\n";
}

std::string paragraph(std::string_view text) { return text.empty() ? "" : set_in("", clean(text)); }

std::string fact_lines(const std::vector<Fact>& facts, const std::string& before = "") {
    std::size_t room = 0;
    for (const Fact& fact : facts)
        if (columns(clean(fact.name)) <= kLongestName) room = std::max(room, columns(clean(fact.name)));
    std::string out;
    for (const Fact& fact : facts) {
        const std::string name = clean(fact.name);
        const std::size_t wide = columns(name);
        out += wide <= room
                   ? set_in(before + name + std::string(room - wide + 2, ' '), plain_words(fact.value))
                   : set_in(before, name + ": " + plain_words(fact.value));
    }
    return out;
}

// "1. " and what it says beside it, or a long number on its own line.
std::string numbered(const Item& item, const std::string& before) {
    const std::string standing = item.standing.empty() ? "" : clean(item.standing) + ": ";
    const std::string says = standing + plain_words(item.what);
    if (item.number.empty()) return set_in("- ", says);
    const std::string number = clean(item.number) + ".";
    if (columns(number) + 1 == before.size()) return set_in(number + " ", says);
    return set_in("", number) + set_in(before, says);
}

struct TextBlock {
    const Words& words;

    std::string operator()(const Heading& heading) const {
        return underlined(heading.text, heading.level <= 2 ? '-' : '.');
    }
    std::string operator()(const Verdict& verdict) const { return set_in("", plain_words(verdict.text)); }
    std::string operator()(const Paragraph& said) const { return set_in("", plain_words(said.text)); }
    std::string operator()(const Listing& listing) const {
        std::string out;
        for (const Text& point : listing.points) out += set_in("- ", plain_words(point));
        return out;
    }
    std::string operator()(const Facts& facts) const { return fact_lines(facts.rows); }
    std::string operator()(const Table& table) const {
        return (table.caption.empty() ? "" : paragraph(table.caption) + "\n") + table_lines(table);
    }
    std::string operator()(const Drawing& drawing) const {
        std::string out;
        for (const std::string& line : drawing.words) out += set_in("  ", clean(line));
        return out;
    }
    std::string operator()(const Photographs& photographs) const {
        return pictures(photographs.pictures, "");
    }
    std::string operator()(const Item& item) const {
        const std::size_t number = columns(clean(item.number));
        const std::string before(number == 0 || number > kLongestNumber ? 2 : number + 2, ' ');
        return numbered(item, before) + fact_lines(item.facts, before) + pictures(item.pictures, before);
    }
    std::string operator()(const Signature& signature) const;
    std::string operator()(const PageBreak&) const { return {}; }

private:
    [[nodiscard]] std::string pictures(const std::vector<Photograph>& taken, std::string_view before) const {
        std::string out;
        for (const Photograph& photograph : taken)
            out += set_in(before, words.say("photograph.in_words",
                                            {{"caption", clean(photograph.caption)},
                                             {"hash", clean(photograph.hash.substr(0, kHashShown))}}));
        return out;
    }
};

std::string TextBlock::operator()(const Signature& signature) const {
    const std::string name = signature.name.empty() ? std::string(30, '_') : signature.name;
    std::string line = clean(signature.meaning) + ": " + clean(name);
    for (const std::string* more : {&signature.role, &signature.when, &signature.note})
        if (!more->empty()) line += ", " + clean(*more);
    return set_in("", signature.weight == Weight::struck ? "~" + line + "~" : line);
}

std::string head_lines(const Head& head, const Words& words) {
    std::string out;
    for (const std::string* line : {&head.firm, &head.firm_address, &head.firm_phone})
        out += paragraph(*line);
    out += "\n" + underlined(head.name, '=');
    return out + fact_lines(head_facts(head, words));
}

std::string foot_lines(const Foot& foot, const Words& words) {
    std::string out = std::string(kPageColumns, '-') + "\n";
    for (const std::string& caution : foot.cautions) out += set_in("- ", clean(caution));
    out += paragraph(foot.standing) + paragraph(foot.made_with);
    if (!foot.check_value.empty()) out += paragraph(words.say("foot.check_value") + ":\n" + foot.check_value);
    return out;
}

} // namespace

std::string render_text(const Document& document, const Words& words) {
    std::string out = head_lines(document.head, words);
    for (const Block& block : document.blocks) {
        const std::string lines = std::visit(TextBlock{words}, block);
        if (!lines.empty()) out += "\n" + lines;
    }
    return out + "\n" + foot_lines(document.foot, words);
}

} // namespace undersheet::paper
