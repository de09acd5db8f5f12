// What a stranger's file, or a copy of a phone, does to the jobs of others: nothing that is not said.
#include "book/handing.h"
#include "tests/support/books.h"
#include "tests/support/tamper.h"

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

struct Phone {
    explicit Phone(std::uint64_t seed) : world(seed) {}
    [[nodiscard]] std::string path() const { return folder.file("phone.book"); }
    book::Surroundings around() { return {world, keys, 20}; }
    Book open(Access access = Access::write) { return good(Book::open(path(), access, around())); }
    std::string hand(const std::string& job, const std::string& name = "job.hand") {
        const std::string file = folder.file(name);
        good(open().hand(job, file));
        return file;
    }
    std::string faults() {
        std::string all;
        for (const auto& fault : good(open(Access::read).verify()).faults) all += fault.what + "\n";
        return all;
    }

    TempFolder folder = {};
    FixedWorld world;
    KeysInMemory keys = {};
};

// The honest phone has a job with a customer and a photograph; the stranger has a book and a key of their own.
struct WithStranger {
    WithStranger() {
        Book book = good(Book::start(honest.path(), honest.around(), {firm_draft()}));
        good(book.keep_photo(kPhoto));
        const auto kept =
            good(book.append({open_draft(kJob, "A-1"), site_draft("Mrs Ada Pell"), photo_draft(kJob)}));
        customer = *entry::commitment_of(*kept[1].data.find("customer"));
        good(Book::start(stranger.path(), stranger.around(), {firm_draft()}));
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
    good(with.honest.open().take(with.stranger.hand(kOther)));
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
    good(with.honest.open().take(with.stranger.hand(kOther)));
    CHECK(with.has_all());
}

TEST_CASE("a photograph of two jobs goes when both have erased it, and is whole until then") {
    WithStranger with;
    Phone& phone = with.honest;
    good(phone.open().append({open_draft(kOther, "B-8"), photo_draft(kOther), erase_draft(kOther, {})}));
    REQUIRE(phone.open().forget_erased().ok());
    CHECK(with.has_all());
    good(phone.open().append({erase_draft(kJob, {})}));
    CHECK(phone.faults().find("was erased and is still here") != std::string::npos);
    REQUIRE(phone.open().forget_erased().ok());
    CHECK_FALSE(phone.open().photo(entry::sha256(kPhoto)).ok());
    CHECK(phone.faults().empty());
}

TEST_CASE("a job whose method came with nobody is refused, and nothing of the file is taken") {
    WithStranger with;
    entry::Draft opening = open_draft(kOther, "X-99");
    opening.data.set("method", std::string(64, 'a'));
    good(with.stranger.open().append({opening}));
    CHECK(with.refused(with.stranger.hand(kOther)).find("did not come with it") != std::string::npos);
}

TEST_CASE("a second opening of a job is refused, and both are named") {
    WithStranger with;
    good(with.stranger.open().take(with.honest.hand(kJob)));
    entry::Draft again = open_draft(kJob, "A-1");
    again.data.set("roof", "of other limits");
    good(with.stranger.open().append({again}));
    const std::string line = with.refused(with.stranger.hand(kJob));
    CHECK(line.find("the job is opened twice, by this entry and by ") != std::string::npos);
    CHECK(with.stranger.faults().find("it opens a job that was opened before") != std::string::npos);
}

TEST_CASE("a copied phone that went on in another job is noticed once both are together") {
    WithStranger with;
    Phone& phone = with.honest;
    good(phone.open().append({open_draft(kOther, "B-8")}));
    Phone copy(23), third(24);
    std::filesystem::copy_file(phone.path(), copy.path());
    std::filesystem::copy(phone.path() + ".photos", copy.path() + ".photos");
    copy.keys.keys = phone.keys.keys;
    good(Book::start(third.path(), third.around(), {firm_draft()}));
    entry::Draft there = air_draft();
    there.job = kOther;
    good(phone.open().append({air_draft()}));
    good(copy.open().append({there}));
    good(third.open().take(phone.hand(kJob)));
    CHECK(third.faults().empty());
    good(third.open().take(copy.hand(kOther)));
    CHECK(third.faults().find("the device was copied: there are two entries number") != std::string::npos);
}

TEST_CASE("a method that was changed in the book, or taken out of it, is missed") {
    for (const char* change : {"UPDATE text SET body = x'7b7d'", "DELETE FROM text"}) {
        INFO(change);
        WithStranger with;
        Book book = with.honest.open();
        entry::Draft opening = open_draft(kOther, "B-8");
        opening.data.set("method", entry::hash_text(good(book.keep_text("{\"a\": 1}"))));
        good(book.append({opening}));
        CHECK(with.honest.faults().empty());
        tamper(with.honest.path(), change);
        CHECK(with.honest.faults().find("is missing or was changed") != std::string::npos);
    }
}

TEST_CASE("two hundred devices write on a job, and the file of one more is refused") {
    WithStranger with;
    good(with.stranger.open().take(with.honest.hand(kJob)));
    for (int devices = 1; devices < 200; ++devices) {
        with.stranger.keys.keys.clear(); // whose key is gone goes on as a new device
        good(with.stranger.open().append({air_draft()}));
    }
    good(with.honest.open().take(with.stranger.hand(kJob, "200.hand")));
    good(with.honest.open().append({air_draft()})); // and can still be written on

    with.stranger.keys.keys.clear();
    good(with.stranger.open().append({air_draft()}));
    CHECK(with.refused(with.stranger.hand(kJob, "201.hand")).find("more than 200 devices") !=
          std::string::npos);
}
