// Who is who: the people of the book and of a job, and whom somebody means by a name. Only the desk includes this.
//
// Promises: initials, a whole name or a first name are enough, in any case of letters; when two people fit, both are named
//   and nobody is chosen.
#pragma once

#include "desk/session.h"

namespace undersheet::desk {

// The people in the office journal, by name, as they were last described; those who left stay in the list.
[[nodiscard]] std::vector<job::Person> people_in(const std::vector<entry::Entry>& office);

// Whom `typed` means. "" is the only person there is.
[[nodiscard]] Result<job::Person> person_meant(const std::vector<job::Person>& people,
                                               const std::string& typed);

// What the office journal says of somebody, once more for a job; job and time are the caller's.
[[nodiscard]] entry::Draft copy_for_job(const entry::Entry& person);

struct OpenJob {
    std::string id, firm; // the firm's name, as the job has it
};
struct OpenJobs {
    std::vector<OpenJob> jobs = {};
    std::vector<job::Person> people = {}; // on any of them
};
// Every job that is still open gets its own copy of what the book says, so that a job handed over alone knows its people and its firm. The
// job last worked on comes last, so that it stays the one last worked on.
[[nodiscard]] Result<OpenJobs> open_jobs(Session& session, book::Book& book);
[[nodiscard]] std::vector<entry::Draft> with_copies(const entry::Draft& draft, const OpenJobs& jobs);

[[nodiscard]] Result<std::vector<job::Person>> people_of_book(Session& session);

} // namespace undersheet::desk
