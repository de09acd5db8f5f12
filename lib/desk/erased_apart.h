// Personal values that came back: recorded on one phone by somebody who did not know that another had erased the like.
//
// Each value has a salt of its own, so that nobody can see whether two are the same. What can be seen is that a field of the
// same kind of entry was erased and filled in again, neither knowing of the other. A person looks, and erases again.
#pragma once

#include "entry/causality.h"

namespace undersheet::desk {

struct RecordedApart {
    std::size_t entry = 0; // in the journal
    std::string says = {};
};

[[nodiscard]] std::vector<RecordedApart> recorded_apart_from_erasing(const std::vector<entry::Entry>& journal,
                                                                     const entry::Causality& causality);

} // namespace undersheet::desk
