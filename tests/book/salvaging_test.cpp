// Books with damaged pages: what can still be read comes back, and nothing else.
#include "book/salvaging.h"

#include "tests/support/books.h"
#include "tests/support/tamper.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <iostream>
#include <set>

using namespace undersheet;
using book::Book;

namespace {

constexpr std::size_t kPageBytes = 4096;
const std::string kPhoto = std::string("\xFF\xD8\xFF\xE0") + "a drawing of a gutter";
const std::string kOtherJob = "fedcba9876543210fedcba9876543210";

// A text that fills several pages, each with words of its own.
std::string long_note() {
    std::string note;
    for (int i = 0; i < 1500; ++i) note += "longnote" + std::to_string(i) + " ";
    return note;
}

entry::Draft photo_draft() {
    entry::Draft draft = air_draft();
    draft.kind = "photo";
    draft.data = entry::Value().set("sha256", entry::hash_text(entry::sha256(kPhoto)));
    return draft;
}

// Two jobs, a customer, a photograph, an entry over several pages and enough readings for a tree of pages.
struct Written {
    Written() {
        Book book = shelf.start();
        good(book.keep_photo(kPhoto));
        good(book.keep_text(std::string(9000, 'm')));
        entry::Draft note = air_draft();
        note.data.set("note", long_note());
        good(book.append({open_draft(kJob, "A-1"), site_draft("Mrs Ada Pell"), photo_draft(), note}));
        entry::Draft other = open_draft(kOtherJob, "B-2");
        good(book.append({other}));
        for (int i = 0; i < 24; ++i) {
            entry::Draft draft = air_draft(i);
            if (i % 3 == 0) draft.job = kOtherJob;
            good(book.append({draft}));
        }
        whole = bytes_of_file(shelf.path());
        for (const std::string& job : {book.office(), kJob, kOtherJob}) {
            for (auto& entry : good(book.entries(job))) entries.emplace(entry.hash, entry);
        }
    }

    // The pages on which any byte of it stands.
    [[nodiscard]] std::set<std::size_t> pages_of(const entry::Entry& entry) const {
        std::set<std::size_t> pages;
        for (std::size_t at = 0; at < entry.body.size(); at += 64) {
            const std::string piece = entry.body.substr(at, 64);
            const std::size_t found = piece.size() == 64 ? whole.find(piece) : std::string::npos;
            if (found != std::string::npos)
                pages.insert(found / kPageBytes); // else it goes over the edge of one
        }
        const std::string signature(entry.signature.begin(), entry.signature.end());
        pages.insert(whole.find(signature) / kPageBytes);
        return pages;
    }

    Result<book::Salvaged> salvage(const std::string& bytes, bool with_key_files = true) {
        std::filesystem::remove(to());
        write_file(damaged(), bytes);
        FixedWorld chance(99);
        KeysInMemory new_keys;
        return book::salvage({damaged(), with_key_files ? &shelf.keys : nullptr, {}}, to(),
                             {chance, new_keys, 20});
    }
    void bring_photos() const { std::filesystem::copy(shelf.path() + ".photos", damaged() + ".photos"); }
    Book salvaged() { return good(Book::open(to(), book::Access::write, {world, keys, 20})); }
    [[nodiscard]] std::string damaged() const { return shelf.folder.file("damaged.book"); }
    [[nodiscard]] std::string to() const { return shelf.folder.file("new.book"); }

