// One thing by itself: at, just under and just over what is admitted.
#include "book/admitting.h"

#include "book/photos.h"
#include "book/seal.h"
#include "entry/json.h"
#include "tests/support/books.h"

#include <catch2/catch.hpp>

using namespace undersheet;

namespace {

std::string said_of(std::string value, std::size_t salt_bytes = 32) {
    entry::Salt salt{};
    const auto cid = entry::commitment(salt, value);
    const auto secret = book::admit_secret(cid, std::string(salt_bytes, '\0'), std::move(value));
    return secret.ok() ? "done" : secret.fault().detail;
}

std::string said_of(const Done& done) { return done.ok() ? "done" : done.fault().detail; }

std::string photo_of(std::size_t bytes, const std::string& start) {
    std::string photo = start;
    photo.resize(bytes, 'x');
    return said_of(book::check_photo(entry::sha256(photo), photo));
}

// A seal that was signed as it stands.
std::string seal_of(const std::string& body) {
    const auto signer = entry::signer_from(seed_of(3));
    const auto seal = book::read_seal({body, good(signer->sign(body))}, signer->public_key());
    return seal.ok() ? "done" : seal.fault().detail;
}

} // namespace

TEST_CASE("a personal value is plain text of at most 64 KiB with a salt of 32 bytes, and the one that was "
          "recorded") {
    CHECK(said_of("Mrs Ada Pell") == "done");
    CHECK(said_of("") == "done");
    CHECK(said_of(std::string(65535, 'a')) == "done");
    CHECK(said_of(std::string(65536, 'a')) == "done");
    CHECK(said_of(std::string(65537, 'a')) == "a personal value is not of its size");
    CHECK(said_of("Ada", 31) == "a personal value is not of its size");
    CHECK(said_of("Ada", 33) == "a personal value is not of its size");
    CHECK(said_of("Ada\xFF") == "a personal value is no plain text");
    CHECK(said_of("Ada\x1B[2J") == "a personal value is no plain text");
    CHECK(book::admit_secret(entry::sha256("other"), std::string(32, '\0'), "Ada").fault().detail ==
          "a personal value is not the one that was recorded");
}

TEST_CASE("a kept text is of at most 16 MiB, and the one of that name") {
    constexpr std::size_t kMost = 16U << 20U;
    for (const std::size_t bytes : {kMost - 1, kMost}) {
        const std::string text(bytes, 'm');
        CHECK(said_of(book::check_text(entry::sha256(text), text)) == "done");
    }
    const std::string long_text(kMost + 1, 'm');
    CHECK(said_of(book::check_text(entry::sha256(long_text), long_text)) ==
          "a method in it is larger than 16 MiB");
    CHECK(said_of(book::check_text(entry::sha256("a"), "b")) ==
          "a method in it is not the one that was kept");
}

TEST_CASE("a photograph is a JPEG or PNG of at most 32 MiB, and the one of that name") {
    const std::string jpeg = "\xFF\xD8\xFF", png = "\x89PNG\r\n\x1A\n";
    CHECK(photo_of(100, jpeg) == "done");
    CHECK(photo_of(100, png) == "done");
    CHECK(photo_of(100, "GIF8") == "a photograph is no JPEG or PNG of at most 32 MiB");
    CHECK(photo_of(book::kMostPhotoBytes, jpeg) == "done");
    CHECK(photo_of(book::kMostPhotoBytes + 1, jpeg) == "a photograph is no JPEG or PNG of at most 32 MiB");
    CHECK(said_of(book::check_photo(entry::sha256("a"), jpeg)) ==
          "a photograph is not the one that was recorded");
}

TEST_CASE("a key belongs to the device that is named after it") {
    const auto key = entry::signer_from(seed_of(1))->public_key();
    const std::string device = entry::device_name(key);
    CHECK(book::admit_key(device, entry::spki_of(key)).ok());
    CHECK_FALSE(book::admit_key(device, entry::spki_of(key).substr(1)).ok());
    CHECK_FALSE(book::admit_key(device, entry::spki_of(entry::signer_from(seed_of(2))->public_key())).ok());
}

TEST_CASE("an entry needs its own name, its device's key and that key's signature") {
    Device device(1), other(2);
    const entry::Entry made = device.write(air_draft());
    book::KeysByDevice keys{{device.signer->device(), device.signer->public_key()}};
    const auto said = [&](const entry::Hash& name, const entry::Signature& signature) {
        const auto entry = book::admit_entry(name, made.body, signature, keys);
        return entry.ok() ? "done" : entry.fault().detail;
    };
    CHECK(said(made.hash, made.signature) == "done");
    CHECK(said(entry::sha256("x"), made.signature) == "its name does not belong to its bytes");
    CHECK(said(made.hash, other.write(air_draft()).signature) == "its signature is wrong");
    keys.clear();
    CHECK(said(made.hash, made.signature) == "the key of its device is missing");
}

TEST_CASE("a seal is refused where it is no seal of ours, says no digest or counts what cannot be") {
    const std::string digest = entry::hash_text(entry::sha256(""));
    const auto body = [&](const std::string& entries, const std::string& photos, const std::string& v,
                          const std::string& hash) {
        return R"({"clock":"c","digest":")" + hash + R"(","entries":)" + entries + R"(,"photos":)" + photos +
               R"(,"v":")" + v + "\"}";
    };
    CHECK(seal_of(body("1", "0", "undersheet.seal.1", digest)) == "done");
    CHECK(seal_of("not strict").find("the seal cannot be read") == 0);
    CHECK(seal_of(body("1", "0", "undersheet.seal.2", digest)) ==
          "the seal is of a form this program does not know");
    CHECK(seal_of(body("1", "0", "undersheet.seal.1", "none")) == "the seal names no digest");
    for (const std::string count : {"-1", "1.5", "\"1\""}) {
        CHECK(seal_of(body(count, "0", "undersheet.seal.1", digest)) ==
              "the seal does not say how much is in the file");
        CHECK(seal_of(body("1", count, "undersheet.seal.1", digest)) ==
              "the seal does not say how much is in the file");
    }
    const auto with_rest = [&](const std::string& rest) {
        std::string whole = body("1", "0", "undersheet.seal.1", digest);
        return seal_of(whole.insert(whole.find(",\"v\""), R"(,"rest":")" + rest + "\""));
    };
    CHECK(with_rest(digest) == "done");
    CHECK(with_rest("none") == "the seal does not say what is in the file beside entries");
    CHECK(seal_of(R"({"v":"undersheet.seal.1","digest":")" + digest + "\"}").find("cannot be read") !=
          std::string::npos);
}
