// What a stranger's file, or a copy of a phone, does to the jobs of others: nothing that is not said.
#include "book/handing.h"
#include "tests/support/books.h"
#include "tests/support/sealed_anew.h"

#include <algorithm>
#include <catch2/catch.hpp>

using namespace undersheet;
using book::Access;
using book::Book;

namespace {

const std::string kPhoto = std::string("\xFF\xD8\xFF\xE0") + "a drawing of a gutter";
const std::string kOther = "fedcba9876543210fedcba9876543210";

entry::Draft photo_draft(const std::string& job) {
    entry::Draft draft = air_draft();
    draft.kind = "photo";
    draft.job = job;
    draft.data = entry::Value().set("sha256", entry::hash_text(entry::sha256(kPhoto)));
    return draft;
}

entry::Draft erase_draft(const std::string& job, const entry::List& values) {
    entry::Draft draft = air_draft();
    draft.kind = "erase";
    draft.job = job;
    draft.data = entry::Value()
                     .set("values", values)
                     .set("photos", entry::List{entry::hash_text(entry::sha256(kPhoto))});
    return draft;
}

std::string faults_of(Phone& phone) {
    std::string all;
    for (const auto& fault : good(phone.open(Access::read).verify()).faults) all += fault.what + "\n";
    return all;
}

// The honest phone has a job with a customer and a photograph; the stranger has a book and a key of their own.
struct WithStranger {
    WithStranger() {
        Book book = honest.start();
        good(book.keep_photo(kPhoto));
        const auto kept =
            good(book.append({open_draft(kJob, "A-1"), site_draft("Mrs Ada Pell"), photo_draft(kJob)}));
        customer = *entry::commitment_of(*kept[1].data.find("customer"));
        stranger.start();
    }
    [[nodiscard]] bool has_all() {
        Book book = honest.open(Access::read);
        return good(book.entries(kJob)).at(1).field_text("customer") == "Mrs Ada Pell" &&
               book.photo(entry::sha256(kPhoto)).ok() && good(book.verify()).ok();
    }
    std::string refused(const std::string& file) {
        const auto before = good(honest.open(Access::read).verify()).entries;
        const std::string line = line_of(honest.open().take(file));
        CHECK(good(honest.open(Access::read).verify()).entries == before);
        return line;
    }

    Phone honest = Phone(21), stranger = Phone(22);
    entry::Hash customer = {};
};

} // namespace

TEST_CASE("a stranger's job erases nothing of another job, whatever it names") {
    WithStranger with;
    good(with.stranger.open().append(
        {open_draft(kOther, "X-99"), erase_draft(kOther, entry::List{entry::hash_text(with.customer)})}));
    good(with.honest.open().take(with.stranger.hand("job.hand", kOther)));
    CHECK(with.has_all());
}

TEST_CASE("nor when the stranger's own entries name what the other job names") {
    WithStranger with;
    entry::Draft pretended = air_draft();
    pretended.kind = "site";
    pretended.job = kOther;
    pretended.data =
        entry::Value().set("customer", entry::Value().set("cid", entry::hash_text(with.customer)));
    good(with.stranger.open().append({open_draft(kOther, "X-99"), pretended, photo_draft(kOther),
                                      erase_draft(kOther, entry::List{entry::hash_text(with.customer)})}));
    good(with.honest.open().take(with.stranger.hand("job.hand", kOther)));
    CHECK(with.has_all());
}

TEST_CASE("a photograph of two jobs goes when both have erased it, and is whole until then") {
    WithStranger with;
    Phone& phone = with.honest;
    good(phone.open().append({open_draft(kOther, "B-8"), photo_draft(kOther), erase_draft(kOther, {})}));
    REQUIRE(phone.open().forget_erased().ok());
    CHECK(with.has_all());
    good(phone.open().append({erase_draft(kJob, {})}));
    CHECK(faults_of(phone).find("was erased and is still here") != std::string::npos);
    REQUIRE(phone.open().forget_erased().ok());
    CHECK_FALSE(phone.open().photo(entry::sha256(kPhoto)).ok());
    CHECK(faults_of(phone).empty());
}

