#include "entry/hash.h"

#include <catch2/catch.hpp>

using namespace undersheet;
using namespace undersheet::entry;

// NIST, Secure Hash Standard example values for SHA-256 (FIPS 180-4): one block, two blocks, and the empty text.
TEST_CASE("SHA-256 gives the published example values") {
    CHECK(hash_text(sha256("abc")) == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    CHECK(hash_text(sha256("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq")) ==
          "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
    CHECK(hash_text(sha256("")) == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
}

TEST_CASE("a digest is the hash of the raw hashes set behind each other") {
    const std::array<Hash, 2> hashes = {sha256("a"), sha256("b")};
    std::string raw(hashes[0].begin(), hashes[0].end());
    raw.append(hashes[1].begin(), hashes[1].end());
    CHECK(digest_of(hashes) == sha256(raw));
    CHECK(digest_of({}) == sha256(""));
}

TEST_CASE("a name reads back, and its short form is its beginning") {
    const Hash hash = sha256("abc");
    CHECK(*parse_hash(hash_text(hash)) == hash);
    CHECK(short_name(hash) == "ba7816bf");
}

TEST_CASE("a name that is too short, too long, in capitals or no hexadecimal is refused") {
    const std::string good = hash_text(sha256("abc"));
    CHECK_FALSE(parse_hash(good.substr(1)).ok());
    CHECK_FALSE(parse_hash(good + "0").ok());
    CHECK_FALSE(parse_hash("B" + good.substr(1)).ok());
    CHECK_FALSE(parse_hash("g" + good.substr(1)).ok());
    CHECK_FALSE(parse_hash("").ok());
}
