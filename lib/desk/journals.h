// All journals of a book: the firm's own and every job's. Only the desk includes this.
#pragma once

#include "desk/drafts.h"
#include "desk/people.h"
#include "desk/session.h"

namespace undersheet::desk {

struct Journal {
    std::string job = {}, ref = {}; // ref "" for the firm's own
    std::vector<entry::Entry> entries = {};
};

[[nodiscard]] Result<std::vector<Journal>> all_journals(book::Book& book);
// Who writes about the firm's own affairs, when, and by which catalogue.
struct OfficeWriting {
    book::Book* book = nullptr;
    job::Person by = {};
    entry::Time when = {};
    KindsPtr kinds = {};
    [[nodiscard]] Result<entry::Draft> draft(const Typed& typed,
                                             const std::string& job) const; // job "": the firm's own
};
[[nodiscard]] Result<OfficeWriting> office_writing(Session& session, const Asked& asked);

} // namespace undersheet::desk
