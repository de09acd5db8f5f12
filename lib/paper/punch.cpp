#include "paper/punch.h"

#include "base/text.h"
#include "job/queries.h"
#include "paper/plan.h"

#include <algorithm>

namespace undersheet::paper {

namespace {

using job::PunchRow;
using method::Severity;

void add_fact(const Making& making, Item& item, std::string_view key, const std::string& value) {
    if (!value.empty()) item.facts.push_back({making.say(key), value});
}

std::vector<Photograph> pictures(const Making& making, const std::vector<std::string>& hashes,
                                 std::string_view key) {
    std::vector<Photograph> all;
    for (const std::string& hash : hashes) {
        const job::Reading* photo = job::photo_named(making.job, hash);
        Photograph picture = photo == nullptr ? Photograph{hash, "", "", ""} : making.photograph(*photo);
        picture.caption = making.say(key, {{"caption", picture.caption}});
        all.push_back(std::move(picture));
    }
    return all;
}

// A finding is cleared by reading again, a row added by hand by saying so; only the first needs telling.
// Findings are known by a name that begins with a letter, rows by a number: "5", and "5b" from another device.
bool is_finding(const PunchRow& row) {
    return row.number.empty() || row.number[0] < '0' || row.number[0] > '9';
}

// What a row is called on this paper and its plan: its number, or a letter for a finding.
std::vector<std::string> names_of(const std::vector<const PunchRow*>& rows) {
    std::vector<std::string> names;
    std::size_t findings = 0;
    for (const PunchRow* row : rows)
        names.push_back(is_finding(*row) ? small_letter(findings++) : row->number);
    return names;
}

PlanAbout plan_of(const Making& making, const std::vector<const PunchRow*>& rows) {
    PlanAbout about{.title_key = "plan.punch", .note = making.say("plan.punch_note"), .has_falls = false};
    const auto names = names_of(rows);
    for (std::size_t i = 0; i < rows.size(); ++i) mark(making, rows[i]->place, "(" + names[i] + ")", about);
    return about;
}

std::string let_go(const Making& making, const job::Decision& decision) {
    return making.say("punch.let_go", {{"who", making.words.held(decision.decider)},
                                       {"role", making.said.choice("role", decision.role)},
                                       {"why", decision.why},
                                       {"when", making.when(decision.entry)}});
}

std::string place_of(const Making& making, const PunchRow& row) {
    return making.said.place(std::string_view(making.said.called(row.says_as, row.place)));
}

Item item_of(const Making& making, const PunchRow& row, const std::string& name) {
    Item item{name, making.severity(row.severity), making.said.again(row.says_as), {}, {}};
    add_fact(making, item, "finding.place", place_of(making, row));
    add_fact(making, item, "punch.part", row.part.empty() ? "" : making.said.part(row.part));
    if (row.open) add_fact(making, item, "punch.holds", making.holds(row));
    if (row.open && is_finding(row))
        add_fact(making, item, "finding.clears", making.said.again(row.clears_as));
    add_fact(making, item, "punch.raised", making.by(row.raised));
    if (is_finding(row)) add_fact(making, item, "punch.known_as", row.number);
    add_fact(making, item, "punch.also", joined(row.also_raised_as, "; "));
    add_fact(making, item, "punch.cleared", making.by(row.cleared));
    if (row.cleared != nullptr && !is_finding(row))
        add_fact(making, item, "punch.done", row.cleared->data.text_of("why"));
    if (row.decided != nullptr) add_fact(making, item, "punch.decided", let_go(making, *row.decided));
    if (!row.open) {
        const std::string look = making.by(row.second_look);
        add_fact(making, item, "punch.second_look", look.empty() ? making.say("punch.no_second_look") : look);
    }
    item.pictures = pictures(making, row.photos_before, "punch.before");
    for (Photograph& after : pictures(making, row.photos_after, "punch.after"))
        item.pictures.push_back(std::move(after));
    return item;
}

struct Sorted {
    std::vector<const PunchRow*> open, cleared;
};

Sorted sorted(const std::vector<PunchRow>& rows) {
    Sorted both;
    for (const PunchRow& row : rows) (row.open ? both.open : both.cleared).push_back(&row);
    return both;
}

// A finding that went away when it was read again has little to say; somebody's own row, a photograph or a decision has.
bool is_soon_told(const PunchRow& row) {
    return is_finding(row) && row.decided == nullptr && row.photos_before.empty() && row.photos_after.empty();
}

Row table_row(const Making& making, const PunchRow& row) {
    const std::string where =
        row.part.empty() || !row.place.empty() ? place_of(making, row) : making.said.part(row.part);
    return {{making.severity(row.severity) + ": " + making.said.again(row.says_as), where,
             making.by(row.raised), making.by(row.cleared)},
            {}};
}

void add_cleared(Making& making, const std::vector<const PunchRow*>& rows) {
    making.heading("section.cleared");
    if (rows.empty()) return making.sentence("punch.none_cleared");
    std::vector<Row> soon_told;
    for (const PunchRow* row : rows) {
        if (is_soon_told(*row))
            soon_told.push_back(table_row(making, *row));
        else
            making.paper.add(item_of(making, *row, is_finding(*row) ? "" : row->number));
    }
    if (!soon_told.empty())
        making.table(making.say("punch.by_reading"), {"wrong", "where", "raised", "cleared"},
                     std::move(soon_told));
}

void add_totals(Making& making, const Sorted& rows) {
    making.heading("section.totals");
    const auto counted = [&](Severity severity) {
        return std::to_string(std::count_if(rows.open.begin(), rows.open.end(),
                                            [&](const PunchRow* row) { return row->severity == severity; }));
    };
    making.facts({{making.say("totals.open"), std::to_string(rows.open.size())},
                  {making.say("totals.stops"), counted(Severity::stop)},
                  {making.say("totals.put_right"), counted(Severity::put_right)},
                  {making.say("totals.notes"), counted(Severity::note)},
                  {making.say("totals.cleared"), std::to_string(rows.cleared.size())}});
}

} // namespace

Document punch(const job::Job& job, const job::Judgement& judgement, const Setting& setting) {
    Making making(job, judgement, setting, "punch.name");
    const auto rows = job::punch_list(job, judgement, setting.method, setting.kinds);
    const Sorted both = sorted(rows);
    const std::size_t open = both.open.size();
    making.paper.add(
        Verdict{open == 0 ? making.say("punch.none_open") : making.words.count("punch.verdict", open)});
    making.heading("section.open");
    if (both.open.empty()) making.sentence("punch.none_open");
    const auto names = names_of(both.open);
    for (std::size_t i = 0; i < open; ++i) making.paper.add(item_of(making, *both.open[i], names[i]));
    const PlanAbout plan = plan_of(making, both.open);
    if (!plan.marks.empty()) add_plan(making, plan);
    add_cleared(making, both.cleared);
    add_totals(making, both);
    return std::move(making.paper);
}

} // namespace undersheet::paper
