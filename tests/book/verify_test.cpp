#include "book/verify.h"

#include "base/text.h"
#include "tests/support/books.h"
#include "tests/support/tamper.h"

#include <algorithm>
#include <catch2/catch.hpp>

using namespace undersheet;
using book::Book;

namespace {

// A book with the firm and six air readings, shut again.
struct Written {
    Written() {
        Book book = shelf.start();
        std::vector<entry::Draft> drafts;
        for (int i = 0; i < 6; ++i) drafts.push_back(air_draft(i));
        drafts.push_back(site_draft("Mrs Ada Pell"));
        entries = good(book.append(drafts));
    }
    book::Verified after(const std::string& sql) {
        tamper(shelf.path(), sql);
        return good(shelf.open(book::Access::read).verify());
    }
    [[nodiscard]] std::string number(int seq) const {
        return "job = '" + kJob + "' AND seq = " + std::to_string(seq);
    }

    Shelf shelf = {};
    std::vector<entry::Entry> entries = {};
};

bool says(const book::Verified& verified, std::int64_t seq, const std::string& what) {
    return std::any_of(verified.faults.begin(), verified.faults.end(), [&](const entry::ChainFault& fault) {
        return fault.seq == seq && fault.what.find(what) != std::string::npos;
    });
}

} // namespace

TEST_CASE("an untouched book verifies") {
    Written written;
    const auto verified = good(written.shelf.open(book::Access::read).verify());
    CHECK(verified.ok());
    CHECK(verified.entries == 8);
}

TEST_CASE("a byte changed in a body is named with its entry") {
    Written written;
    const auto verified = written.after(
        "UPDATE entry SET body = CAST(replace(body, '\"rh_pct\":66', '\"rh_pct\":65') AS BLOB) WHERE " +
        written.number(3));
    CHECK(says(verified, 3, "its name does not belong to its bytes"));
    CHECK(says(verified, 4, "the chain is broken: number 3 before it is missing or was changed"));
}

TEST_CASE("a body changed together with its hash still has a wrong signature") {
    Written written;
    std::string body = written.entries[2].body;
    body.replace(body.find("\"rh_pct\":66"), 11, "\"rh_pct\":65");
    const auto verified =
        written.after("UPDATE entry SET body = CAST('" + body + "' AS BLOB), hash = x'" +
                      entry::hash_text(entry::sha256(body)) + "' WHERE " + written.number(3));
    CHECK(says(verified, 3, "its signature is wrong"));
    CHECK(says(verified, 4, "the chain is broken"));
}

TEST_CASE("a changed signature is named with its entry") {
    Written written;
    const auto verified = written.after("UPDATE entry SET sig = zeroblob(64) WHERE " + written.number(5));
    CHECK(says(verified, 5, "its signature is wrong"));
    CHECK(verified.faults.size() == 1);
}

TEST_CASE("a row taken from the middle is missed") {
    Written written;
    const auto verified = written.after("DELETE FROM entry WHERE " + written.number(4));
    CHECK(says(verified, 5, "the chain is broken: number 4 before it is missing or was changed"));
    CHECK(verified.entries == 7);
}

TEST_CASE("the last row taken away is missed, because the book remembers what its device wrote last") {
    Written written;
    CHECK_FALSE(written.after("DELETE FROM entry WHERE " + written.number(7)).ok());
    Written again;
    const std::string cover_up = "UPDATE local SET v = '7 ' || (SELECT lower(hex(hash)) FROM entry WHERE " +
                                 again.number(6) + ") WHERE k LIKE 'at/%'; DELETE FROM head WHERE job = '" +
                                 kJob +
                                 "';"
                                 "INSERT INTO head SELECT job, dev, hash, seq, lam FROM entry WHERE " +
                                 again.number(6) + "; UPDATE job SET entries = 6 WHERE job = '" + kJob + "';";
    // Whoever rewrites all of that leaves no trace inside the book: an honest limit, receipts are for that.
    CHECK(again.after("DELETE FROM entry WHERE " + again.number(7) + ";" + cover_up).ok());
}

