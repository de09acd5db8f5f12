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

[[nodiscard]] std::vector<TinUse> tin_uses(const Job& job);
[[nodiscard]] std::optional<entry::Date> last_use_of(const Job& job, std::string_view label);
// A photograph that says it shows the label of this tin or sheet.
[[nodiscard]] bool has_label_photo(const Job& job, const Reading& of);

} // namespace undersheet::job
