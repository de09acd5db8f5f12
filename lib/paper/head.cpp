#include "paper/head.h"

namespace undersheet::paper {

std::vector<Fact> head_facts(const Head& head, const Words& words) {
    const Fact all[] = {
        {words.say("head.job"), head.job},           {words.say("head.roof"), head.roof},
        {words.say("head.customer"), head.customer}, {words.say("head.address"), head.customer_address},
        {words.say("head.number"), head.number},     {words.say("head.issue"), head.issue},
        {words.say("head.date"), head.date},
    };
    std::vector<Fact> known;
    for (const Fact& fact : all)
        if (!fact.value.is_empty()) known.push_back(fact);
    return known;
}

} // namespace undersheet::paper
