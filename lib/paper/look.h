// What a later visit to the roof found and did: a supplement's own paper. The first record stays as it was.
#pragma once

#include "paper/making.h"

namespace undersheet::paper {

// Of the supplement that the job was folded within. A fault (record_too_thin) when there is none.
[[nodiscard]] Result<Document> look(const job::Job& job, const job::Judgement& judgement,
                                    const Setting& setting);

// The later visits there were, a line each; nothing at all when there was none.
void add_since_then(Making& making);

} // namespace undersheet::paper
