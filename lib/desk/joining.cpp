#include "desk/joining.h"

#include "base/text.h"
#include "desk/people.h"
#include "method/lists.h"

#include <algorithm>

namespace undersheet::desk {
namespace {

using job::Person;

Done are_free(const Case& on, const Person& person) {
    for (const auto& other : on.job.people) {
        if (lower_ascii(other.initials) != lower_ascii(person.initials)) continue;
        return Fault{Code::not_on_job,
                     person.name + " is not on job " + on.job.ref + ", where '" + other.initials + "' is " +
                         other.name,
                     "--by", "undersheet people add \"" + person.name + "\" with other --initials"};
    }
    return {};
}

// Nobody else is sure to be on the job: people put themselves there.
Result<entry::Draft> joining_draft(Session& session, const Case& on, const Person& person) {
    auto book = session.reader();
    if (!book) return book.fault();
    auto office = (*book)->entries((*book)->office());
    if (!office) return office.fault();
    const auto described = std::find_if(office->rbegin(), office->rend(), [&](const entry::Entry& entry) {
        return entry.kind == "person" && entry.data.text_of("person") == person.id;
    });
    if (described == office->rend())
        return Fault{Code::person_unknown, person.name + " is not in this book", "--by", {}};
    entry::Draft draft = copy_for_job(*described);
    draft.job = on.id;
    draft.author = person.id;
    draft.when = on.moment.when;
    return draft;
}

Done join(Session& session, book::Book& open, Case& on, const Person& person) {
    if (auto free = are_free(on, person); !free) return free;
    auto draft = joining_draft(session, on, person);
    if (!draft) return draft.fault();
    auto kept = open.append({std::move(*draft)});
    if (!kept) return kept.fault();
    on.entries.push_back(kept->front());
    return on.fold_again();
}

} // namespace

Result<Person> author_on(Session& session, book::Book& open, Case& on, const std::string& typed) {
    auto meant = person_meant(on.job.people, typed);
    if (meant || typed.empty()) return meant;
    const auto all = people_of_book(session);
    if (!all) return all.fault();
    auto elsewhere = person_meant(*all, typed);
    if (!elsewhere || on.job.person(elsewhere->id) != nullptr) return meant;
    if (auto joined = join(session, open, on, *elsewhere); !joined) return joined.fault();
    return elsewhere;
}

Done join_named(Session& session, book::Book& open, Case& on, const Typed& typed) {
    const method::Kind* kind = on.kinds->find(typed.kind);
    Done done;
    const auto joining = [&](std::string_view name) -> Result<std::string> {
        auto person = author_on(session, open, on, std::string(name));
        if (person) return person->id;
        if (person.fault().code == Code::not_on_job) done = person.fault();
        return person.fault();
    };
    for (const auto& [name, value] : typed.fields) {
        const method::Field* field = kind == nullptr ? nullptr : kind->field(name);
        if (field != nullptr && field->type == method::FieldType::people)
            static_cast<void>(method::typed_list(*field, value, joining));
    }
    return done;
}

} // namespace undersheet::desk
