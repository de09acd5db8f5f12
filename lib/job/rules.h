// How a row of the method's rule table becomes findings.
//
// Most rows compare a field with a limit and need no code. A row with `worked` names a computation here: it is given the
// context and hands back findings made from the row's own words, severities and limits.
// Does not: hold anything (guards.h) or decide anything.
#pragma once

#include "job/judge.h"
#include "job/replay.h"

#include <functional>

namespace undersheet::job {

// What the rules look at. Made once for a judgement.
struct Context {
    const Job& job;
    const method::Method& method;
    const method::Catalogue& kinds;
    Recorded recorded;
    std::vector<Reading> work;    // the latest tick of each step of each part, as readings of kind "work"
    const Reading* air = nullptr; // the latest air reading, only while it is young enough to count

    [[nodiscard]] std::vector<const Reading*> readings_of(const std::string& kind) const;
    [[nodiscard]] double limit(std::string_view key) const { return method.limit(key); }
    [[nodiscard]] std::optional<double> area_m2() const;
};

[[nodiscard]] Context make_context(const Job& job, const method::Method& method,
                                   const method::Catalogue& kinds);

// What a finding is about, filled in by whoever found it. `limit` names another limit than the level's own.
struct About {
    const Reading* reading = nullptr;
    Worded value = {};
    std::string limit = {};
    std::string place = {}; // when it is not the reading's
    Worded label = {};
    std::vector<std::string> working = {};
    std::vector<const entry::Entry*> entries = {}; // besides the reading's own
    bool near = false;
};

[[nodiscard]] Finding make_finding(const Context& context, const method::Rule& rule,
                                   const method::Level& level, const About& about);
void say(Finding& finding, Worded says); // instead of what the rule says
void clear_by(Finding& finding, Worded clears);
// A value on the good side of a limit, but within what the instrument cannot tell: a note that says so.
[[nodiscard]] Finding make_near(const Context& context, const method::Rule& rule, const method::Level& level,
                                const About& about);

using Findings = std::vector<Finding>;
using Worked = std::function<void(const Context&, const method::Rule&, Findings&)>;
using WorkedTable = std::map<std::string, Worked, std::less<>>;

// The computations, a file a subject.
void add_worked_site(WorkedTable& table);    // alone, postcode, fire look, insulation, sag, building control
void add_worked_deck(WorkedTable& table);    // board thickness, heads, fixings, moisture
void add_worked_levels(WorkedTable& table);  // closing, grid, fives, readings in doubt
void add_worked_falls(WorkedTable& table);   // falls, back-falls, points off their neighbours
void add_worked_ponds(WorkedTable& table);   // standing water
void add_worked_outline(WorkedTable& table); // tapes, chase heights, overflow
void add_worked_sheet(WorkedTable& table);   // the sheet against what the roof needs
void add_worked_stock(WorkedTable& table);   // tins and labels
void add_worked_air(WorkedTable& table);     // dew, dusk
void add_worked_work(WorkedTable& table);    // rest, touch dry, foam, hand-added punch items

[[nodiscard]] const WorkedTable& worked_table();

[[nodiscard]] Findings all_findings(const Context& context);
[[nodiscard]] Findings findings_about(const Context& context, std::string_view kind);

} // namespace undersheet::job
