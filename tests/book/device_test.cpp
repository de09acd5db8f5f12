#include "book/book.h"

#include "tests/support/books.h"

#include <catch2/catch.hpp>

using namespace undersheet;
using book::Book;

TEST_CASE("a book goes on as the same device when its key is there") {
    Shelf shelf;
    shelf.start();
    const std::string first = shelf.open().device();
    Book book = shelf.open();
    const auto entry = good(book.append({air_draft()}))[0];
    CHECK(entry.device == first);
    CHECK(entry.dctr == 2);
    CHECK(shelf.keys.keys.size() == 1);
}

TEST_CASE("without its key a book goes on as a new device that knows what the old one wrote") {
    Shelf shelf;
    entry::Entry old;
    {
        Book book = shelf.start();
        old = good(book.append({air_draft()}))[0];
    }
    shelf.keys.keys.clear(); // a restored phone
    Book book = shelf.open();
    const auto entry = good(book.append({air_draft()}))[0];
    CHECK(entry.device != old.device);
    CHECK(entry.seq == 1);
    CHECK(entry.dctr == 1);
    CHECK(entry.seen == std::vector<entry::Hash>{old.hash});
    CHECK(entry.lam == old.lam + 1);
    CHECK(good(book.append({air_draft()}))[0].seq == 2);
    CHECK(good(book.verify()).ok());
}

TEST_CASE("a key that was not made for this very book is not used") {
    Shelf shelf;
    const std::string old = shelf.start().device();
    shelf.keys.keys.at(old).install = std::string(32, '0');
    Book book = shelf.open();
    CHECK(good(book.append({air_draft()}))[0].device != old);
    CHECK(good(book.verify()).ok());
}

TEST_CASE("opening and reading make no key, even when the old one is gone") {
    Shelf shelf;
    shelf.start();
    shelf.keys.keys.clear();
    Book book = shelf.open();
    good(book.verify());
    CHECK(shelf.keys.keys.empty());
}

TEST_CASE("a key that cannot be kept stops the writing before anything is signed") {
    class FullStore : public KeysInMemory {
        Done save(const book::Key&) override {
            return Fault{Code::book_full, "not saved, the storage is full"};
        }
    };
    TempFolder folder;
    FixedWorld world;
    FullStore keys;
    const auto started = Book::start(folder.file("demo.book"), {world, keys}, {firm_draft()});
    REQUIRE_FALSE(started.ok());
    CHECK(started.fault().code == Code::book_full);
    CHECK(std::filesystem::is_empty(folder.path()));
}

TEST_CASE("two books open at once write one after the other, each knowing the other's entry") {
    Shelf shelf;
    shelf.start();
    Book one = shelf.open();
    Book two = shelf.open();
    const auto a = good(one.append({air_draft()}))[0];
    const auto b = good(two.append({air_draft()}))[0];
    const auto c = good(one.append({air_draft()}))[0];
    CHECK(*b.prev == a.hash);
    CHECK(*c.prev == b.hash);
    CHECK(c.seq == 3);
    CHECK(good(one.verify()).ok());
}
