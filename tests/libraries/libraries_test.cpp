// What we rely on in other people's libraries, asked on every target we build for: a self-compiled SQLite has other
// defaults than Debian's, and a signature made on a phone has to verify on a desk.
#include <SQLiteCpp/SQLiteCpp.h>
#include <catch2/catch.hpp>
#include <sodium.h>
#include <sqlite3.h>

#include <array>
#include <random>
#include <string>
#include <string_view>
#include <vector>

namespace {

std::string hex(const unsigned char* bytes, std::size_t count) {
    std::string digits(count * 2 + 1, '\0');
    sodium_bin2hex(digits.data(), digits.size(), bytes, count);
    digits.pop_back();
    return digits;
}

template <std::size_t N>
std::array<unsigned char, N> unhex(std::string_view digits) {
    std::array<unsigned char, N> bytes{};
    REQUIRE(sodium_hex2bin(bytes.data(), N, digits.data(), digits.size(), nullptr, nullptr, nullptr) == 0);
    return bytes;
}

std::string first_column(SQLite::Database& db, const std::string& sql) {
    return db.execAndGet(sql).getString();
}

} // namespace

TEST_CASE("SHA-256 of abc is the published one") {
    REQUIRE(sodium_init() >= 0);
    std::array<unsigned char, crypto_hash_sha256_BYTES> hash{};
    crypto_hash_sha256(hash.data(), reinterpret_cast<const unsigned char*>("abc"), 3);
    // FIPS 180-2, appendix B.1
    CHECK(hex(hash.data(), hash.size()) ==
          "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
}

TEST_CASE("an Ed25519 key and signature are the published ones") {
    REQUIRE(sodium_init() >= 0);
    // RFC 8032, section 7.1, test 2
    const auto seed = unhex<32>("4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb");
    std::array<unsigned char, crypto_sign_PUBLICKEYBYTES> open_key{};
    std::array<unsigned char, crypto_sign_SECRETKEYBYTES> secret_key{};
    crypto_sign_seed_keypair(open_key.data(), secret_key.data(), seed.data());
    CHECK(hex(open_key.data(), open_key.size()) ==
          "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c");

    const unsigned char message = 0x72;
    std::array<unsigned char, crypto_sign_BYTES> signature{};
    crypto_sign_detached(signature.data(), nullptr, &message, 1, secret_key.data());
    CHECK(hex(signature.data(), signature.size()) ==
          "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da"
          "085ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00");
    CHECK(crypto_sign_verify_detached(signature.data(), &message, 1, open_key.data()) == 0);
    signature[0] ^= 1U;
    CHECK(crypto_sign_verify_detached(signature.data(), &message, 1, open_key.data()) != 0);
}

TEST_CASE("the machine gives random numbers, and not the same ones twice") {
    std::random_device device;
    std::vector<unsigned> first(8);
    std::vector<unsigned> second(8);
    for (auto& number : first) number = device();
    for (auto& number : second) number = device();
    CHECK(first != second);
}

TEST_CASE("SQLite keeps strict tables, searches text and takes JSON apart") {
    SQLite::Database db(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    db.exec("create table kept (number integer not null) strict");
    CHECK_THROWS_AS(db.exec("insert into kept values ('twelve')"), SQLite::Exception);
    db.exec("create virtual table words using fts5(said)");
    db.exec("insert into words values ('the board by the gutter is soft')");
    CHECK(first_column(db, "select count(*) from words where words match 'gutter'") == "1");
    CHECK(first_column(db, R"(select '{"air_c":12.5}' ->> 'air_c')") == "12.5");
    CHECK(sqlite3_threadsafe() != 0);
}

TEST_CASE("what the book switches on for itself can be switched on") {
    SQLite::Database db(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    for (const std::string name : {"foreign_keys", "recursive_triggers", "secure_delete"}) {
        INFO(name);
        db.exec("pragma " + name + " = on");
        CHECK(first_column(db, "pragma " + name) == "1");
    }
}

TEST_CASE("a whole database can be taken as bytes and opened again from them") {
    SQLite::Database db(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    db.exec("create table kept (number integer not null) strict; insert into kept values (42)");
    sqlite3_int64 size = 0;
    unsigned char* bytes = sqlite3_serialize(db.getHandle(), "main", &size, 0);
    REQUIRE(bytes != nullptr);
    SQLite::Database again(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    REQUIRE(sqlite3_deserialize(again.getHandle(), "main", bytes, size, size,
                                SQLITE_DESERIALIZE_FREEONCLOSE) == SQLITE_OK);
    CHECK(first_column(again, "select number from kept") == "42");
}
