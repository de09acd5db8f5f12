// Keeping what was drafted, and saying what was kept. Only the desk includes this.
//
// Promises: the guards and the writing are one transaction of the book: nobody else writes in between, and after a fault,
//   or a thing that is held, there is nothing of it.
#pragma once

#include "desk/drafts.h"

#include <functional>

namespace undersheet::desk {

// All of it, or none; what comes back speaks of the last.
[[nodiscard]] Result<Kept> keep(Session& session, const Asked& asked, const std::vector<Typed>& wanted);
[[nodiscard]] Result<Kept> keep(Session& session, const Asked& asked, const Result<Typed>& wanted);

// What is drafted some other way than from what was typed, kept in the same manner.
using Drafting = std::function<Result<Drafted>(const Writing&, book::Book&)>;
[[nodiscard]] Result<Kept> keep_drafted(Session& session, const Asked& asked, const Drafting& drafting);

// Drafts, appends and folds again; the transaction is the caller's. Held things come back in the answer.
[[nodiscard]] Result<Kept> keep_one(const Writing& writing, book::Book& book, Typed typed);

} // namespace undersheet::desk
