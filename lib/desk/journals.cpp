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

Result<entry::Draft> OfficeWriting::draft(const Typed& typed, const std::string& job) const {
    auto made = office_draft(*kinds, typed, when, by.id);
    if (made) made->job = job;
    return made;
}

Result<OfficeWriting> office_writing(Session& session, const Asked& asked) {
    auto book = session.writer();
    if (!book) return book.fault();
    auto people = people_of_book(session);
    if (!people) return people.fault();
    auto by = person_meant(*people, asked.by);
    if (!by) return by.fault();
    auto when = time_of(session, asked.when);
    if (!when) return when.fault();
    auto kinds = session.kinds_of("");
    if (!kinds) return kinds.fault();
    return OfficeWriting{*book, std::move(*by), *when, *kinds};
}

} // namespace undersheet::desk
