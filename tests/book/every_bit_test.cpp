// Every single bit of what a book or a hand-over file keeps as evidence, flipped one at a time, is reported.
//
// The check is the one that verify and take make of each row (book/admitting.h), asked in memory, so that no file has to be
// written for a bit. UNDERSHEET_EVERY_BIT names another book, for nights: then its every bit is flipped.
#include "book/admitting.h"
#include "book/files.h"
#include "book/journal.h"
#include "book/photos.h"
#include "tests/support/books.h"

#include <catch2/catch.hpp>

#include <cstdlib>
#include <iostream>

using namespace undersheet;

namespace {

struct StoredEntry {
    entry::Hash name = {};
    std::string body = {}, signature = {};
};
struct StoredSecret {
    entry::Hash cid = {};
    std::string salt = {}, value = {};
};
struct StoredPhoto {
    entry::Hash name = {};
    std::string bytes = {};
};

// What one file keeps, as bytes.
struct Evidence {
    book::KeysByDevice keys = {};
    std::vector<StoredEntry> entries = {};
    std::vector<StoredSecret> secrets = {};
    std::vector<StoredPhoto> photos = {};
};

std::string array_bytes(std::string_view view) { return std::string(view); }

void read_photos(const std::string& folder, Evidence& into) {
    for (const StoredEntry& stored : into.entries) {
        const auto entry = good(entry::read_entry(stored.body, book::signature_from(stored.signature)));
        const auto photo = entry::parse_hash(entry.data.text_of("sha256"));
        if (entry.kind != "photo" || !photo) continue;
        auto bytes = book::read_photo_file(folder, *photo);
        if (bytes) into.photos.push_back({*photo, std::move(*bytes)});
    }
}

Evidence evidence_of(const std::string& file) {
    Evidence evidence;
    book::Connection connection(file, book::Connection::Mode::foreign, 0);
    connection.each("SELECT dev, spki FROM pubkey", {}, [&](const book::Row& row) {
        evidence.keys.emplace(row.text(0), good(book::admit_key(row.text(0), row.bytes(1))));
    });
    connection.each("SELECT hash, body, sig FROM entry", {}, [&](const book::Row& row) {
        evidence.entries.push_back({book::hash_from(row.bytes(0)), row.bytes(1), row.bytes(2)});
    });
    connection.each("SELECT cid, salt, val FROM secret", {}, [&](const book::Row& row) {
        evidence.secrets.push_back({book::hash_from(row.bytes(0)), row.bytes(1), row.bytes(2)});
    });
    read_photos(file + ".photos", evidence);
    return evidence;
}

struct Flips {
    std::size_t tried = 0, reported = 0;
};

// Flips each bit of `bytes`, asks, and puts it back.
template <class IsGood>
void flip_each(std::string& bytes, IsGood is_good, Flips& flips) {
    REQUIRE(is_good());
    for (char& byte : bytes) {
        for (unsigned bit = 0; bit < 8; ++bit) {
            const char was = byte;
            byte = static_cast<char>(static_cast<unsigned char>(was) ^ (1U << bit));
            ++flips.tried;
            if (!is_good()) ++flips.reported;
            byte = was;
        }
    }
}

// A name is held as its bytes while it is flipped.
template <class IsGood>
void flip_name(const entry::Hash& name, IsGood is_good, Flips& flips) {
    std::string bytes = array_bytes(book::bytes_of(name));
    flip_each(
        bytes, [&] { return is_good(book::hash_from(bytes)); }, flips);
}

Flips flip_entries(Evidence& evidence) {
    Flips flips;
    for (StoredEntry& stored : evidence.entries) {
        const auto admitted = [&](const entry::Hash& name) {
            return book::admit_entry(name, stored.body, book::signature_from(stored.signature), evidence.keys)
                .ok();
        };
        const auto is_good = [&] { return admitted(stored.name); };
        flip_each(stored.body, is_good, flips);
        flip_each(stored.signature, is_good, flips);
        flip_name(stored.name, admitted, flips);
    }
    return flips;
}

Flips flip_keys(const Evidence& evidence) {
    Flips flips;
    for (const auto& [device, key] : evidence.keys) {
        std::string spki = entry::spki_of(key);
        flip_each(
            spki, [&, name = device] { return book::admit_key(name, spki).ok(); }, flips);
    }
    return flips;
}

Flips flip_secrets(Evidence& evidence) {
    Flips flips;
    for (StoredSecret& stored : evidence.secrets) {
        const auto admitted = [&](const entry::Hash& cid) {
            return book::admit_secret(cid, stored.salt, stored.value).ok();
        };
        const auto is_good = [&] { return admitted(stored.cid); };
        flip_each(stored.salt, is_good, flips);
        flip_each(stored.value, is_good, flips);
        flip_name(stored.cid, admitted, flips);
    }
    return flips;
}

Flips flip_photos(Evidence& evidence) {
    Flips flips;
    for (StoredPhoto& stored : evidence.photos)
        flip_each(
            stored.bytes, [&] { return book::check_photo(stored.name, stored.bytes).ok(); }, flips);
    return flips;
}

void check_all(const char* what, const Flips& flips) {
    std::cout << "every bit: " << what << ": " << flips.reported << " of " << flips.tried << " reported"
              << std::endl;
    INFO(what);
    CHECK(flips.tried > 0);
    CHECK(flips.reported == flips.tried);
}

void flip_everything(const std::string& file) {
    Evidence evidence = evidence_of(file);
    check_all("entries (bodies, signatures, names)", flip_entries(evidence));
    check_all("public keys", flip_keys(evidence));
    check_all("personal values", flip_secrets(evidence));
    check_all("photographs", flip_photos(evidence));
}

const std::string kPhoto = std::string("\xFF\xD8\xFF\xE0") + "a drawing of a gutter";

// A firm, a job, a customer, a photograph and a reading.
void write_short_job(Shelf& shelf) {
    auto book = shelf.start();
    const auto photo = good(book.keep_photo(kPhoto));
    entry::Draft picture = air_draft();
    picture.kind = "photo";
    picture.data = entry::Value().set("sha256", entry::hash_text(photo));
    good(book.append({open_draft(kJob, "A-1"), site_draft("Mrs Ada Pell"), picture, air_draft()}));
}

} // namespace

TEST_CASE("every bit of a book's evidence that is flipped is reported") {
    if (const char* named = std::getenv("UNDERSHEET_EVERY_BIT")) return flip_everything(named);
    Shelf shelf;
    write_short_job(shelf);
    flip_everything(shelf.path());
}

// The same through the file itself: nothing stands between the bytes on the disk and the check.
TEST_CASE("every bit of a photograph's file that is flipped is reported by verify") {
    Shelf shelf;
    write_short_job(shelf);
    const std::string file = shelf.path() + ".photos/" + entry::hash_text(entry::sha256(kPhoto));
    auto book = shelf.open(book::Access::read);
    std::string bytes = kPhoto;
    Flips flips;
    flip_each(
        bytes,
        [&] {
            write_file(file, bytes);
            return good(book.verify()).ok();
        },
        flips);
    check_all("a photograph's file", flips);
}
