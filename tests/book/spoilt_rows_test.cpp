// Rows of a book that somebody spoilt with a database tool: what reads them says so, and salvage passes them over.
#include "book/salvaging.h"
#include "tests/support/books.h"
#include "tests/support/tamper.h"

#include <catch2/catch.hpp>

using namespace undersheet;
using book::Book;

namespace {

const std::string kPhoto = std::string("\xFF\xD8\xFF\xE0") + "a drawing of a gutter";

entry::Draft photo_draft(const std::string& sha256) {
    entry::Draft draft = air_draft();
    draft.kind = "photo";
    draft.data = entry::Value().set("sha256", sha256);
    return draft;
}

// One job with a customer, a photograph and a method.
struct Written {
    Written() {
        Book book = shelf.start();
        good(book.keep_photo(kPhoto));
        method = good(book.keep_text(std::string(300, 'm')));
        entry::Draft open = open_draft(kJob, "A-1");
        open.data.set("method", entry::hash_text(method));
        good(book.append({open, site_draft("Mrs Ada Pell"),
                          photo_draft(entry::hash_text(entry::sha256(kPhoto))), air_draft()}));
    }
    Result<book::Salvaged> salvage() {
        FixedWorld chance(99);
        KeysInMemory new_keys;
        return book::salvage({shelf.path(), &shelf.keys, {}}, to(), {chance, new_keys, 20});
    }
    [[nodiscard]] std::string to() const { return shelf.folder.file("new.book"); }

    Shelf shelf = {};
    entry::Hash method = {};
};

// What the next writing says after one statement of somebody else.
std::string said_after(const std::string& sql) {
    Written written;
    tamper(written.shelf.path(), sql);
    auto book = Book::open(written.shelf.path(), book::Access::write, written.shelf.around());
    return book ? line_of(book->append({air_draft()})) : one_line(book.fault());
}

} // namespace

TEST_CASE("a book that does not know where its device stands writes nothing and says how to go on") {
    for (const char* value : {"'5'", "'x ' || substr(v, instr(v, ' ') + 1)", "'5 abc'", "v || ' x'"}) {
        INFO(value);
        const auto said = said_after(std::string("UPDATE local SET v = ") + value + " WHERE k LIKE 'at/%'");
        CHECK(said.find("the book does not know where this device stands") != std::string::npos);
        CHECK(said.find("undersheet salvage") != std::string::npos);
    }
}

TEST_CASE("a hash in a look-up table that is too short is damage, and is said to be") {
    CHECK(said_after("UPDATE head SET hash = x'00'").find("is not of its size") != std::string::npos);
}

TEST_CASE("rows that have the form of no row of ours are passed over, and all the others are salvaged") {
    Written written;
    const auto entries = good(written.shelf.open().entries(kJob)).size();
    tamper(written.shelf.path(),
           "INSERT INTO entry VALUES (x'00', 'j', 'd', 1, 1, 'i', x'00', zeroblob(64));"
           "INSERT INTO entry VALUES (zeroblob(32), 'j', 'd', 1, 1, 'i', x'00', x'00');"
           "INSERT INTO entry VALUES (randomblob(32), 'j', 'd', 1, 1, 'i', x'00', zeroblob(64));"
           "INSERT INTO secret VALUES (x'00', zeroblob(16), x'00');"
           "INSERT INTO secret VALUES (zeroblob(32), zeroblob(16), x'00');"
           "INSERT INTO text VALUES (x'00', x'00');"
           "INSERT INTO text VALUES (zeroblob(32), x'00');"
           "INSERT INTO pubkey VALUES ('none', x'00');"
           "INSERT INTO local VALUES ('at/a', 'x y'), ('at/b', '1.5 y'), ('at/c', '5'), ('other', '5 y');"
           "INSERT INTO head VALUES ('no job', 'no device', x'00', 7, 7);"
           "INSERT INTO head VALUES ('" +
               kJob + "', 'no device', x'00', 7, 7);");
    const auto salvaged = good(written.salvage());
    Book book = good(Book::open(written.to(), book::Access::read, written.shelf.around()));
    CHECK(good(book.entries(kJob)).size() == entries);
    CHECK(good(book.text(written.method)) == std::string(300, 'm'));
    CHECK(salvaged.gaps.empty());
}