TEST_CASE("a job whose method came with nobody is refused, and nothing of the file is taken") {
    WithStranger with;
    entry::Draft opening = open_draft(kOther, "X-99");
    {
        Book book = with.stranger.open();
        opening.data.set("method", entry::hash_text(good(book.keep_text("a method"))));
        good(book.append({opening}));
    }
    const std::string file = with.stranger.hand("job.hand", kOther);
    change_and_seal(file, "DELETE FROM text");
    CHECK(with.refused(file).find("did not come with it") != std::string::npos);
}

TEST_CASE("a job is not handed over without the method it is judged by: nobody could take it") {
    Phone phone(25);
    phone.start();
    entry::Draft opening = open_draft(kJob, "A-1");
    opening.data.set("method", std::string(64, 'a'));
    good(phone.open().append({opening}));
    const std::string file = phone.folder.file("job.hand");
    CHECK(line_of(phone.open().hand(kJob, file))
              .find("aaaaaaaa that a job is judged by is missing or was changed") != std::string::npos);
    CHECK_FALSE(std::filesystem::exists(file));
}

TEST_CASE("a second opening of a job is refused, and both are named") {
    WithStranger with;
    good(with.stranger.open().take(with.honest.hand("job.hand")));
    entry::Draft again = open_draft(kJob, "A-1");
    again.data.set("roof", "of other limits");
    good(with.stranger.open().append({again}));
    const std::string line = with.refused(with.stranger.hand("job.hand"));
    CHECK(line.find("the job is opened twice, by this entry and by ") != std::string::npos);
    CHECK(faults_of(with.stranger).find("it opens a job that was opened before") != std::string::npos);
}

TEST_CASE("a copied phone that went on in another job is noticed once both are together") {
    WithStranger with;
    Phone& phone = with.honest;
    good(phone.open().append({open_draft(kOther, "B-8")}));
    Phone copy(23), third(24);
    std::filesystem::copy_file(phone.path(), copy.path());
    std::filesystem::copy(phone.path() + ".photos", copy.path() + ".photos");
    copy.keys.keys = phone.keys.keys;
    third.start();
    entry::Draft there = air_draft();
    there.job = kOther;
    good(phone.open().append({air_draft()}));
    good(copy.open().append({there}));
    good(third.open().take(phone.hand("job.hand")));
    CHECK(faults_of(third).empty());
    good(third.open().take(copy.hand("job.hand", kOther)));
    CHECK(faults_of(third).find("the device was copied: there are two entries number") != std::string::npos);
}

TEST_CASE("a method that was changed in the book, or taken out of it, is missed") {
    for (const char* change : {"UPDATE text SET body = x'7b7d'", "DELETE FROM text"}) {
        INFO(change);
        WithStranger with;
        Book book = with.honest.open();
        entry::Draft opening = open_draft(kOther, "B-8");
        opening.data.set("method", entry::hash_text(good(book.keep_text("{\"a\": 1}"))));
        good(book.append({opening}));
        CHECK(faults_of(with.honest).empty());
        tamper(with.honest.path(), change);
        CHECK(faults_of(with.honest).find("is missing or was changed") != std::string::npos);
    }
}

TEST_CASE("two hundred devices write on a job, and the file of one more is refused") {
    WithStranger with;
    good(with.stranger.open().take(with.honest.hand("job.hand")));
    for (int devices = 1; devices < 200; ++devices) {
        with.stranger.keys.keys.clear(); // whose key is gone goes on as a new device
        good(with.stranger.open().append({air_draft()}));
    }
    good(with.honest.open().take(with.stranger.hand("200.hand")));
    good(with.honest.open().append({air_draft()})); // and can still be written on

    with.stranger.keys.keys.clear();
    good(with.stranger.open().append({air_draft()}));
    CHECK(with.refused(with.stranger.hand("201.hand")).find("more than 200 devices") != std::string::npos);
}
