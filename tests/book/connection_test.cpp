#include "book/connection.h"

#include "schema/embedded.h"
#include "tests/support/books.h"

#include <catch2/catch.hpp>
#include <sqlite3.h>

using namespace undersheet;
using namespace undersheet::book;

namespace {

struct Made {
    Made() : connection(folder.file("a.db"), Connection::Mode::create, 20) {
        Transaction transaction(connection, Transaction::Kind::writing);
        connection.script(schema::book_sql());
        transaction.commit();
    }
    TempFolder folder = {};
    Connection connection;
};

std::string text_of(Connection& connection, const char* query) {
    std::string text;
    connection.one(query, {}, [&](const Row& row) { text = row.text(0); });
    return text;
}
std::int64_t number_of(Connection& connection, const char* query) {
    std::int64_t number = -1;
    connection.one(query, {}, [&](const Row& row) { number = row.integer(0); });
    return number;
}
template <class Work>
Code code_of(Work&& work) {
    try {
        work();
    } catch (const Trouble& trouble) {
        return trouble.fault.code;
    }
    return Code{};
}

} // namespace

TEST_CASE("every setting the book relies on is in force") {
    Made made;
    CHECK(text_of(made.connection, "PRAGMA journal_mode") == "truncate");
    CHECK(number_of(made.connection, "PRAGMA synchronous") == 2);
    CHECK(number_of(made.connection, "PRAGMA secure_delete") == 1);
    CHECK(number_of(made.connection, "PRAGMA page_size") == 4096);
    CHECK(number_of(made.connection, "PRAGMA foreign_keys") == 1);
    CHECK(number_of(made.connection, "PRAGMA recursive_triggers") == 1);
    CHECK(number_of(made.connection, "PRAGMA trusted_schema") == 0);
    CHECK(number_of(made.connection, "PRAGMA cell_size_check") == 1);
    CHECK(number_of(made.connection, "PRAGMA busy_timeout") == 20);
    CHECK(number_of(made.connection, "PRAGMA application_id") == 1431521364);
    CHECK(number_of(made.connection, "PRAGMA user_version") == 1);
}

TEST_CASE("rows of the journal can be added but never changed or taken out, whatever asks for it") {
    Made made;
    made.connection.run("INSERT INTO entry (hash, job, dev, seq, lam, id, body, sig) VALUES (x'00', 'j', "
                        "'d', 1, 1, 'i', x'00', x'00')");
    for (const char* statement :
         {"UPDATE entry SET seq = 2", "DELETE FROM entry", "DROP TABLE entry",
          "ALTER TABLE entry RENAME TO e", "CREATE TRIGGER t AFTER INSERT ON entry BEGIN SELECT 1; END",
          "CREATE VIEW v AS SELECT 1", "ATTACH ':memory:' AS other"}) {
        INFO(statement);
        CHECK(code_of([&] { made.connection.run(statement); }) == Code::book_failed);
    }
    CHECK(number_of(made.connection, "SELECT seq FROM entry") == 1);
}

TEST_CASE("bytes and texts come back as they went in, zero characters and emptiness too") {
    Made made;
    const std::string bytes("\0a\0\xFF", 4);
    made.connection.run("INSERT INTO text (hash, body) VALUES (?, ?)", {Bytes{bytes}, Bytes{""}});
    made.connection.one("SELECT hash, body FROM text", {}, [&](const Row& row) {
        CHECK(row.bytes(0) == bytes);
        CHECK(row.bytes(1).empty());
    });
    made.connection.run("INSERT INTO local (k, v) VALUES (?, ?)",
                        {std::string_view("k"), std::string_view("caf\xC3\xA9")});
    CHECK(text_of(made.connection, "SELECT v FROM local") == "caf\xC3\xA9");
}