    Shelf shelf = {};
    FixedWorld world = FixedWorld(98);
    KeysInMemory keys = {};
    std::string whole = {};
    std::map<entry::Hash, entry::Entry> entries = {};
};

std::string with_page(std::string bytes, std::size_t page, const std::string& filling) {
    return bytes.replace(page * kPageBytes, kPageBytes, filling);
}

std::string noise(unsigned seed) {
    std::mt19937 chance(seed);
    std::string bytes(kPageBytes, '\0');
    for (char& byte : bytes) byte = static_cast<char>(chance());
    return bytes;
}

struct Counted {
    int tried = 0, salvaged = 0;
    std::size_t entries = 0, of_entries = 0; // that came back, of those that stood on other pages
};

// What came back is what was written; where something is said to be wrong, something before it is gone.
void check_salvaged(Written& written, const book::Salvaged& salvaged, std::size_t page, Counted& counted) {
    Book book = written.salvaged();
    std::set<entry::Hash> here;
    for (const std::string& job : {book.office(), kJob, kOtherJob}) {
        for (const auto& entry : good(book.entries(job))) {
            here.insert(entry.hash);
            REQUIRE(written.entries.contains(entry.hash));
            CHECK(written.entries.at(entry.hash).body == entry.body);
        }
    }
    CHECK(static_cast<std::int64_t>(here.size()) == salvaged.entries);
    for (const auto& [hash, entry] : written.entries) {
        if (written.pages_of(entry).contains(page)) continue;
        ++counted.of_entries;
        CHECK(here.contains(hash));
        counted.entries += here.contains(hash) ? 1U : 0U;
    }
    for (const auto& fault : good(book.verify()).faults) {
        REQUIRE(here.contains(fault.entry)); // nothing is wrong with the book itself
        const auto& entry = written.entries.at(fault.entry);
        CHECK(!here.contains(*entry.prev));
    }
    std::int64_t missing = 0;
    for (const auto& gap : salvaged.gaps) missing += gap.to - gap.from + 1;
    CHECK(missing + salvaged.entries == static_cast<std::int64_t>(written.entries.size()));
}

} // namespace

TEST_CASE("a book that is whole is salvaged whole") {
    Written written;
    const auto salvaged = good(written.salvage(written.whole, false));
    CHECK(salvaged.entries == static_cast<std::int64_t>(written.entries.size()));
    CHECK(salvaged.personal == 1);
    CHECK(salvaged.texts == 1);
    CHECK(salvaged.missing_photos.size() == 1); // they lie beside the book that was left behind
    CHECK(salvaged.gaps.empty());
    CHECK(good(written.salvaged().entries(kJob)).at(1).field_text("customer") == "Mrs Ada Pell");
    CHECK(good(written.salvaged().text(entry::sha256(std::string(9000, 'm')))) == std::string(9000, 'm'));
    CHECK(written.salvaged().office() == written.shelf.open().office());

    written.bring_photos();
    const auto again = good(written.salvage(written.whole));
    CHECK(again.is_whole());
    CHECK(again.photos == 1);
    CHECK(good(written.salvaged().photo(entry::sha256(kPhoto))) == kPhoto);
    const auto verified = good(written.salvaged().verify());
    CHECK(verified.ok());
    CHECK(verified.digest == good(written.shelf.open().verify()).digest);
    good(written.salvaged().append({air_draft()})); // as a device of its own
    CHECK(written.salvaged().device() != written.shelf.open().device());
}

TEST_CASE("whichever page of a book is lost, all that stood on others comes back and nothing is made up") {
    Written written;
    const std::size_t pages = written.whole.size() / kPageBytes;
    REQUIRE(pages > 12);
    written.bring_photos();
    Counted counted;
    for (std::size_t page = 0; page < pages; ++page) {
        for (const std::string& filling : {std::string(kPageBytes, '\0'), noise(static_cast<unsigned>(page)),
                                           std::string(kPageBytes, '\x0D')}) {
            INFO("page " << page << " of " << pages);
            ++counted.tried;
            const auto salvaged = written.salvage(with_page(written.whole, page, filling));
            REQUIRE(line_of(salvaged) == "done");
            ++counted.salvaged;
            check_salvaged(written, *salvaged, page, counted);
        }
    }
    std::cout << "salvage: " << counted.salvaged << " of " << counted.tried << " damaged books, "
              << counted.entries << " of " << counted.of_entries << " entries that stood on other pages\n";
    CHECK(counted.entries == counted.of_entries);
}

TEST_CASE("a book that broke off anywhere gives what stands before, or is refused in one line") {
    Written written;
    std::int64_t before = -1;
    for (std::size_t size = 1; size < written.whole.size(); size += 3001) {
        const auto salvaged = written.salvage(written.whole.substr(0, size));
        const std::int64_t entries = salvaged ? salvaged->entries : 0;
        if (!salvaged) CHECK(line_of(salvaged).find("go back to a copy") != std::string::npos);
        CHECK(entries >= before);
        before = entries;
    }
    CHECK(before > 20);
}

