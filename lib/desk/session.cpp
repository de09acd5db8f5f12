#include "desk/session.h"

#include "base/text.h"
#include "desk/supplements.h"
#include "schema/embedded.h"

#include <algorithm>

namespace undersheet::desk {
namespace {

using book::Access;
using book::Book;

Fault no_job(std::string detail, std::string clears) {
    return {Code::job_unknown, std::move(detail), {}, std::move(clears)};
}

std::string_view embedded(const char* name) {
    const auto found = schema::find(name);
    if (!found) throw std::logic_error(std::string("the program was built without ") + name);
    return *found;
}

// The text a job was pinned to: the program's own when it is still the same, else what the book kept.
Result<std::string> pinned_text(Session& session, const std::string& hash, const char* own) {
    if (hash.empty() || entry::hash_text(entry::sha256(embedded(own))) == hash)
        return std::string(embedded(own));
    auto parsed = entry::parse_hash(hash);
    if (!parsed) return parsed.fault();
    auto book = session.reader();
    if (!book) return book.fault();
    return (*book)->text(*parsed);
}

const entry::Entry* latest_of(const job::EntryList& entries) {
    const auto last =
        std::max_element(entries.begin(), entries.end(), [](const entry::Entry& a, const entry::Entry& b) {
            return a.when.unix_s < b.when.unix_s;
        });
    return last == entries.end() ? nullptr : &*last;
}

const entry::Entry* opening_of(const job::EntryList& entries) {
    const auto found =
        std::find_if(entries.begin(), entries.end(), [](const entry::Entry& e) { return e.kind == "open"; });
    return found == entries.end() ? nullptr : &*found;
}

std::vector<std::string> refs_of(const std::vector<book::JobLine>& jobs) {
    std::vector<std::string> refs;
    for (const auto& line : jobs) refs.push_back(line.ref);
    return refs;
}

Result<Case> load(Session& session, const std::string& id) {
    auto book = session.reader();
    if (!book) return book.fault();
    auto entries = (*book)->entries(id);
    if (!entries) return entries.fault();
    Case on;
    on.id = id;
    on.entries = std::move(*entries);
    const entry::Entry* opened = opening_of(on.entries);
    auto method = session.method_of(opened == nullptr ? "" : opened->data.text_of("method"));
    if (!method) return method.fault();
    auto kinds = session.kinds_of(opened == nullptr ? "" : opened->data.text_of("kinds"));
    if (!kinds) return kinds.fault();
    on.method = *method;
    on.kinds = *kinds;
    return on;
}

} // namespace

Result<Book*> Session::reader() {
    if (book) return &*book;
    auto opened = Book::open(path, Access::read, {*world, keys});
    if (!opened) return opened.fault();
    book = std::move(*opened);
    return &*book;
}

Result<Book*> Session::writer() {
    if (book && writable) return &*book;
    auto opened = Book::open(path, Access::write, {*world, keys});
    if (!opened) return opened.fault();
    book = std::move(*opened);
    writable = true;
    return &*book;
}

Result<MethodPtr> Session::method_of(const std::string& hash) {
    if (const auto known = methods.find(hash); known != methods.end()) return known->second;
    auto text = pinned_text(*this, hash, "method.json");
    if (!text) return text.fault();
    auto read = method::Method::read(*text);
    if (!read) return read.fault();
    return methods[hash] = std::make_shared<const method::Method>(std::move(*read));
}

Result<KindsPtr> Session::kinds_of(const std::string& hash) {
    if (const auto known = catalogues.find(hash); known != catalogues.end()) return known->second;
    auto text = pinned_text(*this, hash, "kinds.json");
    if (!text) return text.fault();
    auto read = method::Catalogue::read(*text);
    if (!read) return read.fault();
    return catalogues[hash] = std::make_shared<const method::Catalogue>(std::move(*read));
}

Result<entry::Time> time_of(Session& session, const std::string& typed) {
    if (typed.empty()) return session.world->clock();
    auto time = entry::parse_time(typed);
    if (time) return time;
    Fault fault = time.fault();
    fault.where = "--when";
    return fault;
}

Moment moment_of(const entry::Time& when, bool given, const job::EntryList& entries) {
    const entry::Entry* latest = latest_of(entries);
    if (given || latest == nullptr || latest->when.unix_s <= when.unix_s) return {when, when};
    return {when, latest->when};
}

// Two phones may each open a job of one number, and a stranger may use yours.
Fault two_jobs(const std::string& ref, const std::vector<std::string>& called) {
    std::vector<std::string> names;
    for (const auto& job : called) names.push_back("--job " + job.substr(0, kShortJob));
    return no_job(std::to_string(called.size()) + " jobs are called '" + ref + "'",
                  "name the one that is meant: " + joined(names, ", ") + "; undersheet jobs lists them");
}

Result<std::string> find_job(Book& book, const std::string& ref) {
    auto jobs = book.jobs();
    if (!jobs) return jobs.fault();
    if (ref.empty()) {
        auto last = book.last_job();
        if (!last) return last.fault();
        if (last->empty())
            return no_job("there is no job in this book yet",
                          "undersheet jobs new REF --roof TEXT opens one");
        return *last;
    }
    for (const bool exactly : {true, false}) {
        std::vector<std::string> called;
        for (const auto& line : *jobs) {
            if (exactly ? line.ref == ref : lower_ascii(line.ref) == lower_ascii(ref))
                called.push_back(line.job);
        }
        if (called.size() > 1) return two_jobs(ref, called);
        if (called.size() == 1) return called.front();
    }
    for (const auto& line : *jobs) {
        if (ref.size() >= kShortJob && line.job.starts_with(lower_ascii(ref))) return line.job;
    }
    const std::string near = nearest_word(ref, refs_of(*jobs));
    return no_job("there is no job '" + ref + "' in this book",
                  near.empty() ? "undersheet jobs lists them" : "did you mean '" + near + "'?");
}

JobName Case::name() const {
    const job::Supplement* supplement = job.supplement();
    return {job.ref, job.roof_name, supplement == nullptr ? "" : supplement->name};
}

Done Case::fold_again() {
    auto folded = job::fold(entries, *method, *kinds, moment.as_of, within);
    if (!folded) return folded.fault();
    job = std::move(*folded);
    judgement.reset();
    return {};
}

const job::Judgement& Case::judged() {
    if (!judgement) judgement = job::judge(job, *method, *kinds);
    return *judgement;
}

Result<Case> take_up(Session& session, const Asked& asked) {
    auto book = session.reader();
    if (!book) return book.fault();
    auto id = find_job(**book, asked.job);
    if (!id) return id.fault();
    auto on = load(session, *id);
    if (!on) return on.fault();
    auto when = time_of(session, asked.when);
    if (!when) return when.fault();
    on->moment = moment_of(*when, !asked.when.empty(), on->entries);
    if (auto folded = on->fold_again(); !folded) return folded.fault();
    if (auto chosen = choose_supplement(*on, asked.supplement); !chosen) return chosen.fault();
    return on;
}

Result<const entry::Entry*> find_entry(const Case& on, std::string_view name) {
    constexpr std::size_t kShortest = 4;
    const std::string wanted = lower_ascii(name);
    const entry::Entry* found = nullptr;
    for (const auto& entry : on.entries) {
        if (wanted.size() < kShortest || !entry::hash_text(entry.hash).starts_with(wanted)) continue;
        if (found != nullptr) {
            return Fault{Code::entry_unknown,
                         "'" + wanted + "' begins more than one entry",
                         {},
                         "give more of its name"};
        }
        found = &entry;
    }
    if (found != nullptr) return found;
    return Fault{Code::entry_unknown,
                 "job " + on.job.ref + " has no entry '" + std::string(name) + "'",
                 {},
                 "undersheet history prints their names"};
}

} // namespace undersheet::desk
