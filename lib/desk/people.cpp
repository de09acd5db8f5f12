#include "desk/people.h"

#include "base/text.h"
#include "desk/desk.h"
#include "desk/drafts.h"
#include "entry/names.h"
#include "job/queries.h"
#include "method/words.h"

#include <algorithm>

namespace undersheet::desk {
namespace {

using job::Person;

// How well `typed` fits: 3 for the initials, 2 for the whole name, 1 for the first name, 0 not at all.
int fit(const Person& person, const std::string& typed) {
    const std::string wanted = lower_ascii(trimmed(typed));
    if (person.id == wanted) return 4;
    if (lower_ascii(person.initials) == wanted) return 3;
    if (lower_ascii(person.name) == wanted) return 2;
    return lower_ascii(split(person.name, ' ')[0]) == wanted ? 1 : 0;
}

std::vector<std::string> names_of(const std::vector<Person>& people) {
    std::vector<std::string> names;
    for (const auto& person : people) names.push_back(person.name + " (" + person.initials + ")");
    return names;
}

Fault unknown(const std::vector<Person>& people, const std::string& typed) {
    if (people.empty()) {
        return {Code::person_unknown,
                "nobody is in this book yet",
                {},
                "undersheet people add NAME --role installer"};
    }
    if (typed.empty()) {
        return {Code::person_unknown, "say who it is", "--by", "one of " + joined(names_of(people), ", ")};
    }
    return {Code::person_unknown, "there is nobody called '" + typed + "'", "--by",
            "there are " + joined(names_of(people), ", ")};
}

Person described(const entry::Entry& entry) {
    return {entry.data.text_of("person"), entry.field_text("name"),   entry.field_text("initials"),
            entry.data.text_of("role"),   entry.data.text_of("firm"), entry.data.text_of("ends")};
}

std::string initials_of(const std::string& name) {
    std::string initials;
    for (const auto& word : split(name, ' ')) {
        if (!word.empty() && static_cast<unsigned char>(word[0]) < 0x80) initials += word[0];
    }
    return initials;
}

PersonLine line_of(const Person& person) {
    return {person.id, person.name, person.initials, person.role, person.firm, person.ends, false};
}

Typed typed_of(const NewPerson& person, const std::string& id) {
    Typed typed = {"person", {}, {}, {}};
    typed.put("person", id);
    typed.put("name", person.name);
    typed.put("role", person.role);
    typed.put("initials", person.initials);
    typed.put("firm", person.firm);
    typed.put("cards", person.cards);
    typed.put("ends", person.ends);
    return typed;
}

// The first person of a book is put there by nobody.
Result<std::string> author_of(const std::vector<Person>& people, const std::string& by) {
    if (people.empty()) return std::string();
    auto author = person_meant(people, by);
    if (!author) return author.fault();
    return author->id;
}

Result<entry::Draft> person_draft(Session& session, const Asked& asked, const NewPerson& person,
                                  const std::string& id, const std::vector<Person>& people) {
    auto author = author_of(people, asked.by);
    if (!author) return author.fault();
    auto when = time_of(session, asked.when);
    if (!when) return when.fault();
    auto kinds = session.kinds_of("");
    if (!kinds) return kinds.fault();
    return office_draft(**kinds, typed_of(person, id), *when, *author);
}

// Two people with the same initials could not be told apart on the papers.
Done is_new(const std::vector<Person>& people, const NewPerson& added, const std::string& id) {
    for (const auto& person : people) {
        if (person.id != id && lower_ascii(person.initials) == lower_ascii(added.initials)) {
            return Fault{Code::argument_wrong, "'" + person.initials + "' is " + person.name + " already",
                         "--initials", "give other initials"};
        }
    }
    return {};
}

// Nobody's initials need a joiner, and with one they would look like another's.
Done are_seen(const std::string& initials) {
    auto done = method::check_seen(initials, Joiners::unseen);
    if (done) return done;
    Fault refused = done.fault();
    refused.where = "person initials";
    return refused;
}

// Whoever another device put on a job stays the same person when added to this book.
std::string id_of(Session& session, const NewPerson& added, const std::vector<Person>& people,
                  const OpenJobs& jobs) {
    for (const auto& person : jobs.people) {
        const bool here = std::any_of(people.begin(), people.end(),
                                      [&](const Person& known) { return known.id == person.id; });
        if (!here && lower_ascii(person.initials) == lower_ascii(added.initials) &&
            lower_ascii(person.name) == lower_ascii(trimmed(added.name)))
            return person.id;
    }
    return entry::new_person(*session.world);
}

} // namespace

std::vector<Person> people_in(const std::vector<entry::Entry>& office) {
    std::vector<Person> people;
    for (const auto& entry : office) {
        if (entry.kind != "person") continue;
        const Person now = described(entry);
        const auto known =
            std::find_if(people.begin(), people.end(), [&](const Person& p) { return p.id == now.id; });
        if (known == people.end()) {
            people.push_back(now);
        } else {
            *known = now;
        }
    }
    std::sort(people.begin(), people.end(), [](const Person& a, const Person& b) { return a.name < b.name; });
    return people;
}

Result<Person> person_meant(const std::vector<Person>& people, const std::string& typed) {
    if (typed.empty() && people.size() == 1) return people[0];
    int best = 0;
    for (const auto& person : people) best = std::max(best, typed.empty() ? 0 : fit(person, typed));
    if (best == 0) return unknown(people, typed);
    std::vector<Person> fitting;
    for (const auto& person : people) {
        if (fit(person, typed) == best) fitting.push_back(person);
    }
    if (fitting.size() == 1) return fitting[0];
    return Fault{Code::person_unknown, "'" + typed + "' fits " + joined(names_of(fitting), " and "), "--by",
                 "give the initials"};
}

Result<OpenJobs> open_jobs(Session& session, book::Book& book) {
    auto jobs = book.jobs();
    if (!jobs) return jobs.fault();
    auto last = book.last_job();
    if (!last) return last.fault();
    OpenJobs open;
    for (const auto& line : *jobs) {
        auto on = take_up(session, {line.job, {}, {}});
        if (!on)
            continue; // a job that this version cannot read, or a stranger's: no reason to write on no other
        if (on->job.handed_over != nullptr) continue;
        open.jobs.insert(line.job == *last ? open.jobs.end() : open.jobs.begin(),
                         {line.job, job::firm_said(on->job, "name")});
        open.people.insert(open.people.end(), on->job.people.begin(), on->job.people.end());
    }
    return open;
}

std::vector<entry::Draft> with_copies(const entry::Draft& draft, const OpenJobs& jobs) {
    std::vector<entry::Draft> drafts = {draft};
    for (const OpenJob& job : jobs.jobs) {
        drafts.push_back(draft);
        drafts.back().job = job.id;
    }
    return drafts;
}

Result<std::vector<Person>> people_of_book(Session& session) {
    auto book = session.reader();
    if (!book) return book.fault();
    auto entries = (*book)->entries((*book)->office());
    if (!entries) return entries.fault();
    return people_in(*entries);
}

entry::Draft copy_for_job(const entry::Entry& person) {
    entry::Draft copy;
    copy.kind = person.kind;
    copy.author = person.author;
    copy.data = person.data;
    for (const auto& [field, value] : person.personal) copy.data.erase(field);
    copy.personal = person.personal;
    return copy;
}

Result<std::vector<PersonLine>> Desk::people() {
    auto people = people_of_book(*session_);
    if (!people) return people.fault();
    std::vector<PersonLine> lines;
    for (const auto& person : *people) {
        lines.push_back(line_of(person));
        const auto has_pin = session_->book->has_pin(person.id);
        if (!has_pin) return has_pin.fault();
        lines.back().has_pin = *has_pin;
    }
    return lines;
}

Result<PersonLine> Desk::add_person(const Asked& asked, const NewPerson& wanted) {
    NewPerson person = wanted;
    if (person.initials.empty()) person.initials = initials_of(person.name);
    if (auto seen = are_seen(person.initials); !seen) return seen.fault();
    auto people = people_of_book(*session_);
    if (!people) return people.fault();
    auto book = session_->writer();
    if (!book) return book.fault();
    auto jobs = open_jobs(*session_, **book);
    if (!jobs) return jobs.fault();
    const std::string id = id_of(*session_, person, *people, *jobs);
    auto draft = person_draft(*session_, asked, person, id, *people);
    if (!draft) return draft.fault();
    for (const auto& others : {*people, jobs->people}) {
        if (auto fresh = is_new(others, person, id); !fresh) return fresh.fault();
    }
    auto kept = (*book)->append(with_copies(*draft, *jobs));
    if (!kept) return kept.fault();
    return line_of(described(kept->front()));
}

} // namespace undersheet::desk
