// Which tin went into which part, and when.
#pragma once

#include "job/job.h"

namespace undersheet::job {

struct TinUse {
    const Reading* tin = nullptr; // nullptr when the label was never recorded
    std::string label;
    std::string part;
    const entry::Entry* entry = nullptr; // the begin, resume, tick or use that names it
};

// By its label, or by the batch that a step names: then every tin of that batch and product was used there.
[[nodiscard]] std::vector<TinUse> tin_uses(const Job& job);

// A batch that a step was done with, by the field that names it.
struct NamedBatch {
    std::string batch = {}, product = {};
};
[[nodiscard]] std::vector<NamedBatch> batches_named(const Part& part, const Tick& tick);
[[nodiscard]] std::vector<const Reading*> tins_of(const Job& job, const NamedBatch& named);
[[nodiscard]] std::optional<entry::Date> last_use_of(const Job& job, std::string_view label);
// A photograph that says it shows the label of this tin or sheet.
[[nodiscard]] bool has_label_photo(const Job& job, const Reading& of);

} // namespace undersheet::job
