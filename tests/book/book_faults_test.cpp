// Everything that is no book, and books that cannot be read or written just now: one clear line each, and nothing touched.
#include "book/book.h"

#include "tests/support/books.h"

#include <catch2/catch.hpp>
#include <sqlite3.h>
#include <sys/stat.h>
#include <unistd.h>

#if !defined(__EMSCRIPTEN__)
#include <csignal>
#include <sys/wait.h>
#endif

using namespace undersheet;
using book::Access;
using book::Book;

namespace {

std::string line_of_opening(Shelf& shelf, Access access = Access::read) {
    return line_of(Book::open(shelf.path(), access, shelf.around()));
}

void sql(const std::string& path, const std::string& statements) {
    sqlite3* handle = nullptr;
    REQUIRE(sqlite3_open(path.c_str(), &handle) == SQLITE_OK);
    const int code = sqlite3_exec(handle, statements.c_str(), nullptr, nullptr, nullptr);
    REQUIRE(sqlite3_close(handle) == SQLITE_OK);
    REQUIRE(code == SQLITE_OK);
}

#if !defined(__EMSCRIPTEN__)
// Root may write anywhere, so a test about what may not be written becomes somebody else for a while.
class AsNobody {
public:
    AsNobody() : was_root_(::geteuid() == 0 && ::seteuid(65534) == 0) {}
    AsNobody(const AsNobody&) = delete;
    AsNobody& operator=(const AsNobody&) = delete;
    ~AsNobody() {
        if (was_root_ && ::seteuid(0) != 0) std::abort();
    }

private:
    bool was_root_;
};

void may(const std::string& path, unsigned mode) {
    std::filesystem::permissions(path, static_cast<std::filesystem::perms>(mode));
}
#endif

} // namespace

TEST_CASE("a book that is not there is named") {
    Shelf shelf;
    CHECK(line_of_opening(shelf) ==
          shelf.path() + ": there is no book of that name; start one, or name the right file");
    CHECK_FALSE(std::filesystem::exists(shelf.path()));
}

TEST_CASE("what is no book is refused and stays as it was") {
    const std::string bytes =
        GENERATE(std::string("Dear Mrs Pell, the roof is finished.\n"), std::string(5000, 'x'),
                 std::string("SQLite format 3\0 and then nothing of the kind", 45), std::string("\0", 1));
    Shelf shelf;
    write_file(shelf.path(), bytes);
    for (const Access access : {Access::read, Access::write}) {
        CHECK(line_of_opening(shelf, access) == shelf.path() + ": this file is no book");
    }
    CHECK(bytes_of_file(shelf.path()) == bytes);
}

TEST_CASE("an empty file, a folder and another program's database are told apart") {
    Shelf shelf;
    write_file(shelf.path(), "");
    CHECK(line_of_opening(shelf, Access::write) == shelf.path() + ": this file is empty");
    CHECK(bytes_of_file(shelf.path()).empty());
    std::filesystem::remove(shelf.path());
    std::filesystem::create_directory(shelf.path());
    CHECK(line_of_opening(shelf) == shelf.path() + ": this is a folder, pipe or device, not a book");
    std::filesystem::remove(shelf.path());
    sql(shelf.path(), "CREATE TABLE entry (a, b); INSERT INTO entry VALUES (1, 2)");
    CHECK(line_of_opening(shelf, Access::write) == shelf.path() + ": this file is no book");
}

#if !defined(__EMSCRIPTEN__)
TEST_CASE("a pipe beside a book in the place of its journal is named, and nobody is waited for") {
    Shelf shelf;
    shelf.start();
    const std::string journal = shelf.path() + "-journal";
    std::filesystem::remove(journal);
    REQUIRE(::mkfifo(journal.c_str(), 0600) == 0);
    for (const Access access : {Access::read, Access::write})
        CHECK(line_of_opening(shelf, access) ==
              journal + ": a pipe or device lies here, not the book's journal; take it away");
    std::filesystem::remove(journal);
    CHECK(line_of_opening(shelf) == "done");
}
#endif

