#include "paper/stages.h"

#include "base/text.h"
#include "job/queries.h"
#include "job/settle.h"
#include "paper/finding_items.h"
#include "paper/journal.h"
#include "paper/making.h"
#include "paper/plan.h"

#include <algorithm>

namespace undersheet::paper {

namespace {

using job::Part;
using job::SignOff;
using job::State;

// After the hand-over every part is closed; what it was before is what a reader wants to know.
State standing(const Making& making, const Part& part) {
    if (part.state == State::closed && part.signature() != nullptr) return State::signed_off;
    if (part.state == State::closed && !part.left_out_why.empty()) return State::left_out;
    const job::PartView* view = making.judgement.part(part.name);
    return view == nullptr ? part.state : view->state;
}

const entry::Entry* last_word(const Part& part) {
    if (part.signature() != nullptr) return part.signature()->entry;
    return part.events.empty() ? nullptr : part.events.back().entry;
}

// The air a part was begun under, where the method asks for a reading at all.
std::string reading(const Making& making, const Part& part) {
    const method::Stage* stage = making.setting.method.stage(part.stage);
    if (part.reading == nullptr || stage == nullptr) return {};
    const auto& guards = stage->start_guards;
    if (std::find(guards.begin(), guards.end(), "reading") == guards.end()) return {};
    const job::Reading* air = job::reading_of(making.job, part.reading);
    const std::string at = making.when(part.reading);
    if (air == nullptr) return at;
    return making.say("reading.used", {{"when", at},
                                       {"air", making.said.value(*air, "air_c")},
                                       {"rh", making.said.value(*air, "rh_pct")},
                                       {"deck", making.said.value(*air, "surface_c")}});
}

std::string signed_words(const Making& making, const SignOff& signature) {
    const auto* key = signature.entry->own_key ? "stages.signed_own_hand" : "stages.signed";
    return making.say(
        key, {{"who", making.job.person_name(signature.by)}, {"when", making.when(signature.entry)}});
}

std::string why(const Making& making, const Part& part, const std::string& says) {
    return making.said.again(job::why_worded(making.job, making.setting.method, part, says));
}

void add_signature_lines(const Making& making, const Part& part, const SignOff& signature,
                         std::vector<Text>& lines) {
    if (signature.struck) {
        Text line = struck(signed_words(making, signature));
        if (!signature.struck_why.empty())
            line.add(" " + making.say("stages.struck", {{"why", why(making, part, signature.struck_why)}}));
        lines.push_back(std::move(line));
    }
    for (const entry::Entry* look : signature.confirmed)
        lines.emplace_back(making.say(
            "stages.confirmed",
            {{"who", making.person(look)}, {"when", making.when(look)}, {"why", look->data.text_of("why")}}));
    if (signature.own_check) lines.emplace_back(making.say("stages.own_check"));
}

// Sent back before it was signed: there is no signature to strike, but somebody looked and said no.
void add_sent_back_lines(const Making& making, const Part& part, std::vector<Text>& lines) {
    for (const auto& move : part.events) {
        if (move.event != job::Event::send_back) continue;
        lines.emplace_back(making.say("stages.sent_back", {{"who", making.person(move.entry)},
                                                           {"when", making.when(move.entry)},
                                                           {"why", move.entry->data.text_of("why")}}));
    }
}

} // namespace

std::string tins_words(const Making& making, const std::vector<std::string>& labels) {
    std::vector<std::string> all;
    for (const std::string& label : labels) {
        const job::Reading* tin = making.job.tin(label);
        if (tin == nullptr) {
            all.push_back(label);
            continue;
        }
        all.push_back(making.say("tin.batch", {{"product", making.said.value(*tin, "product")},
                                               {"batch", making.said.value(*tin, "batch")}}));
    }
    return joined(all, "; ");
}

Row part_row(const Making& making, const Part& part) {
    const entry::Entry* last = last_word(part);
    Row row{{making.said.part(part.name),
             making.say("state." + std::string(job::state_word(standing(making, part)))), making.person(last),
             making.when(last), tins_words(making, part.tins), reading(making, part)},
            {}};
    for (const SignOff& signature : part.signatures)
        add_signature_lines(making, part, signature, row.beneath);
    add_sent_back_lines(making, part, row.beneath);
    for (const std::string& doubt : part.doubts)
        row.beneath.emplace_back(making.say("stages.doubt", {{"why", why(making, part, doubt)}}));
    if (part.state == State::not_needed && !part.note.empty())
        row.beneath.emplace_back(why(making, part, part.note));
    return row;
}

namespace {

void add_parts(Making& making) {
    making.heading("section.parts");
    std::vector<Row> rows;
    for (const Part& part : making.job.parts) rows.push_back(part_row(making, part));
    making.table("", {"part", "stands", "who", "when", "tins", "reading"}, std::move(rows));
}

Row pause_row(const Making& making, const Part& part, const job::Pause& pause) {
    const std::string why = pause.from->data.text_of("why");
    const std::string until = pause.to == nullptr ? making.say("pause.still") : making.when(pause.to);
    const std::string length =
        pause.to == nullptr
            ? ""
            : making.words.number(entry::minutes_between(pause.from->when, pause.to->when), 0);
    Row row{{making.said.part(part.name), making.when(pause.from), until, length, why}, {}};
    if (pause.rain) row.beneath.emplace_back(making.say("pause.rain"));
    if (pause.spoilt_coat) row.beneath.emplace_back(making.say("pause.spoilt"));
    return row;
}

void add_pauses(Making& making) {
    making.heading("section.pauses");
    std::vector<Row> rows;
    for (const Part& part : making.job.parts)
        for (const job::Pause& pause : part.pauses) rows.push_back(pause_row(making, part, pause));
    if (rows.empty()) return making.sentence("pauses.none");
    making.table("", {"part", "from", "until", "minutes#", "why"}, std::move(rows));
}

void add_left_out(Making& making) {
    making.heading("section.left_out");
    std::vector<Row> rows;
    for (const Part& part : making.job.parts)
        if (!part.left_out_why.empty())
            rows.push_back({{making.said.part(part.name), part.left_out_why,
                             making.words.held(job::agreed_by(part)), making.by(last_word(part))},
                            {}});
    if (rows.empty()) return making.sentence("left_out.none");
    making.table("", {"part", "why", "agreed_by", "written_by"}, std::move(rows));
}

// What an entry of a side says: of a part where it left it, of a reading what was read.
std::string side_says(const Making& making, const job::SettleSide& side) {
    if (!side.says.empty()) return making.words.text(side.says);
    const std::string facts = facts_words(making, as_written(*side.entry), ", ");
    return facts.empty() ? making.say("to_settle.entry") : facts;
}

std::string side_words(const Making& making, const job::SettleSide& side) {
    return making.say("to_settle.side", {{"says", side_says(making, side)},
                                         {"entry", entry::short_name(side.entry->hash)},
                                         {"who", making.by(side.entry)}});
}

std::string sides_words(const Making& making, const job::SettleItem& item) {
    std::vector<std::string> sides;
    for (const auto& side : item.sides) sides.push_back(side_words(making, side));
    return joined(sides, "; ");
}

Text open_item(const Making& making, const job::SettleItem& item) {
    return Text(making.say("to_settle.open", {{"item", item.id},
                                              {"says", making.said.again(job::settle_worded(item))},
                                              {"sides", sides_words(making, item)}}));
}

Text settled_item(const Making& making, const job::SettleItem& item) {
    return Text(making.say("to_settle.settled", {{"item", item.id},
                                                 {"says", making.said.again(job::settle_worded(item))},
                                                 {"sides", sides_words(making, item)},
                                                 {"kept", entry::short_name(item.kept->hash)},
                                                 {"who", making.by(item.settled)},
                                                 {"why", item.why}}));
}

// Entries that break a rule are kept and not counted; somebody has to say what is to become of them.
void add_to_settle(Making& making) {
    making.heading("section.to_settle");
    const auto& job = making.job;
    if (job.problems.empty() && job.to_settle.empty() && job.settled.empty())
        return making.sentence("to_settle.none");
    Listing listing;
    for (const auto& item : job.to_settle) listing.points.push_back(open_item(making, item));
    for (const auto& item : job.settled) listing.points.push_back(settled_item(making, item));
    for (const std::string& problem : making.job.problems) listing.points.emplace_back(problem);
    making.paper.add(std::move(listing));
}

void add_standing(Making& making) {
    std::size_t needed = 0, settled = 0;
    for (const Part& part : making.job.parts) {
        const State state = standing(making, part);
        if (state == State::not_needed) continue;
        ++needed;
        if (state == State::signed_off || state == State::left_out || state == State::closed) ++settled;
    }
    making.paper.add(Verdict{making.say(
        "stages.verdict", {{"settled", std::to_string(settled)}, {"needed", std::to_string(needed)}})});
    if (making.job.handed_over != nullptr)
        making.sentence("stages.handed_over", {{"when", making.when(making.job.handed_over)}});
}

} // namespace

Document stages(const job::Job& job, const job::Judgement& judgement, const Setting& setting) {
    Making making(job, judgement, setting, "stages.name");
    add_standing(making);
    add_parts(making);
    add_pauses(making);
    making.heading("section.departures");
    add_departures(making);
    add_left_out(making);
    add_to_settle(making);
    add_plan(making, plan_of_roof(making));
    return std::move(making.paper);
}

} // namespace undersheet::paper
