// Files and streams that are larger than anything anybody feeds: refused in one line, whatever they hold.
#include "tests/cli/program.h"

#include <filesystem>

using namespace undersheet;

namespace {

constexpr std::size_t kMostFileBytes = 32U << 20U; // as in cli/reading.h

// A file of that size which takes no room on the disk.
void make_file(const Program& program, const std::string& name, std::size_t bytes) {
    write_file(program.file(name), "");
    std::filesystem::resize_file(program.file(name), bytes);
}

} // namespace

TEST_CASE("a file is read up to 32 MiB, and one byte more is refused") {
    Program program;
    program.start();
    const std::string before = program.book();
    for (const std::size_t bytes : {kMostFileBytes - 1, kMostFileBytes}) {
        make_file(program, "large.jpg", bytes);
        const Ran read = program.run("photo large.jpg --of AB --shows x --by IP");
        INFO(bytes << ": " << read.err);
        CHECK(read.says("no JPEG or PNG")); // it was read, and looked at
        CHECK(read.message_lines() == 1);
    }
    make_file(program, "large.jpg", kMostFileBytes + 1);
    const Ran refused = program.run("photo large.jpg --of AB --shows x --by IP");
    CHECK(refused.code == 2);
    CHECK(refused.err ==
          "large.jpg: this photograph is larger than 32 MiB; name the right file, or feed it in pieces\n");
    CHECK(program.book() == before);
}

TEST_CASE("standard input is read up to 32 MiB, and an endless stream is refused") {
    Program program;
    program.start();
    make_file(program, "large", kMostFileBytes);
    CHECK(program.run("record --from - --by IP <large").says("16 MiB")); // read, and too much for entries
    make_file(program, "large", kMostFileBytes + 1);
    const Ran refused = program.run("record --from - --by IP <large");
    CHECK(refused.code == 2);
    CHECK(refused.says("standard input: this file of entries is larger than 32 MiB"));
    CHECK(refused.message_lines() == 1);
    CHECK(program.run("record --from - --by IP", "yes |").says("larger than 32 MiB"));
}
