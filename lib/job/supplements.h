// Supplements: what is recorded after the hand-over. Each belongs to the entry that opened it; the first record stays as it was.
//
// A supplement is seen as the job as it was handed over, every supplement before it, and its own entries: its parts can be
// opened again, bonded and signed by the same rules as on the first day.
// Promises: an entry belongs to the supplement that it names, never to one that a clock suggests. One whose supplement is not
//   here, or was not known to its writer, counts nowhere and is told of.
// Does not: know when one may be signed (the desk asks `open_in`).
#pragma once

#include "job/told.h"

namespace undersheet::job {

// Parts that are neither signed nor left as they are.
[[nodiscard]] std::vector<const Part*> in_hand(const Job& job);

// Why nobody signs for the customer, at the hand-over or for a supplement: exactly one of the two has to be said.
[[nodiscard]] std::optional<std::string> customer_unsaid(bool signs, bool is_away);

// What stands in the way of signing the supplement that this job was folded within.
struct OpenThing {
    std::string why, clears;
};
[[nodiscard]] std::vector<OpenThing> open_in(const Job& job, const Supplement& supplement);

// The supplements among the entries, in their order, with what belongs to each.
[[nodiscard]] std::vector<Supplement> supplements_in(const std::vector<const entry::Entry*>& visible,
                                                     const Told& told, std::vector<std::string>& problems);

// The entries that count: of the first record, or within a supplement those of the ones up to it as well.
[[nodiscard]] std::vector<const entry::Entry*> counting(const std::vector<const entry::Entry*>& visible,
                                                        const std::vector<Supplement>& supplements,
                                                        const std::optional<entry::Hash>& within);

} // namespace undersheet::job