TEST_CASE("a method and a photograph that are gone are named by salvage") {
    Written written;
    tamper(written.shelf.path(), "DELETE FROM text");
    std::filesystem::remove_all(written.shelf.path() + ".photos");
    const auto salvaged = good(written.salvage());
    CHECK(salvaged.missing_texts == std::vector<entry::Hash>{written.method});
    CHECK(salvaged.missing_photos.size() == 1);
    CHECK_FALSE(salvaged.is_whole());
}

TEST_CASE("a personal value that is gone is counted by salvage, and its entry stays") {
    Written written;
    tamper(written.shelf.path(), "DELETE FROM secret");
    const auto salvaged = good(written.salvage());
    CHECK(salvaged.missing_personal == 1);
    CHECK_FALSE(salvaged.is_whole());
}

TEST_CASE("a photograph of whose name an entry makes something else belongs to nothing") {
    Written written;
    {
        Book book = written.shelf.open();
        good(book.append({photo_draft("none")}));
    }
    const auto verified = good(written.shelf.open().verify());
    REQUIRE(verified.faults.size() == 1);
    CHECK(verified.faults[0].what == "it names a photograph by what no photograph is called");
    std::filesystem::remove_all(written.shelf.path() + ".photos");
    Book book = written.shelf.open();
    const auto handed = good(book.hand(kJob, written.shelf.folder.file("a.hand")));
    CHECK(handed.photos == 0);
    CHECK(handed.missing_photos.size() == 1);
    CHECK_FALSE(good(book.verify()).ok());
}

TEST_CASE("a photograph is not kept where no folder for it can be made, nor where a folder has its name") {
    Written written;
    Book book = written.shelf.open();
    const std::string another = kPhoto + "2";
    const std::string folder = written.shelf.path() + ".photos/";
    std::filesystem::create_directories(folder + entry::hash_text(entry::sha256(another)) + "/x");
    CHECK_FALSE(book.keep_photo(another).ok());
    std::filesystem::remove_all(folder);
    write_file(written.shelf.path() + ".photos", "in the way");
    CHECK_FALSE(book.keep_photo(kPhoto).ok());
}

TEST_CASE("a hand-over file is taken from a folder of any name") {
    Written written;
    const std::string folder = written.shelf.folder.file("van {4} [b] A_z~ 9:30 %41 \xC3\xA4");
    std::filesystem::create_directory(folder);
    good(written.shelf.open().hand(kJob, folder + "/a-1.hand"));
    FixedWorld world(77);
    KeysInMemory keys;
    Book book = good(Book::start(written.shelf.folder.file("other.book"), {world, keys, 20}, {firm_draft()}));
    CHECK(good(book.take(folder + "/a-1.hand")).fresh > 0);
    CHECK(Book::is_handed(folder + "/a-1.hand"));
    CHECK_FALSE(Book::is_handed(written.shelf.path()));
    CHECK_FALSE(Book::is_handed(folder));
    CHECK(good(Book::look_at_handed(folder + "/a-1.hand")).entries.size() == 4);
    CHECK_FALSE(Book::look_at_handed(written.shelf.path()).ok());
}

