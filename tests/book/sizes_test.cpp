// The greatest text and the greatest photograph, at, just under and just over their size.
#include "book/photos.h"
#include "tests/support/books.h"

#include <catch2/catch.hpp>

using namespace undersheet;

TEST_CASE("a text of sixteen mebibytes is kept and comes back, one more byte is refused") {
    Shelf shelf;
    auto book = shelf.start();
    for (const std::size_t bytes : {(16U << 20U) - 1, 16U << 20U}) {
        const auto hash = good(book.keep_text(std::string(bytes, ' ')));
        CHECK(good(book.text(hash)).size() == bytes);
    }
    CHECK(book.keep_text(std::string((16U << 20U) + 1, ' ')).fault().code == Code::json_too_large);
}

TEST_CASE("a photograph of thirty-two mebibytes is kept and comes back, one more byte is refused") {
    Shelf shelf;
    auto book = shelf.start();
    const auto photo = [](std::size_t bytes) { return "\xFF\xD8\xFF" + std::string(bytes - 3, 'x'); };
    for (const std::size_t bytes : {book::kMostPhotoBytes - 1, book::kMostPhotoBytes}) {
        const auto hash = good(book.keep_photo(photo(bytes)));
        CHECK(good(book.photo(hash)).size() == bytes);
    }
    CHECK(book.keep_photo(photo(book::kMostPhotoBytes + 1)).fault().code == Code::photo_unreadable);
}

TEST_CASE("a personal value of sixty-four kibibytes is kept and comes back") {
    Shelf shelf;
    auto book = shelf.start();
    const std::string name(65'536, 'x');
    good(book.append({open_draft(kJob, "A-07"), site_draft(name)}));
    CHECK(good(book.entries(kJob)).back().personal.at("customer") == name);
    CHECK(book.append({site_draft(name + "x")}).fault().code == Code::json_too_large);
    CHECK(good(book.verify()).ok());
}
