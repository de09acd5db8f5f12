#include "book/book.h"

#include "book/admitting.h"
#include "book/files.h"
#include "book/handed_look.h"
#include "book/journal.h"
#include "book/opening.h"
#include "book/photos.h"
#include "book/session.h"
#include "book/taking.h"
#include "book/verify.h"
#include "entry/names.h"

namespace undersheet::book {
namespace {

using entry::Draft;
using entry::Entry;
using entry::Hash;

// The least and the greatest hash that begin with `digits`.
std::pair<Hash, Hash> range_of(std::string_view digits) {
    const std::string name(digits);
    return {*entry::parse_hash(name + std::string(64 - name.size(), '0')),
            *entry::parse_hash(name + std::string(64 - name.size(), 'f'))};
}

bool is_entry_name(std::string_view name) {
    constexpr std::size_t kFewestDigits = 4;
    return name.size() >= kFewestDigits && name.size() <= 64 && entry::is_hex(name, name.size());
}

} // namespace

Book::Book(std::unique_ptr<Session> session) : session_(std::move(session)) {}
Book::Book(Book&&) noexcept = default;
Book& Book::operator=(Book&&) noexcept = default;
Book::~Book() = default;

Result<Book> Book::start(const std::string& path, Surroundings around, std::vector<Draft> first) {
    auto made = guarded([&] {
        make_book(path, entry::new_job(around.world), around.wait_ms, [&](const std::string& part) {
            Session(part, Access::write, around).append(std::move(first));
        });
        return true;
    });
    if (!made) return made.fault();
    return open(path, Access::write, around);
}

Result<Book> Book::start_from(const std::string& path, const std::string& handed, Surroundings around) {
    auto made = guarded([&] {
        const Incoming incoming = HandedFile::open(handed)->read();
        if (incoming.seal.office.empty()) {
            throw Trouble{{Code::not_handed, "this file holds one job, not a whole book", handed,
                           "take it into a book of yours: undersheet take"}};
        }
        make_book(path, incoming.seal.office, around.wait_ms,
                  [&](const std::string& part) { Session(part, Access::write, around, path).take(handed); });
        return true;
    });
    if (!made) return made.fault();
    return open(path, Access::write, around);
}

Result<HandedLook> Book::look_at_handed(const std::string& handed) {
    return guarded([&] { return book::look_at_handed(handed); });
}

// The application id stands in bytes 68 to 71 of an SQLite file, the highest first.
bool Book::is_handed(const std::string& file) {
    constexpr std::size_t kAt = 68;
    const auto start = read_start(file, kAt + 4);
    return start.size() == kAt + 4 && start.substr(kAt) == "USHH";
}

Result<Taken> Book::take(const std::string& handed) {
    return guarded([&] { return session_->take(handed); });
}

Result<Handed> Book::hand(std::string_view job, const std::string& to) {
    return guarded([&] { return session_->hand(job, to); });
}

Result<entry::PublicKey> Book::lock(const std::string& person, const NewPin& pin) {
    return guarded([&] { return session_->lock(person, pin); });
}

Result<bool> Book::has_pin(const std::string& person) {
    return guarded([&] { return session_->has_pin(person); });
}

Result<std::unique_ptr<entry::Signer>> Book::unlock(const std::string& person, std::string_view pin) {
    return guarded([&] { return session_->unlock(person, pin); });
}

Done Book::forget_erased() {
    const auto done = guarded([&] {
        session_->forget_erased();
        return true;
    });
    if (!done) return done.fault();
    return {};
}

Result<Book> Book::open(const std::string& path, Access access, Surroundings around) {
    return guarded([&] {
        done_or_trouble(check_file(path));
        done_or_trouble(check_beside(path));
        return Book(std::make_unique<Session>(path, access, around));
    });
}

Result<std::vector<Entry>> Book::append(std::vector<Draft> drafts) {
    return guarded([&] { return session_->append(std::move(drafts)); });
}

Done Book::in_one_go(const std::function<Done(Book&)>& work) {
    const auto done = guarded([&] {
        session_->in_one_go([&] { return work(*this); });
        return true;
    });
    if (!done) return done.fault();
    return {};
}

Result<Hash> Book::keep_text(std::string_view text) {
    return guarded([&] {
        if (text.size() > kMostTextBytes)
            throw Trouble{{Code::json_too_large, "this text is larger than 16 MiB"}};
        const Hash hash = entry::sha256(text);
        session_->keep_text(hash, text);
        return hash;
    });
}

Result<Hash> Book::keep_photo(std::string_view bytes) {
    return guarded([&] { return value_or_trouble(keep_photo_file(session_->photo_folder(), bytes)); });
}

const std::string& Book::path() const { return session_->path(); }
const std::string& Book::office() const { return session_->office(); }
std::string Book::device() const { return session_->device(); }

Result<std::vector<Entry>> Book::entries(std::string_view job) {
    return guarded([&] { return entries_of(session_->connected(), job); });
}

Result<Entry> Book::entry(std::string_view name) {
    return guarded([&] {
        const std::string shown(name.substr(0, 64));
        if (!is_entry_name(name)) {
            throw Trouble{{Code::entry_unknown,
                           "'" + shown + "' is no entry's name",
                           {},
                           "write 4 or more of its digits 0-9 and a-f"}};
        }
        const auto [low, high] = range_of(name);
        auto found = entries_between(session_->connected(), low, high);
        if (found.empty()) throw Trouble{{Code::entry_unknown, "there is no entry '" + shown + "'"}};
        if (found.size() > 1) {
            throw Trouble{{Code::entry_unknown,
                           "more than one entry begins with '" + shown + "'",
                           {},
                           "write more of its digits"}};
        }
        return std::move(found.front());
    });
}

Result<std::vector<JobLine>> Book::jobs() {
    return guarded([&] {
        std::vector<JobLine> jobs;
        session_->connected().each(
            "SELECT job, ref, entries, last_when FROM job WHERE job <> ? ORDER BY ref, job",
            {session_->office()}, [&](const Row& row) {
                jobs.push_back({row.text(0), row.text(1), row.integer(2), row.text(3)});
            });
        return jobs;
    });
}

Result<std::string> Book::last_job() {
    return guarded([&] { return local(session_->connected(), "last_job"); });
}

Result<std::string> Book::text(const Hash& hash) {
    return guarded([&] {
        std::string text;
        const bool found =
            session_->connected().one("SELECT body FROM text WHERE hash = ?", {Bytes{bytes_of(hash)}},
                                      [&](const Row& row) { text = row.bytes(0); });
        if (!found || entry::sha256(text) != hash) {
            throw Trouble{{Code::book_damaged,
                           "the method " + entry::short_name(hash) + " is not in the book as it was kept",
                           session_->path(), "go back to a copy"}};
        }
        return text;
    });
}

Result<std::string> Book::photo(const Hash& hash) {
    return guarded([&] { return value_or_trouble(read_photo_file(session_->photo_folder(), hash)); });
}

Result<Verified> Book::verify() {
    return guarded([&] { return verify_book(session_->connected(), session_->photo_folder()); });
}

} // namespace undersheet::book