TEST_CASE("a PIN is set, changed with the old one and replaced when it is forgotten, within an action only") {
    Shelf shelf;
    Book book = shelf.start();
    const std::string person = "p0123456789";
    entry::PublicKey first{};
    const auto lock = [&](const book::NewPin& pin) {
        return book.in_one_go([&](Book& open) -> Done {
            auto key = open.lock(person, pin);
            if (!key) return key.fault();
            first = *key;
            return {};
        });
    };
    CHECK_FALSE(good(book.has_pin(person)));
    CHECK(book.unlock(person, "402913").fault().code == Code::pin_wrong);
    CHECK_THROWS(book.lock(person, {"402913", "", false}));
    CHECK_FALSE(lock({"4029", "", false}).ok());
    REQUIRE(lock({"402913", "", false}).ok());
    CHECK(good(book.has_pin(person)));
    const auto key = first;
    CHECK_FALSE(lock({"555555", "111111", false}).ok());
    REQUIRE(lock({"555555", "402913", false}).ok());
    CHECK(first == key);
    CHECK(good(book.unlock(person, "555555"))->public_key() == key);
    REQUIRE(lock({"666666", "", true}).ok());
    CHECK(first != key);
}

TEST_CASE("whatever column, value or note of a book somebody changes, verify does not call it good") {
    for (const char* sql :
         {"UPDATE entry SET job = '00000000000000000000000000000000' WHERE seq = 2",
          "UPDATE entry SET id = 'x' WHERE seq = 2", "UPDATE local SET v = '5 x' WHERE k LIKE 'at/%'",
          "UPDATE secret SET salt = x'00'", "UPDATE secret SET val = x'00'", "UPDATE job SET entries = 1",
          "DELETE FROM head"}) {
        Written written;
        tamper(written.shelf.path(), sql);
        INFO(sql);
        const auto verified = written.shelf.open(book::Access::read).verify();
        CHECK_FALSE((verified.ok() && verified->ok()));
    }
}

TEST_CASE("a method that was changed in the book, or in a file handed over, is not judged by") {
    Written written;
    const std::string file = written.shelf.folder.file("a.hand");
    good(written.shelf.open().hand(kJob, file));
    for (const std::string& path : {file, written.shelf.path()}) tamper(path, "UPDATE text SET body = x'00'");
    CHECK_FALSE(written.shelf.open().text(written.method).ok());
    FixedWorld world(77);
    KeysInMemory keys;
    Book book = good(Book::start(written.shelf.folder.file("other.book"), {world, keys, 20}, {firm_draft()}));
    CHECK(book.take(file).fault().code == Code::not_handed);
}

TEST_CASE(
    "a book whose office journal is not named any more is salvaged under the name its entries give it") {
    Written written;
    const std::string office = written.shelf.open().office();
    tamper(written.shelf.path(), "UPDATE local SET v = 'x' WHERE k = 'office'");
    REQUIRE(written.salvage().ok());
    CHECK(good(Book::open(written.to(), book::Access::read, written.shelf.around())).office() == office);
}

TEST_CASE("a hand-over file names the devices that wrote in it, and whoever hands it over, and no other") {
    Written written;
    written.shelf.keys.keys.clear(); // goes on as a new device
    Book book = written.shelf.open();
    const std::string other_job = "fedcba9876543210fedcba9876543210";
    good(book.append({open_draft(other_job, "B-2")}));
    const std::string file = written.shelf.folder.file("b.hand");
    good(book.hand(other_job, file));
    FixedWorld world(77);
    KeysInMemory keys;
    Book taker =
        good(Book::start(written.shelf.folder.file("other.book"), {world, keys, 20}, {firm_draft()}));
    CHECK(good(taker.take(file)).new_devices == std::vector<std::string>{book.device()});
}

TEST_CASE("a photograph's entry that names no file is handed over and taken in as it is") {
    Written written;
    Book book = written.shelf.open();
    good(book.append({photo_draft("none")}));
    const std::string file = written.shelf.folder.file("a.hand");
    CHECK(good(book.hand(kJob, file)).photos == 1);
    FixedWorld world(77);
    KeysInMemory keys;
    Book taker =
        good(Book::start(written.shelf.folder.file("other.book"), {world, keys, 20}, {firm_draft()}));
    CHECK(good(taker.take(file)).photos == 1);
}
