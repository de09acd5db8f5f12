// Who writes in a job, and how somebody of this book gets onto a job that another device opened.
//
// Promises: whoever the book knows and the job does not is put on the job, within the caller's transaction, when first
//   writing in it or named in it; taking a job in puts nobody on it. Initials stay one person's: not_on_job else.
// Only the desk includes this.
#pragma once

#include "desk/drafts.h"

namespace undersheet::desk {

// The person that `typed` means in this job.
[[nodiscard]] Result<job::Person> author_on(Session& session, book::Book& open, Case& on,
                                            const std::string& typed);

// The people named in the fields; whoever is unknown here as well is left for the check of the fields to refuse.
[[nodiscard]] Done join_named(Session& session, book::Book& open, Case& on, const Typed& typed);

} // namespace undersheet::desk
