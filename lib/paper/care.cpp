#include "paper/care.h"

#include "paper/guarantee.h"
#include "paper/next_look.h"
#include "paper/plan.h"

#include <array>

namespace undersheet::paper {
namespace {

struct CareLine {
    const char *says, *why;
};
constexpr std::array kLines{
    CareLine{"care.outlets", "care.outlets_why"}, CareLine{"care.solvents", "care.solvents_why"},
    CareLine{"care.boards", "care.boards_why"}, CareLine{"care.fixing", "care.fixing_why"},
    CareLine{"care.ring", "care.ring_why"}};

void add_reasons(Making& making) {
    making.heading("section.care");
    Listing listing;
    for (const CareLine& line : kLines)
        listing.points.push_back(strong(making.say(line.says)).add(" " + making.say(line.why)));
    making.paper.add(std::move(listing));
}

void add_looks(Making& making) {
    making.heading("section.looks");
    const auto next = next_look(making);
    if (!next) return making.sentence("care.no_looks");
    if (next->last) making.sentence("care.looked", {{"day", making.words.date(*next->last)}});
    making.sentence("care.look", {{"day", making.words.date(next->due)}});
    Listing listing;
    for (const char* key :
         {"care.look_outlets", "care.look_edges", "care.look_patches", "care.look_water", "care.look_marks"})
        listing.points.emplace_back(making.say(key));
    making.paper.add(std::move(listing));
    making.sentence("care.look_safe");
}

} // namespace

void add_care_lines(Making& making) {
    making.heading("section.care");
    Listing listing;
    for (const CareLine& line : kLines) listing.points.emplace_back(making.say(line.says));
    making.paper.add(std::move(listing));
}

Document care(const job::Job& job, const job::Judgement& judgement, const Setting& setting) {
    Making making(job, judgement, setting, "care.name");
    making.paper.add(Verdict{making.say("care.verdict")});
    add_reasons(making);
    add_looks(making);
    making.heading("section.guarantee");
    making.facts(guarantee_facts(making));
    add_plan(making, plan_of_roof(making));
    making.paper.reminders = looks_to_come(making);
    return std::move(making.paper);
}

} // namespace undersheet::paper
