#include "entry/compose.h"

#include "entry/json.h"
#include "tests/support/device.h"

#include <catch2/catch.hpp>
#include <functional>

using namespace undersheet;
using namespace undersheet::entry;

namespace {

Draft site_draft() {
    Draft draft = air_draft();
    draft.kind = "site";
    draft.data = Value().set("height_m", 3);
    draft.personal = {{"customer", "Mrs Ada Pell"}, {"phone", "555 0147"}};
    draft.raw.set("phone", "555-0147").set("height_m", "3 m");
    return draft;
}

} // namespace

TEST_CASE("the first entry of a device stands on nothing") {
    Device device(1);
    const Entry first = device.write(air_draft());
    CHECK(first.seq == 1);
    CHECK(first.dctr == 1);
    CHECK(first.lam == 1);
    CHECK_FALSE(first.prev.has_value());
    CHECK_FALSE(first.dprev.has_value());
    CHECK(first.device == device.signer->device());
    CHECK(first.body.find("\"prev\"") == std::string::npos);
}

TEST_CASE("each further entry names the one before") {
    Device device(1);
    const Entry first = device.write(air_draft());
    const Entry second = device.write(air_draft());
    CHECK(second.seq == 2);
    CHECK(*second.prev == first.hash);
    CHECK(*second.dprev == first.hash);
    CHECK(second.lam == 2);
    CHECK(second.mono_millis > first.mono_millis);
    CHECK(second.id != first.id);
}

TEST_CASE("the lamport number is one more than the greatest that was known") {
    Device one(1);
    Device two(2);
    for (int i = 0; i < 4; ++i) one.write(air_draft());
    const Entry theirs = one.write(air_draft());
    two.write(air_draft());
    two.sees({theirs});
    const Entry ours = two.write(air_draft());
    CHECK(ours.lam == theirs.lam + 1);
    CHECK(ours.seen == std::vector<Hash>{theirs.hash});
}

TEST_CASE("a personal value stands in no body, and neither does what was typed for it") {
    Device device(1);
    auto composed = compose(site_draft(), {}, device.world, *device.signer);
    REQUIRE(composed.ok());
    const Entry& entry = composed->entry;
    CHECK(entry.body.find("Pell") == std::string::npos);
    CHECK(entry.body.find("555 0147") == std::string::npos);
    CHECK(entry.body.find("555-0147") == std::string::npos);
    CHECK(entry.raw.text_of("height_m") == "3 m");
    CHECK(entry.field_text("customer") == "Mrs Ada Pell");
    REQUIRE(composed->secrets.size() == 2);
    for (const Secret& secret : composed->secrets) CHECK(commitment(secret.salt, secret.value) == secret.cid);
    CHECK(*commitment_of(*entry.data.find("customer")) == composed->secrets[0].cid);
}

TEST_CASE("the same personal value twice gives two commitments that do not resemble each other") {
    Device device(1);
    auto first = compose(site_draft(), {}, device.world, *device.signer);
    auto second = compose(site_draft(), {}, device.world, *device.signer);
    CHECK(first->secrets[0].cid != second->secrets[0].cid);
}

// printf with 32 zero bytes and "Jo" through sha256sum gave the figure.
TEST_CASE("a commitment is the SHA-256 of salt and value") {
    CHECK(commitment(Salt{}, "Jo") == sha256(std::string(32, '\0') + "Jo"));
    CHECK(hash_text(commitment(Salt{}, "Jo")) ==
          "f8c64b3c48fcd798e369eb4de328866e5b201773caf01eef8c843c77d55664bf");
}

TEST_CASE("an entry written under a clock set by hand says so") {
    Device device(1);
    CHECK_FALSE(device.write(air_draft()).simulated);
    device.world.set_simulated(true);
    const Entry entry = device.write(air_draft());
    CHECK(entry.simulated);
    CHECK(entry.body.find("\"simulated\":true") != std::string::npos);
}

TEST_CASE("an entry of a supplement names the entry that opened it, under the signature") {
    Device device(1);
    CHECK_FALSE(device.write(air_draft()).supplement.has_value());
    Draft draft = air_draft();
    draft.supplement = sha256("opened");
    const Entry entry = device.write(draft);
    CHECK(entry.supplement == sha256("opened"));
    CHECK(entry.body.find("\"supplement\":\"" + hash_text(sha256("opened")) + "\"") != std::string::npos);
    CHECK(says_the_same(draft, entry));
    draft.supplement.reset();
    CHECK_FALSE(says_the_same(draft, entry));
}