TEST_CASE("a book of a newer version, or with strange things in it, is not opened") {
    Shelf shelf;
    shelf.start();
    sql(shelf.path(), "PRAGMA user_version = 2");
    CHECK(line_of_opening(shelf) ==
          shelf.path() + ": this book was written by a newer version; bring this program up to date");
    sql(shelf.path(),
        "PRAGMA user_version = 1; CREATE TRIGGER t AFTER INSERT ON entry BEGIN DELETE FROM secret; END");
    CHECK(line_of_opening(shelf) == shelf.path() + ": this file holds things that no book of ours has");
    sql(shelf.path(), "DROP TRIGGER t; CREATE VIEW v AS SELECT 1");
    CHECK_FALSE(Book::open(shelf.path(), Access::write, shelf.around()).ok());
}

TEST_CASE("a book is not started over a file, nor in a folder that is not there") {
    Shelf shelf;
    write_file(shelf.path(), "a letter");
    CHECK(line_of(Book::start(shelf.path(), shelf.around())) ==
          shelf.path() + ": there is a file of that name already; choose another name");
    CHECK(bytes_of_file(shelf.path()) == "a letter");
    CHECK(line_of(Book::start(shelf.folder.file("none/demo.book"), shelf.around())) ==
          shelf.folder.file("none") + ": there is no such folder; make it first");
    CHECK(shelf.keys.keys.empty());
}

TEST_CASE("a book that could not be started leaves nothing behind") {
    Shelf shelf;
    entry::Draft bad = firm_draft();
    bad.kind = "Firm";
    CHECK_FALSE(Book::start(shelf.path(), shelf.around(), {bad}).ok());
    CHECK(std::filesystem::is_empty(shelf.folder.path()));
}

TEST_CASE("a book opened for reading refuses to write and says why") {
    Shelf shelf;
    shelf.start();
    Book book = shelf.open(Access::read);
    CHECK(line_of(book.append({air_draft()})) == shelf.path() + ": the book was opened for reading only");
    CHECK(book.keep_text("x").fault().code == Code::book_read_only);
    CHECK(good(book.entries(kJob)).empty());
}

TEST_CASE("a book cut short is called damaged") {
    Shelf shelf;
    shelf.start();
    const std::string bytes = bytes_of_file(shelf.path());
    write_file(shelf.path(), bytes.substr(0, bytes.size() / 2));
    auto opened = Book::open(shelf.path(), Access::read, shelf.around());
    if (opened.ok()) {
        CHECK_FALSE(good(opened->verify()).ok());
    } else {
        CHECK(opened.fault().code == Code::book_damaged);
    }
}

TEST_CASE("while another program writes, a book says that it is in use") {
    Shelf shelf;
    Book book = shelf.start();
    sqlite3* other = nullptr;
    REQUIRE(sqlite3_open(shelf.path().c_str(), &other) == SQLITE_OK);
    REQUIRE(sqlite3_exec(other, "BEGIN EXCLUSIVE", nullptr, nullptr, nullptr) == SQLITE_OK);
    const std::string line =
        shelf.path() + ": another program is writing in this book; close it or wait a moment";
    CHECK(line_of(book.append({air_draft()})) == line);
    CHECK(line_of(book.entries(kJob)) == line);
    CHECK(line_of_opening(shelf) == line);
    REQUIRE(sqlite3_exec(other, "COMMIT", nullptr, nullptr, nullptr) == SQLITE_OK);
    REQUIRE(sqlite3_close(other) == SQLITE_OK);
    CHECK(good(book.append({air_draft()}))[0].seq == 1); // and goes on as if nothing had been
}

