// Books of earlier versions, kept as SQL text in fixtures/older_books: whatever comes later opens them, verifies them to the same
// check value, prints them by the method they were begun with, and goes on with them.
#include "book/files.h"
#include "entry/hash.h"
#include "tests/desk/desk_support.h"
#include "tests/support/tamper.h"

#include <filesystem>

using namespace undersheet;

namespace {

struct Older {
    std::string name, digest;
    std::size_t entries;
};
const std::vector<Older> kOlder = {
    {"2026_11.sql", "734e1065c1b19bd1b6e587c77f394e0642c843ac0f4ed19403650cf85ae5ce63", 29},
};
const std::string kPhoto = std::string("\xFF\xD8\xFF\xE0", 4) + "the gutter before";
const std::string kFolder = UNDERSHEET_SOURCE_DIR "/fixtures/older_books/";

// The book as it was, made anew from its text.
struct Restored {
    explicit Restored(const Older& older) {
        tamper(path(), bytes_of_file(kFolder + older.name));
        std::filesystem::create_directory(path() + ".photos");
        write_file(path() + ".photos/" + entry::hash_text(entry::sha256(kPhoto)), kPhoto);
    }
    [[nodiscard]] std::string path() const { return folder.file("older.book"); }
    [[nodiscard]] desk::Desk open() const {
        return good(desk::Desk::open({path(), "2026-11-27T08:00:00+00:00"}));
    }

    TempFolder folder;
};

bool holds(const std::string& text, const std::string& piece) {
    return text.find(piece) != std::string::npos;
}

} // namespace

TEST_CASE("every older book is tried") {
    std::size_t files = 0;
    for (const auto& file : std::filesystem::directory_iterator(kFolder))
        files += file.path().extension() == ".sql" ? 1U : 0U;
    CHECK(files == kOlder.size());
}

TEST_CASE("an older book verifies to the check value it had, and nobody has to write it anew") {
    for (const Older& older : kOlder) {
        INFO(older.name);
        const Restored book(older);
        const std::string before = bytes_of_file(book.path());
        const auto verified = good(book.open().verify());
        for (const auto& fault : verified.faults) UNSCOPED_INFO(fault.what);
        CHECK(verified.ok);
        CHECK(verified.digest == older.digest);
        CHECK(verified.entries == older.entries);
        CHECK(bytes_of_file(book.path()) == before);
    }
}

TEST_CASE("an older book is read as it was: its papers, what was settled, corrected and erased") {
    for (const Older& older : kOlder) {
        INFO(older.name);
        const Restored book(older);
        for (const std::string& paper : desk::paper_names()) {
            INFO(paper);
            if (paper != "offer" && paper != "order" && paper != "look")
                CHECK(line_of(book.open().paper({}, paper, "txt")) == "done");
        }
        const auto inspection = good(book.open().paper({}, "inspection", "txt")).bytes;
        CHECK(holds(inspection, "A-07"));
        CHECK(holds(inspection, "small dormer"));
        CHECK(holds(inspection, "(erased)"));
        CHECK_FALSE(holds(inspection, "Caspar Dunmoor"));
        const auto settled = good(book.open().to_settle({})).items;
        REQUIRE(settled.size() == 1);
        CHECK_FALSE(settled[0].open);
        CHECK(settled[0].why == "measured twice");
        const auto history = good(book.open().history({}));
        CHECK(history.problems.empty());
        std::string changes;
        for (const auto& line : history.lines) {
            for (const auto& change : line.changes) changes += change + "\n";
        }
        CHECK(holds(changes, "31 °C"));
        CHECK(holds(changes, "-> 13"));
    }
}

TEST_CASE("an older book is gone on with, handed over and taken in") {
    for (const Older& older : kOlder) {
        INFO(older.name);
        const Restored book(older);
        good(book.open().record({"", "IP", ""}, {"chase", "CD+1.60", {}, {"height_mm=168"}}));
        const auto verified = good(book.open().verify());
        CHECK(verified.ok);
        CHECK(verified.entries == older.entries + 1);
        good(book.open().hand({"", true, book.folder.file("all.hand")}));
        good(desk::Desk::start_from({book.folder.file("new.book"), "2026-11-27T09:00:00+00:00"},
                                    book.folder.file("all.hand")));
        auto other = good(desk::Desk::open({book.folder.file("new.book"), "2026-11-27T09:00:00+00:00"}));
        CHECK(good(other.verify()).digest == verified.digest);
    }
}