TEST_CASE("a value of another type is trouble and not a conversion") {
    Made made;
    CHECK(code_of([&] { number_of(made.connection, "SELECT '12 mm'"); }) == Code::book_damaged);
    CHECK(code_of([&] { number_of(made.connection, "SELECT NULL"); }) == Code::book_damaged);
    CHECK(code_of([&] { number_of(made.connection, "SELECT 1.0"); }) == Code::book_damaged);
    CHECK(code_of([&] { text_of(made.connection, "SELECT 12"); }) == Code::book_damaged);
    CHECK(code_of([&] { text_of(made.connection, "SELECT x'00'"); }) == Code::book_damaged);
    CHECK(number_of(made.connection, "SELECT 5000000000") == 5'000'000'000);
}

TEST_CASE("the tables are strict: a text is not taken where a number must be") {
    Made made;
    CHECK(code_of([&] {
              made.connection.run(
                  "INSERT INTO job (job, ref, entries, last_when) VALUES ('j', 'r', 'many', 'w')");
          }) == Code::book_failed);
    CHECK(code_of([&] { made.connection.run("INSERT INTO local (k, v) VALUES ('k', NULL)"); }) ==
          Code::book_failed);
    CHECK(code_of([&] { made.connection.run("INSERT INTO local (k, v) VALUES (?, ?)"); }) ==
          Code::book_failed); // unbound
}

TEST_CASE("a statement used again does not remember what was bound to it") {
    Made made;
    const char* insert = "INSERT INTO local (k, v) VALUES (?, ?)";
    made.connection.run(insert, {std::string_view("a"), std::string_view("1")});
    CHECK(code_of([&] { made.connection.run(insert, {std::string_view("b")}); }) == Code::book_failed);
    made.connection.run(insert, {std::string_view("c"), std::string_view("3")});
    CHECK(number_of(made.connection, "SELECT count(*) FROM local") == 2);
}

TEST_CASE("asked for one row of several, the first is given, and it is said when there is none") {
    Made made;
    made.connection.run("INSERT INTO local (k, v) VALUES ('a', '1'), ('b', '2')");
    std::string seen;
    const auto note = [&](const Row& row) { seen += row.text(0); };
    CHECK(made.connection.one("SELECT v FROM local ORDER BY k", {}, note));
    CHECK_FALSE(made.connection.one("SELECT v FROM local WHERE k = 'z'", {}, note));
    CHECK(seen == "1");
}

TEST_CASE("a query that is left early holds no lock") {
    Made made;
    made.connection.run("INSERT INTO local (k, v) VALUES ('a', '1'), ('b', '2')");
    struct Stop {};
    CHECK_THROWS_AS(made.connection.each("SELECT v FROM local", {}, [](const Row&) { throw Stop{}; }), Stop);
    Connection other(made.folder.file("a.db"), Connection::Mode::write, 20);
    Transaction transaction(other, Transaction::Kind::writing);
    other.run("DELETE FROM local");
    transaction.commit();
    CHECK(number_of(made.connection, "SELECT count(*) FROM local") == 0);
}

TEST_CASE("an action that is not committed leaves nothing") {
    Made made;
    {
        const Transaction transaction(made.connection, Transaction::Kind::writing);
        made.connection.run("INSERT INTO local (k, v) VALUES ('a', '1')");
    }
    CHECK(number_of(made.connection, "SELECT count(*) FROM local") == 0);
}

TEST_CASE("a connection for reading refuses to write") {
    Made made;
    Connection reading(made.folder.file("a.db"), Connection::Mode::read, 20);
    CHECK(code_of([&] { reading.run("INSERT INTO local (k, v) VALUES ('a', '1')"); }) ==
          Code::book_read_only);
}

// STRICT came with SQLite 3.37.0, and the library below may be another one than its header.
TEST_CASE("SQLite is new enough for strict tables, and the journal is one") {
    Made made;
    CHECK(sqlite3_libversion_number() >= 3037000);
    CHECK(number_of(made.connection, "SELECT strict FROM pragma_table_list WHERE name = 'entry'") == 1);
}
