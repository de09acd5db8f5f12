// What SQLite wrote, read by our own eyes: every sort of value, trees of several levels, rows over many pages, other page sizes.
#include "book/pages.h"

#include "tests/support/tamper.h"
#include "tests/support/temp_folder.h"

#include <algorithm>
#include <set>

using namespace undersheet;
using book::PageRow;
using book::PageValue;

namespace {

std::string words_of(const PageRow& row) {
    std::string words;
    for (const PageValue& value : row) {
        if (value.sort == PageValue::Sort::nothing) words += "- ";
        if (value.sort == PageValue::Sort::number) words += std::to_string(value.number) + " ";
        if (value.sort == PageValue::Sort::text) words += "'" + value.bytes + "' ";
        if (value.sort == PageValue::Sort::bytes) words += "x" + std::to_string(value.bytes.size()) + " ";
    }
    return words;
}

std::set<std::string> rows_of(const std::string& bytes) {
    std::set<std::string> rows;
    book::each_row_of_pages(bytes, [&](const PageRow& row) { rows.insert(words_of(row)); });
    return rows;
}

// A database that SQLite made by these statements.
std::string made_by(const std::string& sql) {
    const TempFolder folder;
    tamper(folder.file("made"), sql);
    return bytes_of_file(folder.file("made"));
}

} // namespace

TEST_CASE("every sort of value that SQLite writes is read as it is") {
    const auto rows =
        rows_of(made_by("CREATE TABLE t (a, b, c); INSERT INTO t VALUES (NULL, 0, 1), (-1, 127, 128), "
                        "(-32768, 8388607, -8388608), (2147483647, -2147483649, 140737488355327), "
                        "(9223372036854775807, -9223372036854775808, 1.5), ('', x'', 'word')"));
    for (const char* row :
         {"- 0 1 ", "-1 127 128 ", "-32768 8388607 -8388608 ", "2147483647 -2147483649 140737488355327 ",
          "9223372036854775807 -9223372036854775808 - ", "'' x0 'word' "}) {
        INFO(row);
        CHECK(rows.count(row) == 1);
    }
}

TEST_CASE(
    "a row with a number below nought or of the greatest size is read, one wider than any of ours is not") {
    const auto rows =
        rows_of(made_by("CREATE TABLE t (k INTEGER PRIMARY KEY, a); INSERT INTO t VALUES (-1, 'below'), "
                        "(9223372036854775807, 'greatest');"));
    CHECK(rows.count("- 'below' ") == 1);
    CHECK(rows.count("- 'greatest' ") == 1);
    std::string columns = "c0";
    std::string values = "'wide'";
    for (int i = 1; i < 65; ++i) {
        columns += ", c" + std::to_string(i);
        values += ", 1";
    }
    for (const auto& row :
         rows_of(made_by("CREATE TABLE w (" + columns + "); INSERT INTO w VALUES (" + values + ");")))
        CHECK(row.find("'wide'") != 0);
}

TEST_CASE("rows of any length come back from pages of any size, of tables and of indexes") {
    for (const char* page_bytes : {"512", "1024", "4096", "65536"}) {
        INFO(page_bytes);
        const auto rows = rows_of(made_by(
            std::string("PRAGMA page_size = ") + page_bytes +
            "; CREATE TABLE t (a TEXT, b BLOB); CREATE TABLE w (k TEXT PRIMARY KEY, v) WITHOUT ROWID; "
            "WITH n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 300) "
            "INSERT INTO t SELECT 'row ' || i, zeroblob(i * 37) FROM n; "
            "INSERT INTO w SELECT a || hex(zeroblob(rowid)), rowid FROM t"));
        std::size_t of_table = 0, of_index = 0;
        for (int i = 1; i <= 300; ++i) {
            const std::string name = "'row " + std::to_string(i);
            of_table += rows.count(name + "' x" + std::to_string(i * 37) + " ");
            of_index += rows.count(name + std::string(static_cast<std::size_t>(2 * i), '0') + "' " +
                                   std::to_string(i) + " ");
        }
        CHECK(of_table == 300);
        CHECK(of_index == 300);
    }
}

TEST_CASE("a file without its header, or cut off in a page, gives what is whole") {
    std::string bytes =
        made_by("CREATE TABLE t (a TEXT); INSERT INTO t VALUES ('kept'), (hex(zeroblob(9000)))");
    REQUIRE(rows_of(bytes).count("'kept' ") == 1);
    CHECK(rows_of(bytes.substr(0, bytes.size() - 1)).count("'kept' ") == 1);
    CHECK(rows_of(bytes.substr(0, 8192)).count("'kept' ") == 1); // the long one went on behind
    bytes.replace(0, 100, std::string(100, '\xFF'));
    CHECK(rows_of(bytes).count("'kept' ") == 1);
    CHECK(rows_of("").empty());
    CHECK(rows_of(std::string(8191, '\0')).empty());
}
