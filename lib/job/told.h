// Who of the people on a job had been told what, by their entries.
//
// Promises: speaks of entries, not of places in a list; the entries must be those of the job, in their list.
#pragma once

#include "entry/causality.h"
#include "job/job.h"

namespace undersheet::job {

class Told {
public:
    explicit Told(const EntryList& entries) : first_(entries.data()), causality_(entries) {}
    [[nodiscard]] bool knew(const entry::Entry& later, const entry::Entry& earlier) const {
        return causality_.knew(at(later), at(earlier));
    }
    [[nodiscard]] bool apart(const entry::Entry& a, const entry::Entry& b) const {
        return causality_.apart(at(a), at(b));
    }
    [[nodiscard]] bool is_one_run() const { return causality_.is_one_run(); }
    [[nodiscard]] const entry::Causality& causality() const { return causality_; }

private:
    [[nodiscard]] std::size_t at(const entry::Entry& entry) const {
        return static_cast<std::size_t>(&entry - first_);
    }
    const entry::Entry* first_;
    entry::Causality causality_;
};

} // namespace undersheet::job
