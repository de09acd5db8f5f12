#include "book/files.h"

#include "tests/support/temp_folder.h"

#include <catch2/catch.hpp>
#include <cerrno>
#include <sys/stat.h>

using namespace undersheet;
using namespace undersheet::book;

TEST_CASE("a file is written whole, in place of what was there, and nothing else is left") {
    TempFolder folder;
    const std::string path = folder.file("a");
    REQUIRE(write_durably(path, "first, and longer", Readers::everybody).ok());
    REQUIRE(write_durably(path, "second", Readers::everybody).ok());
    CHECK(read_whole(path, 100).value() == "second");
    std::size_t files = 0;
    for (const auto& item : std::filesystem::directory_iterator(folder.path()))
        files += item.exists() ? 1 : 0;
    CHECK(files == 1);
}

TEST_CASE("a file is read up to its limit and refused above it") {
    TempFolder folder;
    const std::string path = folder.file("a");
    write_file(path, std::string(200'000, 'x'));
    CHECK(read_whole(path, 200'000)->size() == 200'000);
    CHECK_FALSE(read_whole(path, 199'999).ok());
}

TEST_CASE("a device and a folder are not read as files") {
    TempFolder folder;
    CHECK_FALSE(read_whole("/dev/null", 100).ok());
    CHECK_FALSE(read_whole(folder.path(), 100).ok());
    CHECK(read_start(folder.path(), 1).empty());
}

#if !defined(__EMSCRIPTEN__)
TEST_CASE("a pipe is refused at once, and nobody is waited for") {
    TempFolder folder;
    const std::string pipe = folder.file("pipe");
    REQUIRE(::mkfifo(pipe.c_str(), 0600) == 0);
    CHECK(one_line(read_whole(pipe, 100).fault()) ==
          pipe + ": this is a folder, pipe or device, not a file; name the file");
    CHECK(read_start(pipe, 1).empty());
}
#endif

TEST_CASE("moving into place never goes over a file that is there") {
    TempFolder folder;
    write_file(folder.file("new"), "new");
    write_file(folder.file("old"), "old");
    const auto refused = move_into_place(folder.file("new"), folder.file("old"));
    REQUIRE_FALSE(refused.ok());
    CHECK(one_line(refused.fault()) ==
          folder.file("old") + ": there is a file of that name already; choose another name");
    CHECK(bytes_of_file(folder.file("old")) == "old");
    REQUIRE(move_into_place(folder.file("new"), folder.file("free")).ok());
    CHECK(bytes_of_file(folder.file("free")) == "new");
    CHECK_FALSE(std::filesystem::exists(folder.file("new")));
}

TEST_CASE("what the system says is told in words") {
    CHECK(file_fault(ENOSPC, "f").code == Code::book_full);
    CHECK(file_fault(EACCES, "f").code == Code::book_read_only);
    CHECK(file_fault(EROFS, "f").code == Code::book_read_only);
    CHECK(file_fault(EPERM, "f").code == Code::book_read_only);
    CHECK(file_fault(ENOTDIR, "f").code == Code::book_missing);
    CHECK(file_fault(EDQUOT, "f").code == Code::book_full);
    CHECK(file_fault(EFBIG, "f").code == Code::book_full);
    CHECK(file_fault(ENOENT, "f").code == Code::book_missing);
    CHECK(file_fault(EIO, "f").code == Code::book_failed);
    CHECK(one_line(file_fault(ENOSPC, "f")) ==
          "f: not saved, the storage is full; make room and do it again");
}

TEST_CASE("writing where there is no folder is refused") {
    TempFolder folder;
    CHECK(write_durably(folder.file("none/a"), "x", Readers::everybody).fault().code == Code::book_missing);
    CHECK_FALSE(read_whole(folder.file("none/a"), 10).ok());
}

TEST_CASE("the folder of a bare file name is the one we stand in") {
    CHECK(folder_of("demo.book") == ".");
    CHECK(folder_of("a/b/demo.book") == "a/b");
}

TEST_CASE("a file does not take the place of a folder, and nothing of it is left beside it") {
    TempFolder folder;
    std::filesystem::create_directory(folder.file("a"));
    CHECK_FALSE(write_durably(folder.file("a"), "x", Readers::everybody).ok());
    std::size_t files = 0;
    for (const auto& item : std::filesystem::directory_iterator(folder.path())) {
        CHECK(item.path().filename() == "a");
        ++files;
    }
    CHECK(files == 1);
}

TEST_CASE("what is no file is not read, and begins with nothing") {
    TempFolder folder;
    CHECK_FALSE(read_whole(folder.path(), 100).ok());
    CHECK(read_start(folder.path(), 16).empty());
    CHECK(read_start(folder.file("none"), 16).empty());
    write_file(folder.file("short"), "abc");
    CHECK(read_start(folder.file("short"), 16) == "abc");
}

TEST_CASE("removing what is not there is done, removing a folder is refused") {
    TempFolder folder;
    write_file(folder.file("a"), "x");
    CHECK(remove_durably(folder.file("a")).ok());
    CHECK(remove_durably(folder.file("a")).ok());
    write_file(folder.file("b"), "x");
    CHECK(remove_durably(folder.file("b/under-a-file")).ok());
    std::filesystem::create_directory(folder.file("c"));
    CHECK_FALSE(remove_durably(folder.file("c")).ok());
    CHECK(std::filesystem::exists(folder.file("c")));
}

TEST_CASE("a folder is made once, and not where a file is or where there is no folder to hold it") {
    TempFolder folder;
    CHECK(make_folder(folder.file("photos")).ok());
    CHECK(make_folder(folder.file("photos")).ok());
    CHECK(make_folder(folder.file("none/photos")).fault().code == Code::book_missing);
    write_file(folder.file("a"), "x");
    CHECK_FALSE(make_folder(folder.file("a/photos")).ok());
}

TEST_CASE("what cannot be linked is moved all the same, and what is not there is not moved") {
    TempFolder folder;
    std::filesystem::create_directory(folder.file("old")); // folders have no second name: as on a memory card
    REQUIRE(move_into_place(folder.file("old"), folder.file("new")).ok());
    CHECK(std::filesystem::exists(folder.file("new")));
    CHECK_FALSE(std::filesystem::exists(folder.file("old")));
    CHECK(move_into_place(folder.file("none"), folder.file("there")).fault().code == Code::book_missing);
}
