#include "desk/people.h"

#include "base/text.h"
#include "desk/desk.h"
#include "desk/drafts.h"
#include "entry/names.h"

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
    typed.put("initials", person.initials.empty() ? initials_of(person.name) : person.initials);
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
                                  const std::vector<Person>& people) {
    auto author = author_of(people, asked.by);
    if (!author) return author.fault();
    auto when = time_of(session, asked.when);
    if (!when) return when.fault();
    auto kinds = session.kinds_of("");
    if (!kinds) return kinds.fault();
    return office_draft(**kinds, typed_of(person, entry::new_person(*session.world)), *when, *author);
}

// Two people with the same initials could not be told apart on the papers.
Done is_new(const std::vector<Person>& people, const entry::Draft& draft) {
    for (const auto& person : people) {
        const auto initials = draft.personal.find("initials");
        if (initials != draft.personal.end() &&
            lower_ascii(person.initials) == lower_ascii(initials->second)) {
            return Fault{Code::argument_wrong, "'" + person.initials + "' is " + person.name + " already",
                         "--initials", "give other initials"};
        }
    }
    return {};
}

// Every job that is still open gets its own copy, so that a job handed over alone knows its people. The job last worked on
// comes last, so that it stays the one last worked on.
Result<std::vector<std::string>> open_jobs(Session& session, book::Book& book) {
    auto jobs = book.jobs();
    if (!jobs) return jobs.fault();
    auto last = book.last_job();
    if (!last) return last.fault();
    std::vector<std::string> open;
    for (const auto& line : *jobs) {
        auto on = take_up(session, {line.ref, {}, {}});
        if (!on) return on.fault();
        if (on->job.handed_over == nullptr && line.job != *last) open.push_back(line.job);
        if (on->job.handed_over == nullptr && line.job == *last) last = line.job + "!";
    }
    if (last->ends_with("!")) open.push_back(last->substr(0, last->size() - 1));
    return open;
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

Result<std::vector<Person>> people_of_book(Session& session) {
    auto book = session.reader();
    if (!book) return book.fault();
    auto entries = (*book)->entries((*book)->office());
    if (!entries) return entries.fault();
    return people_in(*entries);
}

Result<Person> author_on(Session& session, const Case& on, const std::string& typed) {
    auto meant = person_meant(on.job.people, typed);
    if (meant || typed.empty()) return meant;
    auto all = people_of_book(session);
    if (!all) return all.fault();
    const auto elsewhere = person_meant(*all, typed);
    if (!elsewhere) return meant;
    return Fault{Code::not_on_job, elsewhere->name + " is not on job " + on.job.ref, "--by",
                 "one of " + joined(names_of(on.job.people), ", ")};
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

Result<PersonLine> Desk::add_person(const Asked& asked, const NewPerson& person) {
    auto people = people_of_book(*session_);
    if (!people) return people.fault();
    auto draft = person_draft(*session_, asked, person, *people);
    if (!draft) return draft.fault();
    if (auto fresh = is_new(*people, *draft); !fresh) return fresh.fault();
    auto book = session_->writer();
    if (!book) return book.fault();
    auto jobs = open_jobs(*session_, **book);
    if (!jobs) return jobs.fault();
    std::vector<entry::Draft> drafts = {*draft};
    for (const auto& job : *jobs) {
        drafts.push_back(*draft);
        drafts.back().job = job;
    }
    auto kept = (*book)->append(std::move(drafts));
    if (!kept) return kept.fault();
    return line_of(described(kept->front()));
}

} // namespace undersheet::desk
