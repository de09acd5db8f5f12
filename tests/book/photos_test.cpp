#include "book/photos.h"

#include "tests/support/books.h"

#include <catch2/catch.hpp>

using namespace undersheet;
using namespace undersheet::book;

namespace {
const std::string kJpeg = std::string("\xFF\xD8\xFF\xE0", 4) + "an invented photograph";
const std::string kPng = std::string("\x89PNG\r\n\x1A\n", 8) + "an invented drawing";

std::size_t files_in(const std::string& folder) {
    std::size_t count = 0;
    for (const auto& item : std::filesystem::directory_iterator(folder))
        count += item.is_regular_file() ? 1 : 0;
    return count;
}
} // namespace

TEST_CASE("a photograph is kept byte for byte under its hash beside the book") {
    Shelf shelf;
    Book book = shelf.start();
    for (const auto& bytes : {kJpeg, kPng}) {
        const auto hash = good(book.keep_photo(bytes));
        CHECK(hash == entry::sha256(bytes));
        CHECK(bytes_of_file(shelf.path() + ".photos/" + entry::hash_text(hash)) == bytes);
        CHECK(good(shelf.open(Access::read).photo(hash)) == bytes);
    }
    CHECK(files_in(shelf.path() + ".photos") == 2);
}

TEST_CASE("the same photograph twice is one file") {
    TempFolder folder;
    const std::string photos = folder.file("b.photos");
    CHECK(good(keep_photo_file(photos, kJpeg)) == good(keep_photo_file(photos, kJpeg)));
    CHECK(files_in(photos) == 1);
}

TEST_CASE("what is no JPEG and no PNG is refused and no folder is made for it") {
    TempFolder folder;
    const std::string photos = folder.file("b.photos");
    for (const std::string& bytes :
         {std::string("GIF89a"), std::string("\xFF\xD8", 2), std::string("\x89PNG\r\n\x1A", 7),
          std::string("<svg/>"), std::string("RIFF0000WEBP")}) {
        const auto refused = keep_photo_file(photos, bytes);
        CHECK(line_of(refused) == "this is no JPEG and no PNG; save it as one of these");
    }
    CHECK(line_of(keep_photo_file(photos, "")) == "the photograph is empty");
    CHECK_FALSE(std::filesystem::exists(photos));
}

TEST_CASE("thirty-two mebibytes are kept and one more byte is refused") {
    TempFolder folder;
    std::string bytes(kMostPhotoBytes, 'x');
    bytes.replace(0, 3, "\xFF\xD8\xFF");
    CHECK(keep_photo_file(folder.path(), bytes).ok());
    bytes += 'x';
    CHECK(line_of(keep_photo_file(folder.path(), bytes)) ==
          "the photograph is larger than 32 MiB; take it smaller");
}

TEST_CASE("a photograph that is missing, cut off or changed is not handed out") {
    TempFolder folder;
    const auto hash = good(keep_photo_file(folder.path(), kJpeg));
    const std::string file = folder.file(entry::hash_text(hash));
    write_file(file, kJpeg.substr(0, 10));
    CHECK(read_photo_file(folder.path(), hash).fault().code == Code::photo_unreadable);
    write_file(file, kJpeg + "x");
    CHECK(read_photo_file(folder.path(), hash).fault().detail ==
          "the photograph is not the one that was recorded");
    CHECK(good(keep_photo_file(folder.path(), kJpeg)) == hash); // kept again, whole
    CHECK(good(read_photo_file(folder.path(), hash)) == kJpeg);
    std::filesystem::remove(file);
    CHECK(read_photo_file(folder.path(), hash).fault().detail ==
          "the photograph is not there or cannot be read");
}
