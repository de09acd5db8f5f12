#include "paper/office.h"

#include "base/text.h"
#include "job/takeoff.h"
#include "paper/completion.h"
#include "paper/inspection.h"
#include "paper/journal.h"
#include "paper/punch.h"
#include "paper/stages.h"

namespace undersheet::paper {
namespace {

constexpr int kUsedPlaces = 2; // of a litre, of an hour

// The blocks of another paper under a heading of its name, their own headings one level down.
void add_paper(Making& making, Document paper) {
    making.paper.heading(paper.head.name);
    for (Block& block : paper.blocks) {
        if (std::holds_alternative<PageBreak>(block)) continue;
        if (auto* heading = std::get_if<Heading>(&block)) ++heading->level;
        if (const auto* verdict = std::get_if<Verdict>(&block))
            making.paper.paragraph(strong(verdict->text.words()));
        else
            making.paper.add(std::move(block));
    }
}

void add_planned_and_used(Making& making) {
    making.heading("section.planned_used");
    const auto taken = job::take_off(making.job, making.setting.method, making.setting.prices);
    if (!taken)
        return making.sentence("office.no_take_off",
                               {{"why", making.said.again(job::detail_worded(taken.fault()))}});
    std::vector<Row> rows;
    for (const job::TakeOffUsed& used : taken->used) {
        const std::string key = "item." + used.name, unit = " " + making.words.text(used.unit);
        const auto amount = [&](const Decimal& of) { return making.words.number(of.value(), kUsedPlaces); };
        rows.push_back(
            {{making.words.has(key) ? making.say(key) : making.words.text(used.title),
              amount(used.planned) + unit, amount(used.used) + unit, making.said.again(used.remark)},
             {}});
    }
    making.table("", {"item", "planned#", "used#", "remark"}, std::move(rows));
}

void add_hours(Making& making) {
    making.heading("section.hours");
    std::vector<Row> rows;
    for (const job::Reading* day : making.job.all("day")) {
        const auto says = [&](const char* field) { return making.said.value(*day, field); };
        rows.push_back({{says("date"), says("people"), making.said.bare(*day, "hours_h"),
                         entry::short_name(day->entry->hash)},
                        {}});
    }
    making.table("", {"day", "people", "hours_h#", "entry"}, std::move(rows));
}

} // namespace

Document office(const job::Job& job, const job::Judgement& judgement, const Setting& setting) {
    Making making(job, judgement, setting, "office.name");
    making.paper.add(
        Verdict{making.say("office.verdict", {{"entries", std::to_string(job.entries->size())}})});
    for (const auto make : {inspection, stages, punch, completion}) {
        if (making.paper.blocks.size() > 1)
            making.paper.add(PageBreak{}); // the first goes on below the verdict
        add_paper(making, make(job, judgement, setting));
    }
    making.paper.add(PageBreak{});
    add_tins_used(making, [](const job::TinUse&) { return true; });
    add_planned_and_used(making);
    add_hours(making);
    making.heading("section.raw");
    add_readings(making, [](const entry::Entry&) { return true; });
    add_corrections(making);
    add_journal(making);
    return std::move(making.paper);
}

} // namespace undersheet::paper
