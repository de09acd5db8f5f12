#include "desk/firm.h"

#include "desk/desk.h"
#include "desk/drafts.h"
#include "desk/people.h"
#include "job/queries.h"

#include <algorithm>
#include <array>

namespace undersheet::desk {
namespace {

struct FirmField {
    const char* name;
    std::string Firm::*value;
};
constexpr std::array<FirmField, 6> kFirmFields{{{"name", &Firm::name},
                                                {"address", &Firm::address},
                                                {"phone", &Firm::phone},
                                                {"email", &Firm::email},
                                                {"registration", &Firm::registration},
                                                {"language", &Firm::language}}};

Firm said_last(const std::vector<entry::Entry>& office, const entry::Time& as_of) {
    Firm firm;
    for (const FirmField& field : kFirmFields) firm.*field.value = job::firm_said(office, as_of, field.name);
    return firm;
}

Result<Firm> firm_of(book::Book& book, const entry::Time& as_of) {
    auto office = book.entries(book.office());
    if (!office) return office.fault();
    return said_last(*office, as_of);
}

// Only what is new, so that what another device says of the rest meanwhile stands; and the name, which every entry has.
Result<Firm> news_of(const Firm& before, const Firm& changes) {
    Firm news;
    bool is_asked = false, is_new = false;
    for (const FirmField& field : kFirmFields) {
        const std::string& change = changes.*field.value;
        is_asked = is_asked || !change.empty();
        if (change.empty() || change == before.*field.value) continue;
        news.*field.value = change;
        is_new = true;
    }
    const std::string what = is_asked ? "that is what the book says already" : "nothing was said";
    if (!is_new) return Fault{Code::argument_wrong, what, "firm", "say what is new: --phone NUMBER, say"};
    if (news.name.empty()) news.name = before.name;
    return news;
}

Result<entry::Draft> news_draft(Session& session, const Firm& before, const Firm& changes,
                                const entry::Time& when, const std::string& by) {
    auto news = news_of(before, changes);
    if (!news) return news.fault();
    auto kinds = session.kinds_of("");
    if (!kinds) return kinds.fault();
    return office_draft(**kinds, firm_typed(*news), when, by);
}

bool is_earlier(const entry::Time& a, const entry::Time& b) { return a.unix_s < b.unix_s; }

} // namespace

Typed firm_typed(const Firm& firm) {
    Typed typed = {"firm", {}, {}, {}};
    for (const FirmField& field : kFirmFields) typed.put(field.name, firm.*field.value);
    return typed;
}

Result<Firm> Desk::firm() {
    auto book = session_->reader();
    if (!book) return book.fault();
    auto now = time_of(*session_, "");
    if (!now) return now.fault();
    return firm_of(**book, *now);
}

Result<Firm> Desk::change_firm(const Asked& asked, const Firm& changes) {
    auto when = time_of(*session_, asked.when);
    auto now = time_of(*session_, "");
    auto people = people_of_book(*session_);
    auto book = session_->writer();
    if (!when) return when.fault();
    if (!now) return now.fault();
    if (!people) return people.fault();
    if (!book) return book.fault();
    auto by = person_meant(*people, asked.by);
    if (!by) return by.fault();
    const entry::Time latest =
        std::max(*when, *now, is_earlier); // it may be about a day before the book began
    const auto before = firm_of(**book, latest);
    if (!before) return before.fault();
    auto draft = news_draft(*session_, *before, changes, *when, by->id);
    if (!draft) return draft.fault();
    auto jobs = open_jobs(*session_, **book);
    if (!jobs) return jobs.fault();
    std::erase_if(jobs->jobs, [&](const OpenJob& job) { return job.firm != before->name; }); // another firm's
    auto kept = (*book)->append(with_copies(*draft, *jobs));
    if (!kept) return kept.fault();
    return firm_of(**book, latest);
}

} // namespace undersheet::desk
