// Hand-over files: made, taken in any order, and refused whole when anything in them is not as it was.
#include "book/handing.h"
#include "book/taking.h"
#include "entry/json.h"
#include "tests/support/books.h"
#include "tests/support/sealed_anew.h"

#include <algorithm>
#include <catch2/catch.hpp>

using namespace undersheet;
using book::Access;
using book::Book;

namespace {

const std::string kPhoto = std::string("\xFF\xD8\xFF\xE0") + "a drawing of a gutter";

entry::Draft photo_draft(const entry::Hash& photo) {
    entry::Draft draft = air_draft();
    draft.kind = "photo";
    draft.data = entry::Value().set("sha256", entry::hash_text(photo));
    return draft;
}

// Two phones of one firm: the second was made from the first, which had a job with a customer and a photograph.
struct Two {
    Two() {
        Book book = one.start();
        const auto photo = good(book.keep_photo(kPhoto));
        good(book.append({open_draft(kJob, "A-1"), site_draft("Mrs Ada Pell"), photo_draft(photo)}));
        const std::string all = one.hand("all.hand", "");
        good(Book::start_from(two.path(), all, two.around()));
    }
    Phone one = Phone(11), two = Phone(12);
};

entry::Hash digest(Phone& phone) {
    const auto verified = good(phone.open(Access::read).verify());
    INFO((verified.ok() ? "" : verified.faults.front().what));
    CHECK(verified.ok());
    return verified.digest;
}

} // namespace

TEST_CASE("a phone made from a whole book has all of it, and a device of its own") {
    Two phones;
    CHECK(digest(phones.one) == digest(phones.two));
    Book book = phones.two.open();
    CHECK(book.office() == phones.one.open(Access::read).office());
    CHECK(good(book.last_job()) == kJob);
    CHECK(good(book.photo(entry::sha256(kPhoto))) == kPhoto);
    CHECK(good(book.entries(kJob)).at(1).field_text("customer") == "Mrs Ada Pell");
    good(book.append({air_draft()}));
    CHECK(book.device() != phones.one.open(Access::read).device());
}

TEST_CASE("what two phones wrote apart is the same book on both, in whatever order the files are taken") {
    Two phones;
    good(phones.one.open().append({air_draft(1)}));
    good(phones.two.open().append({air_draft(2), site_draft("Mr Caspar Dunmoor")}));
    const std::string first = phones.one.hand("one.hand");
    const std::string second = phones.two.hand("two.hand");
    const auto taken = good(phones.one.open().take(second));
    CHECK(taken.entries == 5);
    CHECK(taken.fresh == 2);
    CHECK(taken.new_devices.size() == 1);
    good(phones.two.open().take(first));
    CHECK(digest(phones.one) == digest(phones.two));
    for (const std::string& again : {first, second}) {
        CHECK(good(phones.one.open().take(again)).fresh == 0);
        CHECK(good(phones.two.open().take(again)).fresh == 0);
    }
    CHECK(digest(phones.one) == digest(phones.two));
    CHECK(good(phones.one.open().entries(kJob)).size() == 6);
}

TEST_CASE("what is written after taking stands on all that came") {
    Two phones;
    good(phones.two.open().append({air_draft(2)}));
    good(phones.one.open().take(phones.two.hand("two.hand")));
    const auto written = good(phones.one.open().append({air_draft(3)})).front();
    CHECK(written.lam == 5);
    CHECK(written.seen.size() == 1);
    CHECK(digest(phones.one) == digest(phones.one));
}

TEST_CASE("a job can be taken by another firm's book") {
    Two phones;
    Phone other(30);
    other.start();
    good(other.open().take(phones.one.hand("job.hand")));
    Book book = other.open(Access::read);
    CHECK(good(book.jobs()).at(0).ref == "A-1");
    CHECK(good(book.verify()).ok());
}

