#include "desk/journals.h"

namespace undersheet::desk {

Result<std::vector<Journal>> all_journals(book::Book& book) {
    auto jobs = book.jobs();
    if (!jobs) return jobs.fault();
    jobs->insert(jobs->begin(), book::JobLine{.job = book.office()});
    std::vector<Journal> journals;
    for (const auto& line : *jobs) {
        auto entries = book.entries(line.job);
        if (!entries) return entries.fault();
        journals.push_back({line.job, line.ref, std::move(*entries)});
    }
    return journals;
}

Result<job::Person> author_in_book(Session& session, const std::string& by) {
    auto people = people_of_book(session);
    if (!people) return people.fault();
    return person_meant(*people, by);
}

} // namespace undersheet::desk
