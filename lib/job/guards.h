// What holds a part: the order of work, findings, safety, readings, tins, and what goes on beside it.
//
// Promises: each line says what is wrong and what would clear it. The names of the start and sign guards in the method's
//   stages lead to one function each.
// Does not: know who is asking for what beyond the wish it is given.
#pragma once

#include "job/judge.h"
#include "job/replay.h"

namespace undersheet::job {

// Everything a guard may look at.
struct Scene {
    const Job& job;
    const method::Method& method;
    const std::vector<Finding>& findings;
    const Recorded& recorded;
    const Part& part;
    const method::Stage& stage;
    const Wish& wish; // wish.by is empty when only asking what may be done
};

using HeldList = std::vector<Held>;

[[nodiscard]] HeldList earlier_parts(const Scene& scene); // the order of work
[[nodiscard]] HeldList held_by_findings(const Scene& scene, method::Moment moment);
[[nodiscard]] HeldList safety_holds(const Scene& scene);
[[nodiscard]] HeldList reading_holds(const Scene& scene); // air and moisture
[[nodiscard]] HeldList tin_holds(const Scene& scene);
[[nodiscard]] HeldList beside_holds(const Scene& scene);   // open coats, heat
[[nodiscard]] HeldList start_evidence(const Scene& scene); // delivery, dust, heights, chase cut
[[nodiscard]] HeldList sign_holds(const Scene& scene);
[[nodiscard]] HeldList step_holds(const Scene& scene);        // may this step be ticked now
[[nodiscard]] HeldList nothing_to_settle(const Scene& scene); // what devices said apart
[[nodiscard]] HeldList missing_steps(const Scene& scene);

// One line for each guard that fails, in the order of the table.
[[nodiscard]] HeldList holds_for(const Scene& scene, Guard guard);
[[nodiscard]] Facts facts_of(const Scene& scene, const std::vector<Guard>& guards);

[[nodiscard]] bool has_guard(const std::vector<std::string>& guards, std::string_view name);
[[nodiscard]] bool is_out_of_the_way(State state); // signed, left out, not needed or closed

} // namespace undersheet::job
