// All journals of a book: the firm's own and every job's. Only the desk includes this.
#pragma once

#include "desk/people.h"
#include "desk/session.h"

namespace undersheet::desk {

struct Journal {
    std::string job = {}, ref = {}; // ref "" for the firm's own
    std::vector<entry::Entry> entries = {};
};

[[nodiscard]] Result<std::vector<Journal>> all_journals(book::Book& book);
// Who writes in the firm's own journal; a book without people has nobody to ask for.
[[nodiscard]] Result<job::Person> author_in_book(Session& session, const std::string& by);

} // namespace undersheet::desk