TEST_CASE("a draft that does not fit the written form is refused and nothing is signed") {
    Device device(1);
    const auto refused = [&](Draft draft) { return !compose(draft, {}, device.world, *device.signer).ok(); };
    Draft draft = air_draft();
    draft.kind = "Air";
    CHECK(refused(draft));
    draft = air_draft();
    draft.place = "nowhere at all";
    CHECK(refused(draft));
    draft = air_draft();
    draft.job = "";
    CHECK(refused(draft));
    draft = air_draft();
    draft.data.set("note", "a\tb");
    CHECK(refused(draft));
    draft = air_draft();
    draft.data.set("note", std::string("\xFF"));
    CHECK(refused(draft));
    draft = air_draft();
    draft.data.set("note", std::string(66'000, 'x'));
    CHECK(refused(draft));
    draft = air_draft();
    draft.personal["name"] = std::string("\xFF");
    CHECK(refused(draft));
    draft = air_draft();
    draft.personal["name"] = std::string(65'537, 'x');
    CHECK(refused(draft));
    draft = air_draft();
    draft.personal["name"] = "Ada\tPell";
    CHECK(refused(draft));
    draft = air_draft();
    draft.raw = "13,0";
    CHECK(refused(draft));
}

TEST_CASE("a draft says the same as the entry made from it, and another draft does not") {
    Device device(1);
    const Draft draft = site_draft();
    Entry entry = device.write(draft);
    CHECK(says_the_same(draft, entry));
    Draft other = draft;
    other.data.set("height_m", 4);
    CHECK_FALSE(says_the_same(other, entry));
    other = draft;
    other.personal["customer"] = "Mr Ada Pell";
    CHECK_FALSE(says_the_same(other, entry));
    other = draft;
    other.personal.erase("phone");
    CHECK_FALSE(says_the_same(other, entry));
    other = draft;
    other.part = "deck";
    CHECK_FALSE(says_the_same(other, entry));
    entry.personal.clear(); // erased since
    CHECK(says_the_same(draft, entry));
}

TEST_CASE("a draft that differs in any one thing says something else") {
    Device device(1);
    const Draft draft = site_draft();
    const Entry entry = device.write(draft);
    const auto differs = [&](const std::function<void(Draft&)>& change) {
        Draft other = draft;
        change(other);
        return !says_the_same(other, entry);
    };
    CHECK(differs([](Draft& other) { other.kind = "day"; }));
    CHECK(differs([](Draft& other) { other.job = std::string(32, '0'); }));
    CHECK(differs([](Draft& other) { other.author = "p0123456789"; }));
    CHECK(differs([](Draft& other) { other.place = "AB"; }));
    CHECK(differs([](Draft& other) { other.when = *parse_time("2026-06-11T08:06:00+01:00"); }));
    CHECK(differs([](Draft& other) { other.raw.set("height_m", "3.0 m"); }));
    CHECK(differs([](Draft& other) { other.personal["mail"] = "ada@example.org"; }));
    CHECK_FALSE(differs([](Draft&) {}));
}

namespace {

// A key store that is locked, as a phone's may be.
class Locked : public Signer {
public:
    explicit Locked(const Signer& other) : key_(other.public_key()) {}
    [[nodiscard]] PublicKey public_key() const override { return key_; }
    [[nodiscard]] Result<Signature> sign(std::string_view) const override {
        return Fault{Code::key_unusable, "the key store is locked"};
    }

private:
    PublicKey key_;
};

} // namespace

TEST_CASE("where a key store refuses to sign, the device's or the person's own, nothing is made") {
    Device device(1);
    const Locked locked(*device.signer);
    const auto by_device = compose(air_draft(), {}, device.world, locked);
    REQUIRE_FALSE(by_device.ok());
    CHECK(by_device.fault().detail == "the key store is locked");
    Draft draft = air_draft();
    draft.author = "p0123456789";
    draft.own_hand = &locked;
    const auto by_hand = compose(draft, {}, device.world, *device.signer);
    REQUIRE_FALSE(by_hand.ok());
    CHECK(by_hand.fault().detail == "the key store is locked");
}

TEST_CASE("the same world and the same drafts give the same bytes") {
    Device one(9);
    Device two(9);
    for (int i = 0; i < 5; ++i) CHECK(one.write(site_draft()).body == two.write(site_draft()).body);
}
