// A hand-over file is asked for what a book made of it would be found to lack, even where somebody sealed it so.
#include "book/handed_look.h"

#include "tests/support/books.h"
#include "tests/support/sealed_anew.h"

#include <catch2/catch.hpp>

using namespace undersheet;
using book::Book;

namespace {

const std::string kPhoto = std::string("\xFF\xD8\xFF\xE0") + "a drawing of a gutter";

// A job with a method, a customer and a photograph, and its hand-over file.
struct HandedJob {
    HandedJob() {
        Book book = phone.start();
        entry::Draft opening = open_draft(kJob, "A-1"), photo = air_draft();
        opening.data.set("method", entry::hash_text(good(book.keep_text("a method"))));
        photo.kind = "photo";
        photo.data = entry::Value().set("sha256", entry::hash_text(good(book.keep_photo(kPhoto))));
        const auto kept = good(book.append({opening, site_draft("Mrs Ada Pell"), photo}));
        customer = *entry::commitment_of(*kept[1].data.find("customer"));
        file = good_file("job.hand");
    }
    std::string good_file(const std::string& name) { return phone.hand(name); }
    void erase_all() {
        entry::Draft erase = air_draft();
        erase.kind = "erase";
        erase.data = entry::Value()
                         .set("values", entry::List{entry::hash_text(customer)})
                         .set("photos", entry::List{entry::hash_text(entry::sha256(kPhoto))});
        good(phone.open().append({erase}));
        REQUIRE(phone.open().forget_erased().ok());
    }

    Phone phone = Phone(31);
    entry::Hash customer = {};
    std::string file = {};
};

std::string faults_in(const std::string& file) {
    std::string all;
    for (const auto& fault : book::look_at_handed(file).verified.faults) all += fault.what + "\n";
    return all;
}

} // namespace

TEST_CASE("a hand-over file that lacks nothing is whole, and has the book's own check value for the job") {
    HandedJob job;
    const auto look = book::look_at_handed(job.file);
    CHECK(look.verified.ok());
    CHECK(look.verified.entries == 3);
    CHECK(look.verified.missing_personal == 0);
    CHECK(look.entries.size() == 3);
    std::vector<entry::Hash> hashes;
    for (const auto& entry : good(job.phone.open().entries(kJob))) hashes.push_back(entry.hash);
    CHECK(look.verified.digest == entry::digest_of(hashes));
}

TEST_CASE("a photograph or a method taken out of a hand-over file is missed, a personal value is counted") {
    HandedJob job;
    change_and_seal(job.file, "DELETE FROM photo");
    CHECK(faults_in(job.file).starts_with("the photograph did not come with it ("));
    change_and_seal(job.file, "DELETE FROM text; DELETE FROM secret");
    CHECK(faults_in(job.file).find("judged by is missing or was changed") != std::string::npos);
    CHECK(book::look_at_handed(job.file).verified.missing_personal == 1);
}

TEST_CASE("what was erased and put back into a hand-over file is reported") {
    HandedJob job;
    job.erase_all();
    const std::string later = job.good_file("later.hand");
    CHECK(book::look_at_handed(later).verified.ok());
    CHECK(book::look_at_handed(later).verified.missing_personal == 0);
    change_and_seal(later, "ATTACH '" + job.file +
                               "' AS older; INSERT INTO photo SELECT * FROM older.photo; "
                               "INSERT INTO secret SELECT * FROM older.secret; DETACH older");
    CHECK(faults_in(later).find("its photograph was erased and is still here") != std::string::npos);
    CHECK(faults_in(later).find("a personal value was erased and is still here") != std::string::npos);
}