TEST_CASE("while another program reads, a commit is refused and nothing is kept by halves") {
    Shelf shelf;
    Book book = shelf.start();
    sqlite3* other = nullptr;
    REQUIRE(sqlite3_open(shelf.path().c_str(), &other) == SQLITE_OK);
    REQUIRE(sqlite3_exec(other, "BEGIN; SELECT count(*) FROM entry", nullptr, nullptr, nullptr) == SQLITE_OK);
    const auto refused = book.append({air_draft(), site_draft("Mrs Ada Pell")});
    REQUIRE_FALSE(refused.ok());
    CHECK(refused.fault().code == Code::book_in_use);
    REQUIRE(sqlite3_exec(other, "COMMIT", nullptr, nullptr, nullptr) == SQLITE_OK);
    REQUIRE(sqlite3_close(other) == SQLITE_OK);
    CHECK(good(book.entries(kJob)).empty());
    CHECK(good(book.append({air_draft()})).size() == 1);
    CHECK(good(book.verify()).ok());
}

#if !defined(__EMSCRIPTEN__)
TEST_CASE("a book that may not be written opens for reading only") {
    Shelf shelf;
    shelf.start();
    may(shelf.folder.path(), 0777);
    may(shelf.path(), 0444);
    const AsNobody nobody;
    CHECK(line_of_opening(shelf, Access::write) ==
          shelf.path() + ": the book may not be written; let it be written, or copy it elsewhere");
    CHECK(shelf.open(Access::read).office().size() == 32);
}

TEST_CASE("a book in a folder that may not be written takes no entry") {
    Shelf shelf;
    shelf.start();
    may(shelf.path(), 0666);
    may(shelf.folder.path(), 0555);
    {
        const AsNobody nobody;
        Book book = shelf.open(Access::write);
        const auto refused = book.append({air_draft()});
        REQUIRE_FALSE(refused.ok());
        CHECK(refused.fault().code == Code::book_read_only);
        CHECK(Book::start(shelf.folder.file("new.book"), shelf.around()).fault().code ==
              Code::book_read_only);
    }
    may(shelf.folder.path(), 0755);
    CHECK(good(shelf.open().verify()).entries == 1);
}

TEST_CASE("a book that may not be read is refused") {
    Shelf shelf;
    shelf.start();
    may(shelf.path(), 0000);
    const AsNobody nobody;
    CHECK_FALSE(Book::open(shelf.path(), Access::read, shelf.around()).ok());
}

// The real thing beside the exhaustive cutting of power_test.cpp: a process killed while it appends as fast as it can.
TEST_CASE("a program killed while it writes has lost nothing that it was told was saved") {
    Shelf shelf;
    shelf.start();
    std::int64_t told_in_all = 0;
    for (int round = 0; round < 10; ++round) {
        int pipe_ends[2];
        REQUIRE(::pipe(pipe_ends) == 0);
        const ::pid_t child = ::fork();
        REQUIRE(child >= 0);
        if (child == 0) {
            FixedWorld world(
                static_cast<std::uint64_t>(100 + round)); // or each round would make the same ids
            auto book = Book::open(shelf.path(), Access::write, {world, shelf.keys, 1000});
            for (int i = 0; book.ok() && book->append({air_draft(i), air_draft(i)}).ok(); ++i) {
                if (::write(pipe_ends[1], "x", 1) != 1) break;
            }
            ::_exit(1);
        }
        ::close(pipe_ends[1]);
        char told = 0;
        for (int i = 0; i <= round; ++i) {
            if (::read(pipe_ends[0], &told, 1) == 1) ++told_in_all;
        }
        ::kill(child, SIGKILL);
        ::waitpid(child, nullptr, 0);
        while (::read(pipe_ends[0], &told, 1) == 1) ++told_in_all;
        ::close(pipe_ends[0]);
        Book book = shelf.open();
        const auto kept = static_cast<std::int64_t>(good(book.entries(kJob)).size());
        CHECK(kept >= 2 * told_in_all);
        CHECK(kept % 2 == 0);
        CHECK(good(book.verify()).ok());
        told_in_all = kept / 2; // what was kept but not told any more counts from now on
    }
    CHECK(told_in_all >= 10);
}
#endif
