// Which readings count: corrections put in, withdrawn ones left out, later ones in place of earlier ones.
//
// Promises: nothing is dropped; what no longer counts is kept in `replaced`, with the entries it stood on.
// Does not: look at a limit.
#pragma once

#include "job/job.h"

namespace undersheet::job {

struct Counted {
    std::vector<Reading> readings;
    std::vector<Reading> replaced;
    std::vector<const entry::Entry*> withdrawn;
    std::map<std::string, std::vector<const entry::Entry*>> corrections;
    // The entries that count at all, events included, in order.
    std::vector<const entry::Entry*> standing;
};

[[nodiscard]] Counted count_readings(const std::vector<const entry::Entry*>& visible,
                                     const method::Catalogue& kinds);

// The data of an entry with its corrections in it.
[[nodiscard]] entry::Value corrected_data(const entry::Entry& entry, const Counted& counted);

} // namespace undersheet::job
