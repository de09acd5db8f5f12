// What the record says is wrong or doubtful, and what may be done now.
//
// Promises: pure; findings come worst first, each with value, limit, source, what clears it and the entries it stands on.
//   A value that the instrument's own error could tip over says `near`. A verdict is never better than what was looked at.
// Does not: change anything, or decide who may let a limit go; that is a named decision in the record.
#pragma once

#include "job/job.h"

namespace undersheet::job {

struct Finding {
    std::string id; // rule@place: what one types to decide, reason or ask why
    std::string rule;
    method::Severity severity{};
    std::string place = {}, part = {}, label = {}; // written forms; may be empty
    std::string says = {};                         // one sentence with value and limit
    std::string value = {}, limit = {}, source = {}, mark = {}, clears = {};
    Worded says_as = {}, clears_as = {}; // says and clears, for another language
    bool near = false;
    bool decidable = false;
    bool by_reason = false;                        // a reason answers it
    std::vector<const entry::Entry*> entries = {}; // what it stands on
    std::vector<std::string> working = {};         // the arithmetic, a line a step
    std::vector<method::Hold> holds = {};
    const Decision* decided = nullptr; // let go, shown for ever
    const Answer* reason = nullptr;
    const Answer* told = nullptr;
};

struct Held {
    std::string why, clears;
    bool decidable = false;
    std::string finding = {}; // its id, when a finding holds
};

struct StepView {
    std::string name, says;
    bool must = true, done = false;
    const entry::Entry* entry = nullptr; // the tick or record that did it
};

struct PartView {
    std::string part, stage, title; // "band/AB", "band", "band, edge AB"
    State state{};                  // ready is worked out here
    std::vector<Event> may;
    std::vector<StepView> steps;
    std::vector<Held> held_by; // what holds the next move
};

// The answer to "can I bond now?", from the latest air reading.
struct BondNow {
    bool yes = false;
    std::string line; // one line: the numbers, the dew point, the margin, the answer
};

struct Judgement {
    std::vector<Finding> findings;   // open, worst first; notes last
    std::vector<Finding> departures; // let go by a named decision
    std::vector<PartView> parts;
    std::vector<std::string> not_looked; // what nobody looked at, a line each
    std::optional<BondNow> bond_now;
    [[nodiscard]] int count(method::Severity severity) const;
    [[nodiscard]] const Finding* finding(std::string_view id) const; // open or let go
    [[nodiscard]] const PartView* part(std::string_view name) const;
};

// Only what is wrong or doubtful: no parts, no "may I bond now". A fraction of the cost.
[[nodiscard]] Judgement judge_findings(const Job& job, const method::Method& method,
                                       const method::Catalogue& kinds);
[[nodiscard]] Judgement judge(const Job& job, const method::Method& method, const method::Catalogue& kinds);

// What somebody wants to do to a part, for the guards.
struct Wish {
    std::string part;
    Event event{};
    std::string by; // person id
    entry::Time when;
    entry::Value data; // step, tin, why, agreed_by …
    entry::Place place = {};
};

// Every line that holds this wish; empty when it may go ahead.
struct Refusal {
    bool exists = true; // false: there is no such move in the part's state
    std::vector<Held> held_by;
};
[[nodiscard]] Refusal refusal_of(const Job& job, const Judgement& judgement, const method::Method& method,
                                 const Wish& wish);

} // namespace undersheet::job
