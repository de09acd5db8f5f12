// What was erased is gone from the book, its folder and what is handed over, and stays gone.
#include "book/erased.h"

#include "book/salvaging.h"
#include "tests/support/books.h"
#include "tests/support/tamper.h"

#include <catch2/catch.hpp>

using namespace undersheet;
using book::Book;

namespace {

const std::string kPhoto = std::string("\xFF\xD8\xFF\xE0") + "a drawing of a gutter";
const entry::Hash kPhotoName = entry::sha256(kPhoto);

// One job with a customer and a photograph; both are to be erased.
struct ToErase {
    ToErase() {
        Book book = shelf.start();
        good(book.keep_photo(kPhoto));
        entry::Draft photo = air_draft();
        photo.kind = "photo";
        photo.data = entry::Value().set("sha256", entry::hash_text(kPhotoName));
        const auto kept = good(book.append({open_draft(kJob, "A-1"), site_draft("Mrs Ada Pell"), photo}));
        customer = *entry::commitment_of(*kept[1].data.find("customer"));
    }
    void write_erasure() {
        entry::Draft erase = air_draft();
        erase.kind = "erase";
        erase.data = entry::Value()
                         .set("values", entry::List{entry::hash_text(customer), std::string(64, '0')})
                         .set("photos", entry::List{entry::hash_text(kPhotoName)});
        Book book = shelf.open();
        good(book.append({erase}));
    }
    [[nodiscard]] std::string photo_file() const {
        return shelf.path() + ".photos/" + entry::hash_text(kPhotoName);
    }
    [[nodiscard]] std::string other(const std::string& name) const { return shelf.folder.file(name); }

    Shelf shelf = {};
    entry::Hash customer = {};
};

std::string faults_of(const book::Verified& verified) {
    std::string all;
    for (const auto& fault : verified.faults) all += fault.what + "\n";
    return all;
}

} // namespace

TEST_CASE("an erasure names what it erases by hash, and what is no hash names nothing") {
    entry::Entry erase;
    erase.kind = "erase";
    erase.data.set("values", entry::List{entry::Value(5), "x", std::string(64, 'a')});
    entry::Entry other = erase;
    other.kind = "air";
    CHECK(book::erased_by({erase, other}).is_empty()); // nothing of this job has that name
    other.data.set("customer", entry::Value().set("cid", std::string(64, 'a')));
    const auto erased = book::erased_by({erase, other});
    CHECK(erased.cids.size() == 1);
    CHECK(erased.photos.empty());
}

TEST_CASE("what an erasure names and is still here is a fault, until it is forgotten") {
    ToErase job;
    job.write_erasure();
    const auto before = faults_of(good(job.shelf.open().verify()));
    CHECK(before.find("its photograph was erased and is still here") != std::string::npos);
    CHECK(before.find("a personal value was erased and is still here") != std::string::npos);
    REQUIRE(job.shelf.open().forget_erased().ok());
    CHECK(good(job.shelf.open().verify()).ok());
    CHECK_FALSE(std::filesystem::exists(job.photo_file()));
    CHECK(bytes_of_file(job.shelf.path()).find("Mrs Ada Pell") == std::string::npos);
}

TEST_CASE("a photograph that cannot be removed is said to be there, and is not called forgotten") {
    ToErase job;
    job.write_erasure();
    std::filesystem::remove(job.photo_file());
    std::filesystem::create_directories(job.photo_file() + "/in the way");
    CHECK_FALSE(job.shelf.open().forget_erased().ok());
}

TEST_CASE("what was erased is not handed over, not taken in from an older file, and not salvaged") {
    ToErase job;
    const std::string older = job.other("older.hand");
    CHECK(good(job.shelf.open().hand(kJob, older)).photos == 1);
    job.write_erasure();
    const std::string newer = job.other("newer.hand");
    CHECK(good(job.shelf.open().hand(kJob, newer)).photos == 0); // though it is not forgotten here yet
    CHECK(bytes_of_file(newer).find("Mrs Ada Pell") == std::string::npos);

    FixedWorld world(77);
    KeysInMemory keys;
    const std::string path = job.other("other.book");
    Book book = good(Book::start(path, {world, keys, 20}, {firm_draft()}));
    good(book.take(newer));
    good(book.take(older));
    CHECK(good(book.verify()).ok());
    CHECK(bytes_of_file(path).find("Mrs Ada Pell") == std::string::npos);
    CHECK_FALSE(std::filesystem::exists(path + ".photos/" + entry::hash_text(kPhotoName)));

    KeysInMemory new_keys;
    const std::string saved = job.other("saved.book");
    good(book::salvage({job.shelf.path(), &job.shelf.keys, {}}, saved, {world, new_keys, 20}));
    CHECK(bytes_of_file(saved).find("Mrs Ada Pell") == std::string::npos);
    CHECK_FALSE(std::filesystem::exists(saved + ".photos/" + entry::hash_text(kPhotoName)));
}
