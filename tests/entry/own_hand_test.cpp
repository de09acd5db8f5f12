// A person's own signature inside an entry, beside the device's.
#include "entry/json.h"
#include "tests/support/device.h"

#include "base/text.h"

#include <catch2/catch.hpp>

using namespace undersheet;
using namespace undersheet::entry;

namespace {

Draft signing_draft(const Signer* own) {
    Draft draft = air_draft();
    draft.kind = "sign";
    draft.author = "p0123456789";
    draft.own_hand = own;
    return draft;
}

// The entry with another body, signed by its device as that device would.
Result<Entry> signed_again(const Device& device, const std::string& body) {
    return read_entry(body, *device.signer->sign(body));
}

} // namespace

TEST_CASE("a person's own signature stands in the body and holds over all the rest of it") {
    Device device(1);
    const auto own = signer_from(seed_of(9));
    const Entry entry = device.write(signing_draft(own.get()));
    REQUIRE(entry.own_key.has_value());
    CHECK(*entry.own_key == own->public_key());
    CHECK(verify(entry, device.signer->public_key()).ok());
    const std::string text = own_text(entry.body);
    CHECK(text.starts_with("undersheet.asig.1\n{\"akey\":\"" + hex(own->public_key()) + "\",\"author\":"));
    CHECK(is_signed(text, entry.own_signature, own->public_key()));
}

TEST_CASE("an entry without a person's own signature has none, and its form is as before") {
    Device device(1);
    const Entry entry = device.write(air_draft());
    CHECK(!entry.own_key);
    CHECK(entry.body.find("asig") == std::string::npos);
    CHECK(own_text(entry.body) == "undersheet.asig.1\n" + entry.body);
}

TEST_CASE("who has the device and not the PIN cannot change what a person signed, nor sign for that person") {
    Device device(1);
    const auto own = signer_from(seed_of(9));
    const Entry entry = device.write(signing_draft(own.get()));
    for (const auto& [was, is] : {std::pair{"\"rh_pct\":66", "\"rh_pct\":65"},
                                  std::pair{"\"author\":\"p0123456789\"", "\"author\":\"p0123456780\""},
                                  std::pair{"\"kind\":\"sign\"", "\"kind\":\"tick\""}}) {
        INFO(is);
        const auto changed = signed_again(device, replaced(entry.body, was, is));
        REQUIRE(changed.ok());
        CHECK(!verify(*changed, device.signer->public_key()).ok());
    }
    const auto other = signer_from(seed_of(8));
    const auto forged =
        signed_again(device, replaced(entry.body, hex(own->public_key()), hex(other->public_key())));
    REQUIRE(forged.ok());
    const auto verdict = verify(*forged, device.signer->public_key());
    REQUIRE(!verdict.ok());
    CHECK(verdict.fault().detail == "the person's own signature is wrong");
}

TEST_CASE("a key without a signature, a signature without a key, and one of nobody are refused") {
    Device device(1);
    const auto own = signer_from(seed_of(9));
    const Entry entry = device.write(signing_draft(own.get()));
    const std::string key = "\"akey\":\"" + hex(*entry.own_key) + "\",";
    const std::string signature = "\"asig\":\"" + hex(entry.own_signature) + "\",";
    CHECK(!signed_again(device, replaced(entry.body, key, "")).ok());
    CHECK(!signed_again(device, replaced(entry.body, signature, "")).ok());
    CHECK(signed_again(device, replaced(replaced(entry.body, key, ""), signature, "")).ok());
    CHECK(!signed_again(device, replaced(entry.body, "p0123456789", "")).ok());
    CHECK(
        !signed_again(device, replaced(entry.body, hex(*entry.own_key), hex(*entry.own_key).substr(2))).ok());
}

TEST_CASE("each bit of a person's own signature and of the key beside it matters, even to who can sign as "
          "the device") {
    Device device(1);
    const auto own = signer_from(seed_of(9));
    const Entry entry = device.write(signing_draft(own.get()));
    for (std::size_t bit = 0; bit < 8 * 64; ++bit) {
        Entry changed = entry;
        changed.own_signature[bit / 8] ^= static_cast<std::uint8_t>(1U << (bit % 8));
        CHECK(!verify(changed, device.signer->public_key()).ok());
    }
    for (std::size_t bit = 0; bit < 8 * 32; ++bit) {
        Entry changed = entry;
        (*changed.own_key)[bit / 8] ^= static_cast<std::uint8_t>(1U << (bit % 8));
        CHECK(!verify(changed, device.signer->public_key()).ok());
    }
}
