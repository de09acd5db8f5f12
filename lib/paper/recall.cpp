#include "paper/recall.h"

#include "base/text.h"
#include "paper/frame.h"
#include "paper/said.h"

#include <algorithm>

namespace undersheet::paper {
namespace {

using job::BatchFound;
using Some = std::vector<BatchFound> job::BatchesOn::*;

class Recall {
public:
    Recall(const RecallAsked& asked, const Setting& setting, const entry::Time& as_of)
        : asked_(asked), setting_(setting), words_(setting.words), paper_(head_of(as_of)) {}

    Document written() {
        add_verdict();
        add_what_was_asked();
        add_roofs("section.certain", &job::BatchesOn::certain, "recall.none_certain");
        add_roofs("section.not_ruled_out", &job::BatchesOn::open, "recall.none_open");
        add_lines("section.nearly", &job::BatchesOn::nearly, "recall.none_nearly");
        add_lines("section.unused", &job::BatchesOn::unused, "recall.none_unused");
        return std::move(paper_);
    }

private:
    static const job::Job& none() {
        static const job::Job kNone = [] {
            job::Job made;
            made.entries = std::make_shared<const job::EntryList>();
            return made;
        }();
        return kNone;
    }

    // The firm's own: no customer and no job stands at its head.
    Document head_of(const entry::Time& as_of) const {
        const job::Job& any = asked_.roofs.empty() ? none() : *asked_.roofs.front().job;
        Document paper = framed(words_.say("recall.name", {{"batch", asked_.wanted.batch}}), any, setting_);
        paper.head.job = paper.head.roof = paper.head.customer = paper.head.customer_address = "";
        paper.head.date = words_.date(entry::date_of(as_of));
        std::vector<entry::Hash> names;
        for (const RoofAsked& roof : asked_.roofs)
            for (const entry::Entry& entry : *roof.job->entries) names.push_back(entry.hash);
        paper.foot.check_value = entry::hash_text(entry::digest_of(names));
        return paper;
    }

    [[nodiscard]] std::size_t count_of(Some some) const {
        return static_cast<std::size_t>(
            std::count_if(asked_.roofs.begin(), asked_.roofs.end(),
                          [&](const RoofAsked& roof) { return !(roof.batches.*some).empty(); }));
    }

    void add_verdict() {
        const std::size_t open = count_of(&job::BatchesOn::open);
        paper_.add(Verdict{words_.count("recall.certain", count_of(&job::BatchesOn::certain)) + " " +
                           (open == 0 ? words_.say("recall.none_more") : words_.count("recall.open", open))});
    }

    // Whatever it is asked of, a product and a part are called the same.
    [[nodiscard]] Said said_of(const job::Job& job) const { return {job, words_, setting_.kinds}; }
    [[nodiscard]] std::string product_words(const std::string& product) const {
        return said_of(none()).choice("product", product);
    }

    void add_what_was_asked() {
        const auto day = [&](const std::optional<entry::Date>& date, const char* open_key) {
            return date ? words_.date(*date) : words_.say(open_key);
        };
        Facts facts;
        if (!asked_.notice.empty()) facts.rows.push_back({words_.say("recall.notice"), asked_.notice});
        facts.rows.push_back({words_.say("recall.batch"), asked_.wanted.batch});
        if (!asked_.wanted.product.empty())
            facts.rows.push_back({words_.say("recall.product"), product_words(asked_.wanted.product)});
        facts.rows.push_back({words_.say("recall.window"),
                              words_.say("recall.from_to", {{"from", day(asked_.wanted.from, "recall.ever")},
                                                            {"to", day(asked_.wanted.to, "recall.today")}})});
        facts.rows.push_back({words_.say("recall.asked"), std::to_string(asked_.roofs.size())});
        paper_.add(std::move(facts));
        paper_.paragraph(words_.say("recall.how"));
    }

    // "deck adhesive, printed da 77: section 1, section 2; 4.5 l"
    [[nodiscard]] std::string found_words(const BatchFound& found) const {
        std::vector<std::string> parts;
        for (const std::string& part : found.parts) parts.push_back(said_of(none()).part(part));
        std::string words = words_.say(found.printed.empty() ? "recall.no_label" : "recall.printed",
                                       {{"product", product_words(found.product)}, {"batch", found.printed}});
        if (!parts.empty()) words += ": " + joined(parts, ", ");
        if (found.amount_l)
            words += "; " + words_.say("recall.amount", {{"n", words_.number(*found.amount_l, 2)}});
        return words + " (" + entry::short_name(found.entry->hash) + ")";
    }

    void add_fact(Item& item, const char* key, const std::string& value) const {
        if (!value.empty()) item.facts.push_back({words_.say(key), value});
    }

    // When somebody came because of a recall.
    [[nodiscard]] std::string visits(const job::Job& job) const {
        std::vector<std::string> days;
        for (const job::Supplement& supplement : job.supplements)
            if (supplement.why == "recall")
                days.push_back(words_.say(
                    "recall.visit",
                    {{"n", supplement.name}, {"day", words_.date(entry::date_of(supplement.opened->when))}}));
        return joined(days, ", ");
    }

    [[nodiscard]] std::string told_on(const job::Job& job) const {
        std::vector<std::string> days;
        for (const job::Supplement& supplement : job.supplements)
            if (const auto day = entry::parse_date(supplement.opened->data.text_of("told_on")))
                days.push_back(words_.date(*day));
        return joined(days, ", ");
    }

    Item item_of(const RoofAsked& roof, const std::vector<BatchFound>& found) const {
        const job::Job& job = *roof.job;
        Item item;
        item.number = job.ref;
        item.standing = job.roof_name;
        std::vector<std::string> lines;
        for (const BatchFound& one : found) lines.push_back(found_words(one));
        item.what = joined(lines, "; ");
        add_fact(item, "head.customer", words_.held(job.personal("site", "customer")));
        add_fact(item, "head.address", words_.held(job.personal("site", "address")));
        add_fact(item, "recall.phone",
                 joined_known({words_.held(job.personal("site", "phone")),
                               words_.held(job.personal("site", "email"))}));
        const std::string told = told_on(job), came = visits(job);
        add_fact(item, "recall.told_on", told.empty() ? words_.say("recall.not_yet") : told);
        add_fact(item, "recall.visited_on", came.empty() ? words_.say("recall.not_yet") : came);
        return item;
    }

    static std::string joined_known(std::vector<std::string> pieces) {
        std::erase(pieces, "");
        return joined(pieces, ", ");
    }

    void add_roofs(const char* heading, Some some, const char* none) {
        paper_.heading(words_.say(heading));
        for (const RoofAsked& roof : asked_.roofs)
            if (!(roof.batches.*some).empty()) paper_.add(item_of(roof, roof.batches.*some));
        if (count_of(some) == 0) paper_.paragraph(words_.say(none));
    }

    void add_lines(const char* heading, Some some, const char* none) {
        paper_.heading(words_.say(heading));
        Listing listing;
        for (const RoofAsked& roof : asked_.roofs)
            for (const BatchFound& found : roof.batches.*some)
                listing.points.emplace_back(
                    words_.say("recall.on", {{"job", roof.job->ref}, {"found", found_words(found)}}));
        if (listing.points.empty()) return void(paper_.paragraph(words_.say(none)));
        paper_.add(std::move(listing));
    }

    const RecallAsked& asked_;
    const Setting& setting_;
    const Words& words_;
    Document paper_;
};

} // namespace

Document recall(const RecallAsked& asked, const Setting& setting, const entry::Time& as_of) {
    return Recall(asked, setting, as_of).written();
}

} // namespace undersheet::paper
