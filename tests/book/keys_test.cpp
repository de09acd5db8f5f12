#include "book/keys.h"

#include "tests/support/books.h"

#include <catch2/catch.hpp>
#include <sys/stat.h>

using namespace undersheet;
using namespace undersheet::book;

namespace {
Key key_of(std::uint8_t number) {
    Key key;
    key.seed = seed_of(number);
    key.device = entry::signer_from(key.seed)->device();
    key.install = std::string(32, 'a');
    return key;
}
} // namespace

TEST_CASE("a key that was saved is loaded again") {
    TempFolder folder;
    KeyFiles files(folder.file("demo.book"));
    const Key key = key_of(3);
    REQUIRE(files.save(key).ok());
    const auto loaded = good(files.load(key.device));
    REQUIRE(loaded.has_value());
    CHECK(loaded->device == key.device);
    CHECK(loaded->install == key.install);
    CHECK(loaded->seed == key.seed);
}

TEST_CASE("a key file stands beside the book, named by its device, in four lines") {
    TempFolder folder;
    KeyFiles files(folder.file("demo.book"));
    const Key key = key_of(3);
    REQUIRE(files.save(key).ok());
    CHECK(bytes_of_file(folder.file("demo.book." + key.device + ".key")) ==
          "undersheet.key.1\ndevice " + key.device + "\ninstall " + key.install + "\nsecret " +
              "0303030303030303030303030303030303030303030303030303030303030303\n");
}

#if !defined(__EMSCRIPTEN__)
TEST_CASE("a key file may be read and written by its owner only") {
    TempFolder folder;
    KeyFiles files(folder.file("demo.book"));
    const Key key = key_of(3);
    const ::mode_t before = ::umask(0);
    const bool saved = files.save(key).ok();
    ::umask(before);
    REQUIRE(saved);
    struct ::stat status {};
    REQUIRE(::stat(files.file_of(key.device).c_str(), &status) == 0);
    CHECK((status.st_mode & 0777U) == 0600U);
}
#endif

TEST_CASE("a key that is not there is no fault") {
    TempFolder folder;
    KeyFiles files(folder.file("demo.book"));
    CHECK_FALSE(good(files.load(key_of(3).device)).has_value());
}

TEST_CASE("a key file that is damaged, empty or another device's is refused and named") {
    TempFolder folder;
    KeyFiles files(folder.file("demo.book"));
    const Key key = key_of(3);
    REQUIRE(files.save(key).ok());
    const std::string file = files.file_of(key.device);
    const std::string whole = bytes_of_file(file);
    std::vector<std::string> bad = {"", "x", whole.substr(0, whole.size() - 1), whole + "\n",
                                    "undersheet.key.2" + whole.substr(16)};
    std::string other_secret = whole;
    other_secret[whole.size() - 2] = '4';
    bad.push_back(other_secret);
    const std::string secret = whole.substr(whole.find("secret"));
    const std::string head = "undersheet.key.1\ndevice " + key.device + "\ninstall ";
    bad.push_back(whole + "x");
    bad.push_back(head + "aa\n" + secret);
    bad.push_back(head + key.install + "\nsecret 03\n");
    bad.push_back(head + key.install + "\nsecret " + std::string(64, 'g') + "\n");
    bad.push_back("undersheet.key.1\ninstall " + key.install + "\ndevice " + key.device + "\n" + secret);
    for (const auto& bytes : bad) {
        write_file(file, bytes);
        const auto loaded = files.load(key.device);
        INFO(bytes);
        REQUIRE_FALSE(loaded.ok());
        CHECK(loaded.fault().code == Code::key_unusable);
        CHECK(loaded.fault().where == file);
    }
    REQUIRE(files.save(key_of(4)).ok());
    std::filesystem::copy_file(files.file_of(key_of(4).device), file,
                               std::filesystem::copy_options::overwrite_existing);
    CHECK_FALSE(files.load(key.device).ok());
}

TEST_CASE("a book with its keys in files goes on after it is opened again") {
    TempFolder folder;
    FixedWorld world;
    const std::string path = folder.file("demo.book");
    KeyFiles files(path);
    good(Book::start(path, {world, files}, {firm_draft()}));
    auto book = good(Book::open(path, Access::write, {world, files}));
    CHECK(good(book.append({air_draft()}))[0].dctr == 2);
    CHECK(good(book.verify()).ok());
}

TEST_CASE("where a folder has the name of a key file, the key is said to be unreadable") {
    TempFolder folder;
    KeyFiles files(folder.file("demo.book"));
    const std::string device = key_of(3).device;
    std::filesystem::create_directory(files.file_of(device));
    CHECK(line_of(files.load(device)).find("this device's key cannot be read") != std::string::npos);
    CHECK_FALSE(good(files.load_locked(device, "p0123456789")).has_value());
    std::filesystem::create_directory(folder.file("demo.book." + device + ".p0123456789.pin"));
    CHECK(line_of(files.load_locked(device, "p0123456789")).find("a person's own key cannot be read") !=
          std::string::npos);
    CHECK_FALSE(files.save_locked(device, "p0123456789", "x").ok());
}