TEST_CASE("a whole job taken away is missed") {
    Written written;
    const auto verified =
        written.after("DELETE FROM entry WHERE job = '" + kJob + "'; DELETE FROM head WHERE job = '" + kJob +
                      "'; DELETE FROM job WHERE job = '" + kJob + "'");
    CHECK_FALSE(verified.ok());
}

TEST_CASE("two bodies changed over are both named") {
    Written written;
    const auto verified =
        written.after("CREATE TEMP TABLE t AS SELECT seq, body, sig FROM entry WHERE job = '" + kJob + "';" +
                      "UPDATE entry SET body = (SELECT body FROM t WHERE t.seq = 5 - entry.seq), "
                      "sig = (SELECT sig FROM t WHERE t.seq = 5 - entry.seq) "
                      "WHERE job = '" +
                      kJob + "' AND seq IN (2, 3)");
    CHECK(says(verified, 2, "its name does not belong to its bytes"));
    CHECK(says(verified, 3, "its name does not belong to its bytes"));
}

TEST_CASE("columns that say something else than the entry are named") {
    for (const char* column :
         {"lam = 90", "seq = 90", "id = 'x'", "dev = '00000000000000000000000000000000'"}) {
        Written written;
        const auto verified =
            written.after("UPDATE entry SET " + std::string(column) + " WHERE " + written.number(2));
        INFO(column);
        CHECK(std::any_of(verified.faults.begin(), verified.faults.end(), [](const entry::ChainFault& fault) {
            return fault.what == "the book's index says something else than the entry itself";
        }));
    }
}

TEST_CASE("a missing or exchanged key is named") {
    Written written;
    CHECK(says(written.after("DELETE FROM pubkey"), 3, "the key of its device is missing"));
    Written again;
    const std::string other = entry::spki_of(entry::signer_from(seed_of(9))->public_key());
    const std::string digits =
        hex(std::span(reinterpret_cast<const std::uint8_t*>(other.data()), other.size()));
    CHECK(says(again.after("UPDATE pubkey SET spki = x'" + digits + "'"), 0,
               "the key kept for this device is not its own"));
}

TEST_CASE("an altered personal value is named, one that was erased is no fault") {
    Written written;
    CHECK(says(written.after("UPDATE secret SET val = CAST('Mr Bo Pell' AS BLOB)"), 0,
               "a personal value is not the one"));
    Written again;
    CHECK(again.after("DELETE FROM secret").ok());
    Book book = again.shelf.open(book::Access::read);
    CHECK(good(book.entries(kJob)).back().field_text("customer") == "(erased)");
}

TEST_CASE("look-up rows that are not so are named") {
    Written one;
    CHECK_FALSE(one.after("UPDATE job SET entries = 5").ok());
    Written two;
    CHECK_FALSE(two.after("DELETE FROM head").ok());
    Written three;
    CHECK_FALSE(three.after("DELETE FROM job").ok());
}

TEST_CASE("an entry copied in twice under another hash is named") {
    Written written;
    const auto verified = written.after(
        "INSERT INTO entry SELECT zeroblob(32), job, dev, seq, lam, id, body, sig FROM entry WHERE " +
        written.number(3));
    CHECK(says(verified, 3, "its name does not belong to its bytes"));
    CHECK(verified.entries == 9);
}

TEST_CASE("a row with a value of the wrong size is a fault of the file, not the end of the program") {
    Written written;
    const auto verified = written.after("UPDATE entry SET sig = x'00' WHERE " + written.number(3));
    REQUIRE_FALSE(verified.ok());
    CHECK(verified.faults[0].what.find("cannot be read to its end") != std::string::npos);
}

TEST_CASE("a file with a page of nonsense in it is reported as damaged") {
    Written written;
    std::string bytes = bytes_of_file(written.shelf.path());
    REQUIRE(bytes.size() > 3 * 4096);
    for (std::size_t at = 4096; at < bytes.size(); ++at) bytes[at] = static_cast<char>(at * 31);
    write_file(written.shelf.path(), bytes);
    const auto opened = Book::open(written.shelf.path(), book::Access::read, written.shelf.around());
    if (opened.ok()) {
        auto book = good(Book::open(written.shelf.path(), book::Access::read, written.shelf.around()));
        CHECK_FALSE(good(book.verify()).ok());
    } else {
        CHECK(opened.fault().code == Code::book_damaged);
    }
}