TEST_CASE("what is missing is said by device and number, and closed by taking a hand-over file") {
    Written written;
    const std::string handed = written.shelf.folder.file("all.hand");
    good(written.shelf.open().hand("", handed));
    written.bring_photos();
    std::string bytes = written.whole;
    const auto& gone = *std::find_if(written.entries.begin(), written.entries.end(), [](const auto& one) {
        return one.second.job == kJob && one.second.seq == 7;
    });
    const auto at = bytes.find(gone.second.body);
    REQUIRE(at != std::string::npos);
    bytes[at + 9] ^= 0x01;
    const auto salvaged = good(written.salvage(bytes));
    CHECK_FALSE(salvaged.is_whole());
    CHECK(salvaged.refused == 1);
    REQUIRE(salvaged.gaps.size() == 1);
    CHECK(salvaged.gaps[0].ref == "A-1");
    CHECK(salvaged.gaps[0].device == gone.second.device);
    CHECK(salvaged.gaps[0].from == 7);
    CHECK(salvaged.gaps[0].to == 7);
    const auto faults = good(written.salvaged().verify()).faults;
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].seq == 8);
    CHECK(good(written.salvaged().take(handed)).fresh == 1);
    CHECK(good(written.salvaged().verify()).digest == good(written.shelf.open().verify()).digest);
}

TEST_CASE("a newest entry that is lost is missed by what the book notes of itself") {
    Written written;
    written.bring_photos();
    std::string bytes = written.whole;
    for (const auto& [hash, entry] : written.entries) {
        if (entry.dctr != static_cast<std::int64_t>(written.entries.size())) continue;
        bytes[bytes.find(entry.body) + 9] ^= 0x01;
    }
    const auto salvaged = good(written.salvage(bytes));
    REQUIRE(salvaged.devices.size() == 1);
    CHECK(salvaged.devices[0].written == static_cast<std::int64_t>(written.entries.size()));
    CHECK(salvaged.devices[0].entries == salvaged.devices[0].written - 1);
    CHECK(salvaged.gaps.size() == 1);
    CHECK(good(written.salvaged().verify()).ok()); // nothing inside the new book could show it
}

TEST_CASE("where the keys are lost too, key files and hand-over files have them, and without them nothing is "
          "believed") {
    Written written;
    const std::string handed = written.shelf.folder.file("all.hand");
    good(written.shelf.open().hand("", handed));
    const std::string device = written.shelf.open().device();
    tamper(written.shelf.path(), "UPDATE pubkey SET spki = zeroblob(44)");
    const std::string bytes = bytes_of_file(written.shelf.path());
    CHECK(line_of(written.salvage(bytes, false)).find("no entry that holds") != std::string::npos);
    CHECK_FALSE(std::filesystem::exists(written.to()));
    CHECK(good(written.salvage(bytes)).entries == static_cast<std::int64_t>(written.entries.size()));
    std::filesystem::remove(written.to());
    FixedWorld world(97);
    KeysInMemory keys;
    const auto helped =
        good(book::salvage({written.damaged(), nullptr, {handed}}, written.to(), {world, keys, 20}));
    CHECK(helped.entries == static_cast<std::int64_t>(written.entries.size()));
}

TEST_CASE("a signed entry that was changed, or stands where it cannot, is not admitted") {
    Written written;
    tamper(written.shelf.path(), "UPDATE entry SET body = CAST(replace(body, 'A-1', 'A-2') AS BLOB)");
    tamper(written.shelf.path(), "UPDATE secret SET val = CAST('Mr Nobody' AS BLOB)");
    const auto salvaged = good(written.salvage(bytes_of_file(written.shelf.path())));
    CHECK(salvaged.refused == 1);
    CHECK(salvaged.personal == 0);
    CHECK(salvaged.missing_personal == 1);
}

TEST_CASE("a file that is no book, or a name that is taken, is refused in one line") {
    Written written;
    CHECK(line_of(written.salvage("no book at all")).find("no entry that holds") != std::string::npos);
    CHECK(line_of(written.salvage("")).find("empty") != std::string::npos);
    write_file(written.damaged(), written.whole);
    FixedWorld world(96);
    KeysInMemory keys;
    CHECK(line_of(book::salvage({written.damaged(), nullptr, {}}, written.shelf.path(), {world, keys, 20}))
              .find("a file of that name already") != std::string::npos);
}
