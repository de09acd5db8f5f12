// What lies on the desk: the open book, and one job of it folded and judged. Only the desk's own files include this.
//
// Promises: the book is opened for reading until something is to be written, so a read-only book can still be asked.
//   A job is judged by the method and the catalogue it was opened with, whatever came later.
// Threads: as Desk.
#pragma once

#include "book/book.h"
#include "desk/answers.h"
#include "desk/requests.h"
#include "job/judge.h"

#include <map>

namespace undersheet::desk {

using MethodPtr = std::shared_ptr<const method::Method>;
using KindsPtr = std::shared_ptr<const method::Catalogue>;

struct Session {
    Session(std::string file, std::unique_ptr<entry::World> outside)
        : path(std::move(file)), world(std::move(outside)), keys(path) {}

    [[nodiscard]] Result<book::Book*> reader();
    [[nodiscard]] Result<book::Book*> writer();
    [[nodiscard]] Result<MethodPtr> method_of(const std::string& hash);
    [[nodiscard]] Result<KindsPtr> kinds_of(const std::string& hash);

    std::string path;
    std::unique_ptr<entry::World> world;
    book::KeyFiles keys;
    std::optional<book::Book> book = {}; // after world and keys: it stands on them
    bool writable = false;
    std::map<std::string, MethodPtr> methods = {}; // by hash, as far as they were read
    std::map<std::string, KindsPtr> catalogues = {};
};

// The time somebody speaks about, and the time the job is judged as of. They differ only when no time was given and the
// record runs ahead of this machine's clock: then nothing that was recorded is left out of the judging.
inline constexpr std::size_t kShortJob = 8; // letters of a job's id that name it where two have one number

struct Moment {
    entry::Time when = {}, as_of = {};
};

// One job, taken up.
struct Case {
    std::string id = {};
    MethodPtr method = {};
    KindsPtr kinds = {};
    job::EntryList entries = {};
    Moment moment = {};
    job::Job job = {};
    std::optional<job::Judgement> judgement = {}; // empty until somebody asks

    [[nodiscard]] Done fold_again(); // after entries or moment changed
    [[nodiscard]] const job::Judgement& judged();
    std::optional<entry::Hash> within = {}; // the supplement that is meant, by the entry that opened it
    [[nodiscard]] JobName name() const;
};

[[nodiscard]] Result<Case> take_up(Session& session, const Asked& asked);
[[nodiscard]] Result<std::string> find_job(book::Book& book,
                                           const std::string& ref); // its id; "" is the last one

[[nodiscard]] Result<entry::Time> time_of(Session& session, const std::string& typed); // "" is the clock
[[nodiscard]] Moment moment_of(const entry::Time& when, bool given, const job::EntryList& entries);

// The entry somebody means by the beginning of its name, among those of the job.
[[nodiscard]] Result<const entry::Entry*> find_entry(const Case& on, std::string_view name);

} // namespace undersheet::desk
