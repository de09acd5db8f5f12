#include "paper/look.h"

#include "base/text.h"
#include "job/queries.h"
#include "job/supplements.h"
#include "paper/guarantee.h"
#include "paper/journal.h"
#include "paper/photographs.h"
#include "paper/plan.h"
#include "paper/receipt.h"
#include "paper/reminders.h"
#include "paper/stages.h"

#include <algorithm>

namespace undersheet::paper {
namespace {

using job::Reading;
using job::Supplement;

// A supplement's paper in the making.
struct Visit {
    Making& making;
    const Supplement& supplement;
    std::vector<const Reading*> looks = {};

    [[nodiscard]] bool has(const entry::Entry* entry) const {
        return entry != nullptr && entry->supplement == supplement.opened->hash;
    }
    // The last word on one field of the looks; "" when nobody said.
    [[nodiscard]] std::string last(std::string_view field) const {
        std::string said;
        for (const Reading* look : looks) {
            const std::string value = making.said.value(*look, field);
            if (!value.empty()) said = value;
        }
        return said;
    }
};

std::string why_words(const Making& making, const Supplement& supplement) {
    return making.said.choice("why", supplement.why);
}

std::optional<entry::Date> next_due(const Visit& visit) {
    std::optional<entry::Date> due;
    for (const Reading* look : visit.looks)
        if (const auto date = entry::parse_date(look->data.text_of("next_due"))) due = *date;
    return due;
}

void add_verdict(const Visit& visit) {
    Making& making = visit.making;
    const std::string state = visit.last("state_after");
    making.paper.add(Verdict{state.empty() ? making.say("look.no_state")
                                           : making.say("look.left_as", {{"state", state}})});
    if (visit.supplement.is_open()) making.sentence("look.open");
}

void add_fact(const Making& making, std::vector<Fact>& facts, std::string_view key, std::string value) {
    if (!value.empty()) facts.push_back({making.say(key), std::move(value)});
}

// Of a roof that was taken over from paper only the day is known.
std::string first_record(const Making& making) {
    const entry::Entry* opened = making.job.opened;
    const auto finished = entry::parse_date(opened == nullptr ? "" : opened->data.text_of("finished"));
    return finished ? making.words.date(*finished) : making.when(making.job.handed_over);
}

void add_why(const Visit& visit) {
    Making& making = visit.making;
    making.heading("section.visit");
    std::vector<Fact> facts;
    add_fact(making, facts, "look.why", why_words(making, visit.supplement));
    add_fact(making, facts, "look.complaint",
             making.words.held(visit.supplement.opened->field_text("complaint")));
    add_fact(making, facts, "look.came", making.by(visit.supplement.opened));
    add_fact(making, facts, "look.weather", visit.last("weather_before"));
    add_fact(making, facts, "look.first_record", first_record(making));
    making.facts(std::move(facts));
}

// "found: lifted tape", each piece only where it was said.
std::string cause_words(const Visit& visit, const Reading& look) {
    std::vector<std::string> pieces;
    for (const char* field : {"cause", "cause_text"}) {
        const std::string said = visit.making.said.value(look, field);
        if (!said.empty()) pieces.push_back(said);
    }
    return joined(pieces, ": ");
}

Photos photos_of(const Visit& visit) {
    Photos photos;
    for (const Reading* photo : visit.making.job.all("photo"))
        if (visit.has(photo->entry)) photos.push_back(photo);
    return photos;
}

void add_seen(const Visit& visit) {
    Making& making = visit.making;
    making.heading("section.seen");
    PlanAbout plan{
        .title_key = "plan.look", .note = making.say("plan.look_note"), .has_falls = false, .is_small = true};
    std::vector<Row> rows;
    for (const Reading* look : visit.looks) {
        const std::string number = std::to_string(rows.size() + 1);
        const auto says = [&](const char* field) { return making.said.value(*look, field); };
        Row row{{number, making.said.place(look->place), says("seen"), cause_words(visit, *look),
                 says("whose"), entry::short_name(look->entry->hash)},
                {}};
        if (const std::string complaint = look->entry->field_text("complaint"); !complaint.empty())
            row.beneath.emplace_back(making.say("look.said", {{"words", making.words.held(complaint)}}));
        rows.push_back(std::move(row));
        mark(making, entry::place_text(look->place), "(" + number + ")", plan);
    }
    making.table("", {"number", "where", "seen", "cause", "whose", "entry"}, std::move(rows));
    plan = with_photographs(making, photos_of(visit), std::move(plan));
    if (!plan.marks.empty()) add_plan(making, plan);
}

// What the first record used on a part, and the reading it was begun under, stay in the first record.
Row visit_row(const Visit& visit, const job::Part& part) {
    constexpr std::size_t kTins = 4, kReading = 5;
    std::vector<std::string> labels;
    for (const job::TinUse& use : job::tin_uses(visit.making.job)) {
        const std::string& label = use.tin == nullptr ? use.label : use.tin->label;
        if (use.part == part.name && visit.has(use.entry) &&
            std::find(labels.begin(), labels.end(), label) == labels.end())
            labels.push_back(label);
    }
    Row row = part_row(visit.making, part);
    row.cells[kTins] = tins_words(visit.making, labels);
    if (!visit.has(part.reading)) row.cells[kReading] = Text();
    return row;
}

void add_done(const Visit& visit) {
    Making& making = visit.making;
    making.heading("section.done");
    std::vector<Row> rows;
    for (const job::Part& part : making.job.parts) {
        const bool was_moved = std::any_of(part.events.begin(), part.events.end(),
                                           [&](const auto& move) { return visit.has(move.entry); });
        if (was_moved) rows.push_back(visit_row(visit, part));
    }
    if (rows.empty()) return making.sentence("look.no_parts");
    making.table("", {"part", "stands", "who", "when", "tins", "reading"}, std::move(rows));
}

void add_tins(const Visit& visit) {
    Making& making = visit.making;
    const auto uses = job::tin_uses(making.job);
    const auto is_of_visit = [&](const job::TinUse& use) { return visit.has(use.entry); };
    if (std::any_of(uses.begin(), uses.end(), is_of_visit)) add_tins_used(making, is_of_visit);
}

// What this visit brought up and nobody has put right.
void add_still_open(const Visit& visit) {
    Making& making = visit.making;
    making.heading("section.still_open");
    Listing listing;
    for (const job::PunchRow& row : making.punch)
        if (visit.has(row.raised))
            listing.points.emplace_back(making.severity(row.severity) + ": " +
                                        making.said.again(row.says_as));
    for (const job::Part* part : job::in_hand(making.job))
        listing.points.emplace_back(making.say(
            "look.part_open", {{"part", making.said.part(part->name)},
                               {"state", making.say("state." + std::string(job::state_word(part->state)))}}));
    if (listing.points.empty()) return making.sentence("look.nothing_open");
    making.paper.add(std::move(listing));
}

std::vector<Reminder> reminders(const Visit& visit, const entry::Date& due) {
    const Making& making = visit.making;
    return {day_to_come(making, "supplement-" + visit.supplement.name, due, visit.supplement.opened->when,
                        "remind.look")};
}

void add_next(const Visit& visit) {
    Making& making = visit.making;
    making.heading("section.next_look");
    const auto due = next_due(visit);
    if (!due) return making.sentence("look.no_next");
    making.sentence("look.next", {{"day", making.words.date(*due)}});
    making.paper.reminders = reminders(visit, *due);
}

void add_signatures(const Visit& visit) {
    Making& making = visit.making;
    making.heading("section.signatures");
    Signature own{making.say("look.looked"), "", making.paper.head.firm, "", making.say("signature.not_yet")};
    Signature customer{making.say("completion.received"), "", making.say("completion.customer"), "",
                       making.say("signature.not_yet")};
    if (!visit.supplement.is_open()) {
        const entry::Entry* at = visit.supplement.signatures.front();
        own.name = making.person(at);
        own.when = making.when(at);
        own.note = at->own_key ? making.say("signature.own_hand") : "";
        fill_customer(making, *at, customer);
    }
    making.paper.add(std::move(own));
    making.paper.add(std::move(customer));
    if (!visit.supplement.is_open()) add_receipt(making, visit.supplement.signatures.front());
}

} // namespace

Result<Document> look(const job::Job& job, const job::Judgement& judgement, const Setting& setting) {
    const Supplement* supplement = job.supplement();
    if (supplement == nullptr)
        return Fault{Code::record_too_thin,
                     "job " + job.ref + " has no supplement",
                     {},
                     "undersheet supplement open --why yearly begins one after the hand-over"};
    Making making(job, judgement, setting, "look.kind");
    making.paper.head.name =
        making.say("look.name", {{"n", supplement->name}, {"why", why_words(making, *supplement)}});
    Visit visit{making, *supplement};
    for (const Reading* look : job.all("look"))
        if (visit.has(look->entry)) visit.looks.push_back(look);
    add_verdict(visit);
    add_why(visit);
    add_seen(visit);
    add_done(visit);
    add_tins(visit);
    making.heading("section.measured");
    add_readings(making, [&](const entry::Entry& entry) {
        return visit.has(&entry) && entry.kind != "look" && entry.kind != "photo";
    });
    add_photographs(making, photos_of(visit), "nothing_recorded");
    add_still_open(visit);
    add_next(visit);
    making.sentence("look.first_stays");
    add_signatures(visit);
    return std::move(making.paper);
}

void add_since_then(Making& making) {
    if (making.job.supplements.empty()) return;
    making.heading("section.since_then");
    Listing listing;
    for (const Supplement& supplement : making.job.supplements) {
        const bool is_open = supplement.is_open();
        const entry::Entry* at = is_open ? supplement.opened : supplement.signatures.front();
        listing.points.emplace_back(making.say(
            is_open ? "look.one_open" : "look.one_signed",
            {{"n", supplement.name}, {"why", why_words(making, supplement)}, {"when", making.when(at)}}));
    }
    making.paper.add(std::move(listing));
}

} // namespace undersheet::paper
