// The disk refuses one step after the other, once or for good, as full or as broken; what was answered must be true.
#include "book/session.h"
#include "book/verify.h"
#include "tests/book/memory_disk.h"
#include "tests/support/books.h"

#include <catch2/catch.hpp>
#include <sqlite3.h>

using namespace undersheet;

namespace {

const std::string kBook = "demo.book";

Files new_book() {
    Shelf shelf;
    shelf.start();
    return {{kBook, bytes_of_file(shelf.path())}};
}

struct Answers {
    std::vector<std::string> kept = {};    // ids that were said to be saved
    std::vector<std::string> refused = {}; // ids that were said not to be
    std::vector<Fault> faults = {};
};

// Three actions; each draft has its id beforehand, so that what was answered can be checked afterwards.
Answers work(book::Session& session, FixedWorld& world) {
    Answers answers;
    for (int i = 0; i < 3; ++i) {
        entry::Draft draft = site_draft("Mrs Ada Pell");
        draft.id = entry::new_entry_id(world);
        const auto done = book::guarded([&] { return session.append({draft}); });
        if (done.ok()) {
            answers.kept.push_back(draft.id);
        } else {
            answers.faults.push_back(done.fault());
            const bool sure = done.fault().detail.find("not sure") == std::string::npos;
            if (sure) answers.refused.push_back(draft.id);
        }
    }
    return answers;
}

bool is_there(book::Session& session, const std::string& id) {
    return session.connected().one("SELECT 1 FROM entry WHERE id = ?", {id}, [](const book::Row&) {});
}

} // namespace

TEST_CASE("whichever step the disk refuses, what was answered is what the book then holds") {
    const Files before = new_book();
    int runs = 0;
    int refusals = 0;
    for (const int code : {SQLITE_FULL, SQLITE_IOERR_WRITE, SQLITE_IOERR_FSYNC}) {
        for (const bool for_good : {false, true}) {
            for (int step = 1;; ++step, ++runs) {
                FixedWorld world(8);
                KeysInMemory keys;
                MemoryDisk disk;
                disk.files = before;
                book::Session session(kBook, book::Access::write, {world, keys, 0});
                disk.refuse(step, code, for_good);
                const Answers answers = work(session, world);
                const bool past_the_end = disk.steps < step;
                disk.refuse_nothing();
                refusals += static_cast<int>(answers.faults.size());
                INFO("step " << step << ", code " << code << (for_good ? ", for good" : ", once"));
                book::Session after(kBook, book::Access::write, {world, keys, 0});
                for (const auto& id : answers.kept) REQUIRE(is_there(after, id));
                for (const auto& id : answers.refused) REQUIRE_FALSE(is_there(after, id));
                REQUIRE(book::verify_book(after.connected(), {}).ok());
                if (past_the_end) {
                    REQUIRE(answers.faults.empty());
                    break;
                }
            }
        }
    }
    CHECK(runs > 200);
    CHECK(refusals > 200);
}

TEST_CASE("a full disk is called full, and writing goes on when there is room again") {
    const Files before = new_book();
    FixedWorld world(8);
    KeysInMemory keys;
    MemoryDisk disk;
    disk.files = before;
    book::Session session(kBook, book::Access::write, {world, keys, 0});
    disk.refuse(2, SQLITE_FULL, true); // the first step makes the journal, an empty file
    const Answers full = work(session, world);
    REQUIRE(full.faults.size() == 3);
    for (const Fault& fault : full.faults) {
        CHECK(one_line(fault) == "demo.book: not saved, the storage is full; make room and do it again");
    }
    disk.refuse_nothing();
    CHECK(work(session, world).kept.size() == 3);
    CHECK(book::verify_book(session.connected(), {}).ok());
}