TEST_CASE("a job alone is no whole book, and a file that is there is never written over") {
    Two phones;
    Phone fresh(31);
    const std::string job = phones.one.hand("job.hand");
    CHECK(line_of(Book::start_from(fresh.path(), job, fresh.around())).find("holds one job") !=
          std::string::npos);
    CHECK(line_of(phones.one.open().hand(kJob, job)).find("a file of that name already") !=
          std::string::npos);
    CHECK(line_of(phones.one.open().take(job)) == "done");
}

TEST_CASE("an older copy of a book that meets what it had written goes on as a new device") {
    Two phones;
    const std::string old_copy = bytes_of_file(phones.one.path());
    good(phones.one.open().append({air_draft(5)}));
    const std::string file = phones.one.hand("newer.hand");
    const std::string device = phones.one.open(Access::read).device();
    write_file(phones.one.path(), old_copy);
    const auto taken = good(phones.one.open().take(file));
    CHECK(taken.was_older_copy);
    CHECK(taken.copied.empty());
    good(phones.one.open().append({air_draft(6)}));
    CHECK(phones.one.open(Access::read).device() != device);
    CHECK(good(phones.one.open(Access::read).verify()).ok());
}

TEST_CASE("a copied phone that went on twice is kept with both branches, and both are named") {
    Two phones;
    const std::string copy = bytes_of_file(phones.one.path());
    good(phones.one.open().append({air_draft(5)}));
    const std::string original = phones.one.hand("original.hand");
    write_file(phones.one.path(), copy); // the same key goes on from before
    phones.one.world.forward(60);
    good(phones.one.open().append({air_draft(7)}));
    const auto taken = good(phones.one.open().take(original));
    REQUIRE(taken.copied.size() == 1);
    CHECK(taken.was_older_copy);
    const auto verified = good(phones.one.open(Access::read).verify());
    REQUIRE(verified.faults.size() == 1);
    CHECK(verified.faults[0].what.find("the device was copied") == 0);
    CHECK(verified.faults[0].sort == entry::ChainFault::Sort::copied);
}

TEST_CASE(
    "whatever byte of a hand-over file is changed, it brings nothing that was not said or is refused whole") {
    Two phones;
    const std::string file = phones.one.hand("job.hand");
    const std::string bytes = bytes_of_file(file);
    const std::string changed = phones.one.folder.file("changed.hand");
    const auto honest = book::HandedFile::open(file)->read();
    int refused = 0;
    int tried = 0;
    int used = 0;
    for (std::size_t at = 0; at < bytes.size(); ++at) {
        const bool is_gap = bytes[at] == '\0'; // most of a page is empty
        if (is_gap || ++used % 3 != 0) continue;
        ++tried;
        std::string other = bytes;
        other[at] = static_cast<char>(other[at] ^ 0x10);
        write_file(changed, other);
        const auto read = book::guarded([&] { return book::HandedFile::open(changed)->read(); });
        if (!read) {
            ++refused;
            CHECK(read.fault().code == Code::not_handed);
            continue;
        }
        CHECK(read->seal.digest ==
              honest.seal.digest); // a byte that means nothing: of a free page, of a change counter
        CHECK(read->secrets.size() == honest.secrets.size());
        CHECK(read->photos == honest.photos);
    }
    INFO(refused << " of " << tried << " refused");
    CHECK(tried > 500);
    CHECK(refused > tried * 9 / 10);
}

TEST_CASE("a hand-over file that broke off is refused, and the book is as it was") {
    Two phones;
    good(phones.two.open().append({air_draft(4)}));
    const std::string bytes = bytes_of_file(phones.two.hand("job.hand"));
    const std::string before = bytes_of_file(phones.one.path());
    const std::string part = phones.one.folder.file("part.hand");
    for (std::size_t size = 0; size < bytes.size(); size += 512) {
        for (const std::size_t cut : {size, size + 1}) {
            write_file(part, bytes.substr(0, cut));
            CHECK_FALSE(phones.one.open().take(part).ok());
        }
    }
    CHECK(bytes_of_file(phones.one.path()) == before);
}

