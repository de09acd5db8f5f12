#include "paper/guarantee.h"

#include <algorithm>

namespace undersheet::paper {
namespace {

int years_of(const entry::Value& terms) {
    constexpr double kMost =
        1000; // beyond what the catalogue takes; an entry from elsewhere may say anything
    return static_cast<int>(std::clamp(terms.number_of("guarantee_years", 0), 0.0, kMost));
}

const job::Tick* terms_of(const job::Job& job) {
    const job::Part* hand_over = job.part("hand-over");
    return hand_over == nullptr ? nullptr : hand_over->last_tick("terms");
}

} // namespace

entry::Date years_on(const entry::Date& from, int years) {
    const entry::Date due{from.year + years, from.month, from.day};
    const entry::Date real =
        entry::date_from_day_number(entry::day_number(due)); // 29 February of a plain year is 1 March
    return real == due ? due : entry::date_from_day_number(entry::day_number(due) - 1);
}

entry::Date Guarantee::last_day() const {
    const entry::Date anniversary{from.year + years, from.month, from.day};
    return entry::date_from_day_number(entry::day_number(anniversary) - 1);
}

entry::Date Guarantee::look_due(int year) const { return years_on(from, year); }

std::optional<Guarantee> guarantee_of(const job::Job& job) {
    const job::Tick* terms = terms_of(job);
    if (terms == nullptr) return std::nullopt;
    const auto from = entry::parse_date(terms->data.text_of("guarantee_from"));
    const int years = years_of(terms->data);
    if (!from || years == 0) return std::nullopt;
    return Guarantee{*from, years, terms->data.text_of("guarantee_terms"), terms->entry};
}

std::string whom_to_ring(const Making& making) {
    const Head& head = making.paper.head;
    return head.firm_phone.empty() ? head.firm : head.firm + ", " + head.firm_phone;
}

std::vector<Fact> guarantee_facts(const Making& making) {
    const auto guarantee = guarantee_of(making.job);
    std::vector<Fact> facts;
    if (guarantee)
        facts.push_back({making.say("guarantee.runs"),
                         making.words.count("guarantee.years", static_cast<std::size_t>(guarantee->years),
                                            {{"from", making.words.date(guarantee->from)},
                                             {"to", making.words.date(guarantee->last_day())}})});
    else
        facts.push_back({making.say("guarantee.runs"), making.say("guarantee.none")});
    const job::Tick* terms = terms_of(making.job);
    const std::string said = terms == nullptr ? "" : terms->data.text_of("guarantee_terms");
    if (!said.empty()) facts.push_back({making.say("guarantee.terms"), said});
    if (const std::string ring = whom_to_ring(making); !ring.empty())
        facts.push_back({making.say("guarantee.ring"), ring});
    return facts;
}

} // namespace undersheet::paper
