// The book: every job's entries in one file, with the keys, personal values, methods and photographs that go with them.
//
// Promises: what append gives back is on the disk, whatever happens to the power next; an action is kept whole or not at
//   all; writing the same id twice writes once; nothing is ever changed or taken out of the journal.
// Does not: know what an entry means, except that a job is opened by an entry of kind "open", whose field "ref" names it
//   to people. Does not read clocks: the world is brought along.
// Faults: book_missing, book_not_a_book, book_read_only, book_full, book_in_use, book_damaged, book_failed: one line each.
//   Where memory runs out it is book_failed, "no memory left", and the book can be used again; nothing else is thrown but
//   std::bad_alloc, where not even that line or a copy of the arguments finds room. What it was thrown out of is then not
//   kept, or kept as a whole: look again.
// Threads: a book belongs to one thread. World and key store must outlive it. Several programs may open one file; they
//   wait for each other, at most `wait_ms`.
#pragma once

#include "book/keys.h"
#include "entry/order.h"
#include "entry/world.h"

#include <functional>
#include <memory>

namespace undersheet::book {

class Session;
enum class Access { read, write };

// What a book stands on.
struct Surroundings {
    entry::World& world;
    KeyStore& keys;
    int wait_ms = 2000; // for another program that is writing
};

struct JobLine {
    std::string job = {};
    std::string ref = {}; // how people call it; "" when it was never opened here
    std::int64_t entries = 0;
    std::string last_when = {}; // the latest time any of its entries is about, as written
};

struct TakenJob {
    std::string job = {}, ref = {};
    std::int64_t in_file = 0, fresh = 0; // entries; fresh: that were not here yet
};

// What taking a hand-over file brought.
struct Taken {
    std::vector<TakenJob> jobs = {};
    std::int64_t entries = 0, fresh = 0, photos = 0;
    std::vector<std::string> new_devices = {};  // that this book had not met
    std::vector<entry::ChainFault> copied = {}; // devices whose chain goes on twice
    bool was_older_copy = false;                // the file knew entries of this device that the book did not
    bool has_erased = false;                    // values or photographs that were here are gone
};

// Without `forgotten` the key that is there is locked anew, and old_pin has to open it; there is none at first.
struct NewPin {
    std::string pin = {}, old_pin = {};
    bool forgotten = false;
};

struct Handed {
    std::int64_t entries = 0, photos = 0;
    std::vector<std::string> missing_photos = {}; // named by an entry, not erased, and not there as recorded
    entry::Hash digest = {};
};

struct Verified {
    std::int64_t entries = 0;
    entry::Hash digest =
        {}; // over the entry hashes, job by job in ascending order, each in the order of entry.h
    std::vector<entry::ChainFault> faults = {};
    std::int64_t missing_personal = 0; // values that entries name, nobody erased, and are not held
    [[nodiscard]] bool ok() const { return faults.empty(); }
};

struct HandedLook {
    std::vector<entry::Entry> entries = {}; // job by job in ascending order, each in the order of entry.h
    Verified verified = {};
};

class Book {
public:
    // Makes a book where there is no file yet. `first` are the first entries of the office journal (the firm); their job
    // may be left empty. Either the whole book is there afterwards or nothing is.
    [[nodiscard]] static Result<Book> start(const std::string& path, Surroundings around,
                                            std::vector<entry::Draft> first = {});
    [[nodiscard]] static Result<Book> open(const std::string& path, Access access, Surroundings around);
    // A hand-over file checked as if it were to be taken into an empty book, and that book verified.
    [[nodiscard]] static Result<HandedLook> look_at_handed(const std::string& handed);
    [[nodiscard]] static bool is_handed(const std::string& file); // by its first bytes
    // A new book out of a hand-over file that holds a whole one: the same firm, and a device of its own.
    [[nodiscard]] static Result<Book> start_from(const std::string& path, const std::string& handed,
                                                 Surroundings around);
    Book(Book&&) noexcept;
    Book& operator=(Book&&) noexcept;
    ~Book();

    // --- writing: one call, one transaction ---
    // A draft without job goes into the office journal. One whose id is already there with the same content gives the
    // entry that is there; with other content it is a fault.
    [[nodiscard]] Result<std::vector<entry::Entry>> append(std::vector<entry::Draft> drafts);
    // Everything that `work` reads and appends is one action: no other program writes in between, and when it ends in a
    // fault nothing of it is kept. What append gives back meanwhile is not saved before this returns.
    [[nodiscard]] Done in_one_go(const std::function<Done(Book&)>& work);
    // Keeps a method or catalogue by its hash, so that a job can always be judged by the one it began with.
    [[nodiscard]] Result<entry::Hash> keep_text(std::string_view text);
    // Keeps a photograph (JPEG or PNG, at most 32 MiB) as the file "<book>.photos/<sha256>", byte for byte. Call it before
    // appending the entry that names it.
    [[nodiscard]] Result<entry::Hash> keep_photo(std::string_view bytes);

    // Takes in what a hand-over file holds: the union of both, all of it or nothing. Who erased something is obeyed.
    [[nodiscard]] Result<Taken> take(const std::string& handed);
    // Takes away personal values and photographs that entries of kind "erase" name; call it after appending them.
    [[nodiscard]] Done forget_erased();

    // Sets a PIN within in_one_go: gives the person's own public key on this device, which the journal is to know.
    [[nodiscard]] Result<entry::PublicKey> lock(const std::string& person, const NewPin& pin);

    // --- reading: never writes the book ---
    [[nodiscard]] Result<bool> has_pin(const std::string& person); // on this device
    [[nodiscard]] Result<std::unique_ptr<entry::Signer>> unlock(const std::string& person,
                                                                std::string_view pin);
    // One job, or with "" the whole book, as one file for another device or the customer.
    [[nodiscard]] Result<Handed> hand(std::string_view job, const std::string& to);
    [[nodiscard]] const std::string& path() const;
    [[nodiscard]] const std::string& office() const; // the job that holds the firm and its people
    [[nodiscard]] std::string device() const;        // who wrote here last, or will write next
    [[nodiscard]] Result<std::vector<entry::Entry>>
    entries(std::string_view job);                                   // in order, personal values filled in
    [[nodiscard]] Result<entry::Entry> entry(std::string_view name); // 4 digits of its hash or more
    [[nodiscard]] Result<std::vector<JobLine>> jobs();               // by ref; without the office
    [[nodiscard]] Result<std::string> last_job(); // the job last appended to; "" when there is none
    [[nodiscard]] Result<std::string> text(const entry::Hash& hash);
    [[nodiscard]] Result<std::string> photo(const entry::Hash& hash);
    [[nodiscard]] Result<Verified>
    verify(); // every hash, signature, chain, Lamport number, commitment and look-up

private:
    explicit Book(std::unique_ptr<Session> session);
    std::unique_ptr<Session> session_;
};

} // namespace undersheet::book