TEST_CASE("a hand-over file that holds anything but our tables is refused by what it holds") {
    const std::vector<std::pair<std::string, std::string>> tricks{
        {"CREATE VIEW v AS SELECT 1", "other tables"},
        {"CREATE TRIGGER t AFTER INSERT ON entry BEGIN SELECT 1; END", "other tables"},
        {"CREATE TABLE more (a TEXT)", "other tables"},
        {"ALTER TABLE entry ADD COLUMN more TEXT", "other tables"},
        {"CREATE INDEX i ON entry (body)", "other tables"},
        {"DELETE FROM seal", "it has no seal"},
        {"DELETE FROM pubkey", "the key of who sealed"},
        {"DELETE FROM entry WHERE rowid = (SELECT max(rowid) FROM entry)",
         "a photograph belongs to no entry"},
        {"UPDATE photo SET data = x'ffd8ff00'", "a photograph is not the one"},
        {"DELETE FROM photo", "something else than its seal says"},
        {"DELETE FROM secret", "something else than its seal says"},
        {"INSERT INTO text VALUES (x'2cf24dba5fb0a30e26e83b2ac5b9e29e1b161e5c1fa7425e73043362938b9824', "
         "x'68656c6c6f')",
         "something else than its seal says"},
        {"UPDATE secret SET val = CAST('Mr Nobody' AS BLOB)", "a personal value is not the one"},
        {"UPDATE entry SET sig = zeroblob(64) WHERE rowid = 1", "its signature is wrong"},
        {"UPDATE entry SET body = CAST(replace(body, 'A-1', 'A-2') AS BLOB)", "its name does not belong"},
        {"PRAGMA user_version = 2", "a newer version"},
        {"PRAGMA application_id = 7", "no hand-over file"}};
    for (const auto& [sql, says] : tricks) {
        Two phones;
        const std::string file = phones.one.hand("job.hand");
        tamper(file, sql);
        const std::string before = bytes_of_file(phones.two.path());
        INFO(sql);
        CHECK(line_of(phones.two.open().take(file)).find(says) != std::string::npos);
        CHECK(bytes_of_file(phones.two.path()) == before);
    }
}

TEST_CASE("a file of the first versions, whose seal says nothing of what is no entry, is taken as before") {
    Two phones;
    const std::string file = phones.one.hand("job.hand");
    change_and_seal(file, "SELECT 1", false);
    CHECK(good(phones.two.open().take(file)).entries == 3);
}

TEST_CASE("a book, a picture and an empty file are no hand-over files") {
    Two phones;
    const std::string photo = phones.one.folder.file("picture.jpg");
    write_file(photo, kPhoto);
    const std::string empty = phones.one.folder.file("empty");
    write_file(empty, "");
    for (const std::string& file : {phones.one.path(), photo, empty, phones.one.folder.file("missing")})
        CHECK_FALSE(phones.two.open().take(file).ok());
}

TEST_CASE("a journal laid beside a hand-over file is not looked at") {
    Two phones;
    const std::string file = phones.one.hand("job.hand");
    write_file(file + "-journal", bytes_of_file(file));
    write_file(file + "-wal", "whatever");
    CHECK(good(phones.two.open().take(file)).entries == 3);
}

TEST_CASE("entries that stand on something neither the file nor the book has are refused") {
    Two phones;
    good(phones.two.open().append({air_draft(4)}));
    const std::string file = phones.two.hand("two.hand");
    Phone other(40); // has not the first phone's entries
    other.start();
    // Without what the second phone's entry knew of.
    const std::string cut = other.folder.file("cut.hand");
    std::filesystem::copy_file(file, cut);
    change_and_seal(
        cut, "DELETE FROM entry WHERE instr(body, '\"lam\":4') = 0; DELETE FROM photo; DELETE FROM secret");
    REQUIRE(good(Book::look_at_handed(cut)).entries.size() == 1);
    CHECK(line_of(other.open().take(cut)).find("missing or was changed") != std::string::npos);
    CHECK(good(phones.two.open().take(cut)).fresh == 0);
}
