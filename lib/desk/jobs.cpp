#include "base/text.h"
#include "desk/desk.h"
#include "desk/drafts.h"
#include "desk/people.h"
#include "entry/names.h"
#include "job/method_check.h"
#include "schema/embedded.h"

#include <algorithm>

namespace undersheet::desk {
namespace {

std::string under_way(const job::Job& job) {
    std::vector<std::string> live;
    for (const auto& part : job.parts) {
        if (part.state == job::State::under_way || part.state == job::State::paused ||
            part.state == job::State::opened_again) {
            live.push_back(part.name);
        }
    }
    return live.empty() ? "nothing under way" : "under way: " + joined(live, ", ");
}

JobLine line_of(const Case& on, bool is_last) {
    JobLine line;
    line.job = {on.job.ref, on.job.roof_name, {}};
    line.id = on.id;
    line.entries = on.entries.size();
    line.current = is_last;
    if (on.job.opened != nullptr) {
        line.opened = on.job.opened->when.text;
        line.from_paper = on.job.opened->data.is_yes("from_paper");
        line.finished = on.job.opened->data.text_of("finished");
    }
    if (on.job.handed_over != nullptr && !line.from_paper) line.handed_over = on.job.handed_over->when.text;
    line.standing = line.from_paper             ? "from paper, finished " + line.finished
                    : !line.handed_over.empty() ? "handed over"
                                                : under_way(on.job);
    for (const job::Supplement& supplement : on.job.supplements) {
        if (supplement.is_open()) line.standing += "; supplement " + supplement.name + " open";
    }
    return line;
}

Done is_new_ref(book::Book& book, const std::string& ref) {
    auto jobs = book.jobs();
    if (!jobs) return jobs.fault();
    for (const auto& line : *jobs) {
        if (lower_ascii(line.ref) == lower_ascii(ref)) {
            return Fault{Code::argument_wrong,
                         "there is a job '" + line.ref + "' already",
                         {},
                         "give it another number"};
        }
    }
    return {};
}

Done check_finished(const NewJob& job) {
    if (job.from_paper == !job.finished.empty()) return {};
    if (job.from_paper) {
        return Fault{Code::field_missing, "an old roof needs the day it was finished", "--finished",
                     "write a day, like 2019-08-30"};
    }
    return Fault{Code::argument_wrong, "only an old roof is finished when it comes", "--finished",
                 "say --from-paper too"};
}

std::string_view own(const char* name) {
    const auto text = schema::find(name);
    if (!text) throw std::logic_error(std::string("the program was built without ") + name);
    return *text;
}

// A firm's own method has to have all that judging looks up, or checks would silently not be made.
Done own_method_fits(const method::Method& firms) {
    const auto usual = method::Method::read(own("method.json"));
    if (!usual) return usual.fault();
    const auto kinds = method::Catalogue::read(own("kinds.json"));
    if (!kinds) return kinds.fault();
    return job::method_fits(firms, *usual, *kinds);
}

// The method and the catalogue are kept with the book, so that a later program still judges this job by them.
Result<Typed> pinned_opening(book::Book& book, const NewJob& job) {
    const std::string_view method = job.method.empty() ? own("method.json") : std::string_view(job.method);
    auto read = method::Method::read(method);
    if (!read) return read.fault();
    if (!job.method.empty()) {
        if (auto fits = own_method_fits(*read); !fits) return fits.fault();
    }
    auto method_hash = book.keep_text(method);
    if (!method_hash) return method_hash.fault();
    auto kinds_hash = book.keep_text(own("kinds.json"));
    if (!kinds_hash) return kinds_hash.fault();
    Typed typed = {"open", {}, {}, {}};
    typed.put("ref", job.ref);
    typed.put("roof", job.roof);
    typed.put("method", entry::hash_text(*method_hash));
    typed.put("kinds", entry::hash_text(*kinds_hash));
    if (job.from_paper) typed.put("from_paper", "yes");
    typed.put("finished", job.finished);
    return typed;
}

// What is said of the firm bit by bit, as one.
void fill_in(entry::Draft& copy, const entry::Entry& later) {
    entry::Draft more = copy_for_job(later);
    if (const auto* members = more.data.map())
        for (const auto& [name, value] : *members) copy.data.set(name, value);
    for (const auto& [name, value] : more.personal) copy.personal.insert_or_assign(name, value);
    copy.author = more.author;
}

// A copy of what the office journal says last about the firm and about each person.
std::vector<entry::Draft> office_copies(const std::vector<entry::Entry>& office) {
    std::vector<const entry::Entry*> people;
    std::optional<entry::Draft> firm;
    for (const auto& entry : office) {
        if (entry.kind == "firm") {
            if (firm)
                fill_in(*firm, entry);
            else
                firm = copy_for_job(entry);
        }
        if (entry.kind != "person" || !entry.personal.contains("name")) continue; // another kind, or erased
        std::erase_if(people, [&](const entry::Entry* known) {
            return known->data.text_of("person") == entry.data.text_of("person");
        });
        people.push_back(&entry);
    }
    std::vector<entry::Draft> copies;
    if (firm) copies.push_back(*std::move(firm));
    for (const auto* entry : people) copies.push_back(copy_for_job(*entry));
    return copies;
}

Result<std::vector<entry::Draft>> first_entries(Session& session, book::Book& book, const Asked& asked,
                                                const NewJob& job) {
    auto office = book.entries(book.office());
    if (!office) return office.fault();
    auto by = person_meant(people_in(*office), asked.by);
    if (!by) return by.fault();
    auto when = time_of(session, asked.when);
    if (!when) return when.fault();
    auto typed = pinned_opening(book, job);
    if (!typed) return typed.fault();
    auto kinds = session.kinds_of("");
    if (!kinds) return kinds.fault();
    auto opening = office_draft(**kinds, *typed, *when, by->id);
    if (!opening) return opening.fault();
    std::vector<entry::Draft> drafts = office_copies(*office);
    drafts.insert(drafts.begin(), std::move(*opening));
    const std::string id = entry::new_job(*session.world);
    for (auto& draft : drafts) {
        draft.job = id;
        draft.when = *when;
    }
    return drafts;
}

} // namespace

// One that this version cannot judge is no reason to show none.
JobLine unreadable(const book::JobLine& job, const Fault& fault) {
    JobLine line;
    line.job.ref = job.ref;
    line.id = job.job;
    line.entries = static_cast<std::size_t>(job.entries);
    line.standing = "cannot be read here: " + fault.detail;
    return line;
}

// Two phones may each have opened a job of one number.
void tell_apart(std::vector<JobLine>& lines) {
    for (JobLine& line : lines) {
        const auto called = std::count_if(
            lines.begin(), lines.end(), [&](const JobLine& other) { return other.job.ref == line.job.ref; });
        line.asked_by = called > 1 || line.job.ref.empty() ? line.id.substr(0, kShortJob) : line.job.ref;
    }
}

Result<std::vector<JobLine>> Desk::jobs() {
    auto book = session_->reader();
    if (!book) return book.fault();
    auto jobs = (*book)->jobs();
    if (!jobs) return jobs.fault();
    auto last = (*book)->last_job();
    if (!last) return last.fault();
    std::vector<JobLine> lines;
    for (const auto& job : *jobs) {
        auto on = take_up(*session_, {job.job, {}, {}});
        lines.push_back(on ? line_of(*on, job.job == *last) : unreadable(job, on.fault()));
    }
    tell_apart(lines);
    return lines;
}

Result<JobLine> Desk::open_job(const Asked& asked, const NewJob& job) {
    auto book = session_->writer();
    if (!book) return book.fault();
    if (auto sound = check_finished(job); !sound) return sound.fault();
    if (auto fresh = is_new_ref(**book, job.ref); !fresh) return fresh.fault();
    auto drafts = first_entries(*session_, **book, asked, job);
    if (!drafts) return drafts.fault();
    auto kept = (*book)->append(std::move(*drafts));
    if (!kept) return kept.fault();
    auto on = take_up(*session_, {job.ref, {}, {}});
    if (!on) return on.fault();
    JobLine line = line_of(*on, true);
    line.asked_by = line.job.ref; // a ref that another job has is refused
    return line;
}

} // namespace undersheet::desk
