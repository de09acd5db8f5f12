// The book itself is the trouble: missing, no book, read-only, full, in use. Exit code 3, one line, and nothing half-written.
#include "tests/cli/program.h"

using namespace undersheet;

namespace {

constexpr const char* kTape = "record tape m=3 --at AB --by IP ";

void check_no_book(const Program& program, const std::string& name, const std::string& says) {
    for (const std::string& words : {std::string(kTape), std::string("stages "), std::string("verify ")}) {
        const Ran ran = program.run(words + "--book " + name);
        INFO(words << name << ": " << ran.err);
        CHECK(ran.code == 3);
        CHECK(ran.message_lines() == 1);
        CHECK(ran.says(name));
        CHECK(ran.says(says));
        CHECK(ran.out.empty());
    }
}

void check_no_book_and_left_alone(const Program& program, const std::string& name, const std::string& says) {
    const std::string before = bytes_of_file(program.file(name));
    check_no_book(program, name, says);
    CHECK(bytes_of_file(program.file(name)) == before);
}

// Whether `line` of the shell runs here at all: some boxes have no sqlite3 shell, or allow no mount of one's own. The test
// says so when it could not be made.
bool has(const std::string& line) {
    const bool it_has = std::system((line + " >/dev/null 2>&1").c_str()) == 0;
    if (!it_has) WARN("not tested, because this does not run here: " << line);
    return it_has;
}

} // namespace

TEST_CASE("a file that is no book is named, and left as it is") {
    Program program;
    write_file(program.file("text.book"), "Dear Mr Dunmoor,\nabout your roof\n");
    write_file(program.file("empty.book"), "");
    check_no_book_and_left_alone(program, "text.book", "this file is no book");
    check_no_book_and_left_alone(program, "empty.book", "empty");
}

TEST_CASE("another program's SQLite file is no book") {
    if (!has("command -v sqlite3")) return;
    Program program;
    REQUIRE(program.pipe("sqlite3 other.book 'create table recipes(name)'").code == 0);
    check_no_book_and_left_alone(program, "other.book", "this file is no book");
}

TEST_CASE("a book that is not there, or is a folder, is named with what to do") {
    Program program;
    check_no_book(program, "nosuch.book", "start one");
    REQUIRE(program.pipe("mkdir folder.book").code == 0);
    check_no_book(program, "folder.book", "folder");
}

TEST_CASE("start leaves a file alone that is there already") {
    Program program;
    program.start();
    const std::string before = program.book();
    const Ran ran = program.run("start roofs.book --firm Other");
    CHECK(ran.code == 3);
    CHECK(ran.message_lines() == 1);
    CHECK(ran.says("another name"));
    CHECK(program.book() == before);
}

TEST_CASE("a read-only book can be asked, and refuses to be written in one line") {
    const std::string apart = "unshare -rm sh -c ";
    if (!has(apart + "'mount -t tmpfs none /mnt'")) return;
    Program program;
    program.start();
    const std::string before = program.book();
    const std::string bound = "mount --bind . /mnt && mount -o remount,ro,bind /mnt && cd /mnt && ";
    const Ran asked = program.pipe(apart + "\"" + bound + "$U stages --book /mnt/roofs.book\"");
    CHECK(asked.code == 0);
    CHECK(asked.shows("A-07"));
    const Ran ran = program.pipe(apart + "\"" + bound + "$U " + kTape + "--book /mnt/roofs.book\"");
    INFO(ran.err);
    CHECK(ran.code == 3);
    CHECK(ran.message_lines() == 1);
    CHECK(ran.says("/mnt/roofs.book"));
    CHECK(ran.says("may not be written"));
    CHECK(program.book() == before);
}

TEST_CASE("a full disk refuses in one line, and the book holds what it held") {
    const std::string apart = "unshare -rm sh -c ";
    if (!has(apart + "'mount -t tmpfs none /mnt'")) return;
    Program program;
    program.start();
    // Room for the book and its key, then a filler takes the rest.
    const Ran ran = program.pipe(apart +
                                 "\"mount -t tmpfs -o size=512k none /mnt && cp roofs.book* /mnt/ && "
                                 "sha256sum </mnt/roofs.book >sum_before; "
                                 "cat /dev/zero >/mnt/filler 2>/dev/null; "
                                 "$U " +
                                 std::string(kTape) +
                                 "--book /mnt/roofs.book; code=\\$?; "
                                 "sha256sum </mnt/roofs.book >sum_after; exit \\$code\"");
    INFO(ran.err);
    CHECK(ran.code == 3);
    CHECK(ran.message_lines() == 1);
    CHECK(ran.says("the storage is full"));
    CHECK_FALSE(bytes_of_file(program.file("sum_before")).empty());
    CHECK(bytes_of_file(program.file("sum_before")) == bytes_of_file(program.file("sum_after")));
}

TEST_CASE("a file size limit refuses in one line, and the book holds what it held") {
    Program program;
    program.start();
    const std::string before = program.book();
    for (const std::string limit : {"ulimit -f 2;", "trap '' XFSZ; ulimit -f 2;"}) {
        for (const std::string& words : {std::string(kTape), std::string("hand A-07 -o a.hand"),
                                         std::string("paper inspection -o inspection.html")}) {
            const Ran ran = program.run(words, limit);
            INFO(words << ": " << ran.err);
            CHECK(ran.code == 3);
            CHECK(ran.message_lines() == 1);
            CHECK(program.book() == before);
        }
        CHECK(program.run(kTape, limit)
                  .says("roofs.book: not saved, the file would be larger than is allowed"));
    }
    CHECK(bytes_of_file(program.file("a.hand")).empty());
    CHECK(program.run("verify").code == 0);
    CHECK(program.run(kTape).code == 0);
}

TEST_CASE("a book in use by another program is waited for, then refused in one line") {
    if (!has("command -v sqlite3")) return;
    Program program;
    program.start();
    const std::string before = program.book();
    const std::string hold = "mkfifo held; { echo 'begin exclusive;'; echo '.print held'; sleep 9; } | "
                             "sqlite3 roofs.book >held & ";
    const Ran ran =
        program.pipe(hold + "read word <held; $U " + kTape + "; code=$?; kill %1 2>/dev/null; exit $code");
    INFO(ran.err);
    CHECK(ran.code == 3);
    CHECK(ran.message_lines() == 1);
    CHECK(ran.says("another program"));
    CHECK(program.book() == before);
}
