// Which readings count: corrections put in, withdrawn ones left out, later ones in place of earlier ones.
//
// Of what two devices said apart about one thing, both readings count, and of a field the later in the order, until it is
// settled or measured again by somebody who knew of both.
// Promises: nothing is dropped; what no longer counts is kept in `replaced`, with the entries it stood on.
// Does not: look at a limit.
#pragma once

#include "job/told.h"

namespace undersheet::job {

struct Counted {
    std::vector<Reading> readings;
    std::vector<Reading> replaced;
    std::vector<const entry::Entry*> withdrawn;
    Corrections corrections;
    // The entries that count at all, events included, in order.
    std::vector<const entry::Entry*> standing;
    std::vector<SettleItem> to_settle = {}, settled = {};
};

[[nodiscard]] Counted count_readings(const std::vector<const entry::Entry*>& visible,
                                     const method::Catalogue& kinds, const Told& told);

// The data of an entry with its corrections in it.
[[nodiscard]] entry::Value corrected_data(const entry::Entry& entry, const Corrections& corrections);

} // namespace undersheet::job
