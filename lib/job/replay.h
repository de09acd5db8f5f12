// Moves the parts through their states as the entries say, in order.
//
// Promises: every stage event moves its part by transition(), or is kept as a problem; a later coat undoes the finger test;
//   a pause that spoils an open coat undoes it; opening a part again strikes its signature and does to the parts after it
//   what the method's rows say. What devices wrote apart moves a view for each, joined where one took the other's entries.
// Does not: check what was checked when the event was written (readings, tins, safety): that is guards.h.
#pragma once

#include "job/job.h"
#include "job/readings.h"
#include "job/told.h"

namespace undersheet::job {

void replay(Job& job, const Counted& counted, const method::Method& method, const Told& told);

// What was really looked at ("kind" and "kind.field"), and the latest entry that says so.
using Recorded = std::map<std::string, const entry::Entry*>;
void note_recorded(Recorded& recorded, const entry::Entry& entry, const entry::Value& data);
[[nodiscard]] Recorded recorded_of(const Job& job);

// A step is done by its latest tick that is not struck, by a decision in its place, or by a record of what it asks for; in
// a part that was opened again only by what was recorded since.
[[nodiscard]] bool step_done(const Part& part, const method::Step& step, const Recorded& recorded);
[[nodiscard]] const entry::Entry* step_entry(const Part& part, const method::Step& step,
                                             const Recorded& recorded);
// Nothing was done to the part since it was sent back.
[[nodiscard]] bool is_worked_on_since(const Part& part, const method::Stage& stage, const Recorded& recorded);
[[nodiscard]] bool steps_complete(const Part& part, const method::Stage& stage, const Recorded& recorded);
// A coat of adhesive that is open: ticked, and no later step has closed it.
[[nodiscard]] const Tick* open_coat(const Part& part, const method::Stage& stage);

} // namespace undersheet::job
