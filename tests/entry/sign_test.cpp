#include "entry/sign.h"

#include "base/text.h"
#include "tests/support/device.h"

#include <catch2/catch.hpp>

using namespace undersheet;
using namespace undersheet::entry;

namespace {

template <class Bytes>
Bytes bytes_of(std::string_view digits) {
    const auto raw = unhex(digits);
    Bytes bytes{};
    REQUIRE(raw.has_value());
    REQUIRE(raw->size() == bytes.size());
    std::copy(raw->begin(), raw->end(), bytes.begin());
    return bytes;
}
std::string text_of(std::string_view digits) {
    const auto raw = unhex(digits);
    REQUIRE(raw.has_value());
    return {raw->begin(), raw->end()};
}

struct Vector {
    const char* seed;
    const char* key;
    const char* message;
    const char* signature;
};

// RFC 8032 section 7.1, tests 1, 2, 3 and SHA(abc).
const Vector kVectors[] = {
    {"9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60",
     "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a", "",
     "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9b46bd25bf5f"
     "0595bbe24655141438e7a100b"},
    {"4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb",
     "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c", "72",
     "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da085ac1e43e15996e458f3613d0f11d8c387b2ea"
     "eb4302aeeb00d291612bb0c00"},
    {"c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7",
     "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025", "af82",
     "6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac18ff9b538d16f290ae67f760984dc6594a7c15e"
     "9716ed28dc027beceea1ec40a"},
    {"833fe62409237b9d62ec77587520911e9a759cec1d19755b7da901b96dca3d42",
     "ec172b93ad5e563bf4932c70e1245034c35467ef2efd4d64ebf819683467e2bf",
     "ddaf35a193617abacc417349ae20413112e6fa4e89a97ea20a9eeee64b55d39a2192992a274fc1a836ba3c23a3feebbd454d442"
     "3643ce80e2a9ac94fa54ca49f",
     "dc2a4459e7369633a52b1bf277839a00201009a3efbf3ecb69bea2186c26b58909351fc9ac90b3ecfdfbc7c66431e0303dca179"
     "c138ac17ad9bef1177331a704"},
};

} // namespace

TEST_CASE("keys and signatures are those of RFC 8032 section 7.1") {
    for (const Vector& row : kVectors) {
        INFO(row.seed);
        const auto signer = signer_from(bytes_of<Seed>(row.seed));
        CHECK(signer->public_key() == bytes_of<PublicKey>(row.key));
        const auto signature = signer->sign(text_of(row.message));
        REQUIRE(signature.ok());
        CHECK(*signature == bytes_of<Signature>(row.signature));
        CHECK(is_signed(text_of(row.message), *signature, signer->public_key()));
    }
}

TEST_CASE("a signature does not hold after any one bit of it, of the text or of the key is turned") {
    const auto signer = signer_from(seed_of(1));
    const std::string text = "the sheet lies flat";
    const Signature good = *signer->sign(text);
    for (std::size_t bit = 0; bit < good.size() * 8; ++bit) {
        Signature bad = good;
        bad[bit / 8] = static_cast<std::uint8_t>(bad[bit / 8] ^ (1U << (bit % 8)));
        REQUIRE_FALSE(is_signed(text, bad, signer->public_key()));
    }
    for (std::size_t bit = 0; bit < text.size() * 8; ++bit) {
        std::string bad = text;
        bad[bit / 8] = static_cast<char>(bad[bit / 8] ^ (1 << (bit % 8)));
        REQUIRE_FALSE(is_signed(bad, good, signer->public_key()));
    }
    for (std::size_t bit = 0; bit < 256; ++bit) {
        PublicKey bad = signer->public_key();
        bad[bit / 8] = static_cast<std::uint8_t>(bad[bit / 8] ^ (1U << (bit % 8)));
        REQUIRE_FALSE(is_signed(text, good, bad));
    }
}

// RFC 8032 section 5.1.7 asks for S < L; adding L gives a second signature of the same text unless that is checked.
TEST_CASE("a signature with L added to its second half is refused") {
    const auto signer = signer_from(seed_of(2));
    Signature second = *signer->sign("text");
    const auto order =
        text_of("edd3f55c1a631258d69cf7a2def9de1400000000000000000000000000000010"); // L, little-endian
    unsigned carry = 0;
    for (std::size_t i = 0; i < 32; ++i) {
        const unsigned sum = second[32 + i] + static_cast<unsigned char>(order[i]) + carry;
        second[32 + i] = static_cast<std::uint8_t>(sum);
        carry = sum >> 8U;
    }
    REQUIRE(carry == 0);
    CHECK_FALSE(is_signed("text", second, signer->public_key()));
}

TEST_CASE("a key of all zeros, or of small order, signs nothing") {
    Signature nothing{};
    nothing[0] = 1; // R is the neutral point, S is 0: holds for every text under a key of small order
    PublicKey neutral{};
    neutral[0] = 1;
    CHECK_FALSE(is_signed("any text", nothing, neutral));
    CHECK_FALSE(is_signed("any text", nothing, PublicKey{}));
}

TEST_CASE("a device's name is made from its key as OpenSSL writes it") {
    const PublicKey key = bytes_of<PublicKey>(kVectors[0].key);
    CHECK(spki_of(key) == text_of("302a300506032b6570032100" + std::string(kVectors[0].key)));
    CHECK(*parse_spki(spki_of(key)) == key);
    CHECK(device_name(key) == hash_text(sha256(spki_of(key))).substr(0, 32));
}

TEST_CASE("what is no Ed25519 public key is refused") {
    const std::string good = spki_of(signer_from(seed_of(1))->public_key());
    CHECK(parse_spki(good).ok());
    CHECK(parse_spki(good + "x").fault().code == Code::key_unusable);
    CHECK_FALSE(parse_spki(good.substr(1)).ok());
    CHECK_FALSE(parse_spki("x" + good.substr(1)).ok());
    CHECK_FALSE(parse_spki("").ok());
}

TEST_CASE("an entry verifies under its device's key only") {
    Device one(1);
    Device two(2);
    const Entry entry = one.write(air_draft());
    CHECK(verify(entry, one.signer->public_key()).ok());
    const auto other = verify(entry, two.signer->public_key());
    REQUIRE_FALSE(other.ok());
    CHECK(other.fault().code == Code::signature_wrong);
}

TEST_CASE("an entry whose bytes, name or signature were changed does not verify") {
    Device device(1);
    const Entry good = device.write(air_draft());
    Entry body = good;
    body.body[20] ^= 1;
    Entry hash = good;
    hash.hash[0] ^= 1;
    Entry signature = good;
    signature.signature[0] ^= 1;
    for (const Entry& bad : {body, hash, signature})
        CHECK_FALSE(verify(bad, device.signer->public_key()).ok());
}
