// Takes what came in into the book: the union of both journals, job by job, after checking what stands between the entries.
//
// Promises: the same entries give the same book whichever came first and how often; what was erased does not come back.
//   A device that was copied is kept with both its branches. A book that turns out to be an older copy of itself goes on as
//   a new device.
// Does not: begin or end transactions, or touch files.
#pragma once

#include "book/book.h"
#include "book/erased.h"
#include "book/taking.h"

namespace undersheet::book {

struct Merged {
    Taken taken = {};
    std::vector<std::string> ids = {}; // of the entries that are new here
    Erased erased = {};                // what the union says must not be held
    bool has_forgotten = false;        // values were here that are gone now
};

[[nodiscard]] Merged merge(Connection& into, const Incoming& incoming, const std::string& from);

} // namespace undersheet::book
