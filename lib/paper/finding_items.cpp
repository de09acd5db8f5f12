#include "paper/finding_items.h"

#include "base/text.h"
#include "job/queries.h"

#include <algorithm>
#include <array>

namespace undersheet::paper {

namespace {

using job::Finding;

// What is judged by these kinds passes, or is about the work: it says nothing of whether the deck is fit.
constexpr std::array<std::string_view, 5> kPassing{"air", "day", "work", "punch", "use"};

std::string_view kind_of(const Making& making, const Finding& finding) {
    const method::Rule* rule = making.setting.method.rule(finding.rule);
    return rule == nullptr ? std::string_view() : std::string_view(rule->kind);
}

bool is_about_deck(const Making& making, const Finding& finding) {
    return std::find(kPassing.begin(), kPassing.end(), kind_of(making, finding)) == kPassing.end();
}

void add_fact(std::vector<Fact>& facts, std::string name, std::string value) {
    if (!value.empty()) facts.push_back({std::move(name), std::move(value)});
}

// As the punch list says it.
std::string holds(const Making& making, const Finding& finding) {
    for (const job::PunchRow& row : making.punch)
        if (row.number == finding.id) return making.holds(row);
    return {};
}

std::string where(const Making& making, const Finding& finding) {
    if (!finding.label.empty() && !finding.place.empty() && finding.label != finding.place)
        return finding.label + ", " + making.said.place(finding.place);
    return finding.place.empty() ? making.said.called(finding.says_as, finding.label)
                                 : making.said.place(finding.place);
}

std::string not_looked_line(const Making& making, const job::NotLooked& one) {
    if (one.reading == nullptr)
        return making.say("not_looked.kind", {{"kind", making.words.text(one.kind->heading)}});
    const std::string spot = making.said.spot(*one.reading);
    return making.say(spot.empty() ? "not_looked.field" : "not_looked.field_at",
                      {{"kind", making.words.text(one.kind->heading)},
                       {"spot", spot},
                       {"field", making.said.label(one.kind->name, one.field)},
                       {"answer", making.said.value(*one.reading, one.field)}});
}

} // namespace

std::vector<const Finding*> numbered(const Making& making) {
    std::vector<const Finding*> found;
    for (const Finding& finding : making.judgement.findings)
        if (is_about_deck(making, finding)) found.push_back(&finding);
    std::stable_sort(found.begin(), found.end(),
                     [](const Finding* a, const Finding* b) { return a->severity > b->severity; });
    return found;
}

namespace {

bool is_part_of_a_word(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
           static_cast<unsigned char>(c) >= 0x80;
}

// Where `word` stands by itself: the corner C is not the C of "Cold".
std::string word_replaced(std::string text, std::string_view word, std::string_view by) {
    for (std::size_t at = text.find(word); at != std::string::npos; at = text.find(word, at)) {
        const std::size_t end = at + word.size();
        const bool alone = (at == 0 || !is_part_of_a_word(text[at - 1])) &&
                           (end == text.size() || !is_part_of_a_word(text[end]));
        if (alone) text.replace(at, word.size(), by);
        at += alone ? by.size() : word.size();
    }
    return text;
}

} // namespace

std::string plain_says(const Making& making, const Finding& finding) {
    const std::string says = making.said.again(finding.says_as);
    if (finding.place.empty()) return says;
    const std::string at = making.said.again(job::place_worded(finding.place));
    return word_replaced(says, at, making.said.place(finding.place));
}

void add_passing(Making& making, std::string_view kind) {
    Listing listing;
    for (const Finding& finding : making.judgement.findings)
        if (kind_of(making, finding) == kind)
            listing.points.push_back(Text()
                                         .add(making.severity(finding.severity), Weight::strong)
                                         .add(": " + making.said.again(finding.says_as)));
    if (!listing.points.empty()) making.paper.add(std::move(listing));
}

std::string source_words(const Making& making, const Finding& finding) {
    if (finding.mark != "G" && finding.mark != "M")
        return making.words.text(finding.source); // a practice says so itself
    return making.say("finding.source", {{"source", making.words.text(finding.source)},
                                         {"mark", making.say("mark." + finding.mark)}});
}

Item finding_item(const Making& making, const Finding& finding, std::string number) {
    Item item{
        std::move(number), making.severity(finding.severity), making.said.again(finding.says_as), {}, {}};
    add_fact(item.facts, making.say("finding.place"), where(making, finding));
    add_fact(item.facts, making.say("finding.limit_from"), source_words(making, finding));
    add_fact(item.facts, making.say("finding.clears"), making.said.again(finding.clears_as));
    std::vector<std::string> entries;
    for (const entry::Entry* entry : finding.entries) entries.push_back(entry::short_name(entry->hash));
    add_fact(item.facts, making.say("column.entry"), joined(entries, ", "));
    add_fact(item.facts, making.say("punch.holds"), holds(making, finding));
    if (finding.near) item.facts.push_back({making.say("finding.near"), making.say("finding.near_says")});
    if (finding.reason != nullptr)
        add_fact(item.facts, making.say("finding.reason"),
                 finding.reason->text + " (" + making.by(finding.reason->entry) + ")");
    if (finding.told != nullptr)
        add_fact(item.facts, making.say("finding.told"),
                 finding.told->text + ", " + making.when(finding.told->entry));
    item.pictures = making.photographs(job::photos_of(making.job, finding));
    return item;
}

void add_departures(Making& making) {
    if (making.judgement.departures.empty()) return making.sentence("departures.none");
    int number = 0;
    for (const Finding& finding : making.judgement.departures) {
        const job::Decision& decision = *finding.decided;
        Item item{std::to_string(++number),
                  making.say("departures.let_go"),
                  making.said.again(finding.says_as),
                  {},
                  {}};
        add_fact(item.facts, making.say("departures.decided_by"),
                 making.say("departures.who", {{"who", making.words.held(decision.decider)},
                                               {"role", making.said.choice("role", decision.role)}}));
        add_fact(item.facts, making.say("departures.why"), decision.why);
        add_fact(item.facts, making.say("finding.limit_from"), source_words(making, finding));
        add_fact(item.facts, making.say("departures.written_by"), making.by(decision.entry));
        making.paper.add(std::move(item));
    }
}

void add_not_looked(Making& making) {
    making.heading("section.not_looked");
    Listing listing;
    for (const job::NotLooked& one : job::not_looked(making.job, making.setting.method, making.setting.kinds))
        listing.points.emplace_back(not_looked_line(making, one));
    if (listing.points.empty()) return making.sentence("not_looked.none");
    making.paper.add(std::move(listing));
}

} // namespace undersheet::paper
