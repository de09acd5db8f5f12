#include "entry/sign.h"

#include "base/text.h"

#include <algorithm>
#include <sodium.h>

namespace undersheet::entry {
namespace {

// SEQUENCE { SEQUENCE { OID 1.3.101.112 } BIT STRING }, RFC 8410 section 4.
constexpr std::string_view kSpkiPrefix("\x30\x2a\x30\x05\x06\x03\x2b\x65\x70\x03\x21\x00", 12);

constexpr std::string_view kOwnForm = "undersheet.asig.1\n";
// Where asig stands: members ascend, so akey and asig come first, and both have one length.
constexpr std::size_t kOwnAt = std::string_view("{\"akey\":\"\",").size() + 64;
constexpr std::size_t kOwnBytes = std::string_view("\"asig\":\"\",").size() + 128;

const unsigned char* unsigned_bytes(std::string_view text) {
    return reinterpret_cast<const unsigned char*>(text.data());
}

class SeedSigner : public Signer {
public:
    explicit SeedSigner(const Seed& seed) {
        crypto_sign_seed_keypair(public_.data(), secret_.data(), seed.data());
    }
    ~SeedSigner() override { sodium_memzero(secret_.data(), secret_.size()); }

    [[nodiscard]] PublicKey public_key() const override { return public_; }
    [[nodiscard]] Result<Signature> sign(std::string_view bytes) const override {
        Signature signature{};
        crypto_sign_detached(signature.data(), nullptr, unsigned_bytes(bytes), bytes.size(), secret_.data());
        return signature;
    }

private:
    PublicKey public_{};
    std::array<std::uint8_t, crypto_sign_SECRETKEYBYTES> secret_{};
};

Fault wrong(const Entry& entry, std::string what) {
    return {Code::signature_wrong, std::move(what), "entry " + short_name(entry.hash)};
}

} // namespace

std::string spki_of(const PublicKey& key) { return std::string(kSpkiPrefix).append(key.begin(), key.end()); }

Result<PublicKey> parse_spki(std::string_view der) {
    PublicKey key{};
    if (der.size() != kSpkiPrefix.size() + key.size() || !der.starts_with(kSpkiPrefix)) {
        return Fault{Code::key_unusable, "this is no Ed25519 public key"};
    }
    std::copy(der.begin() + static_cast<std::ptrdiff_t>(kSpkiPrefix.size()), der.end(), key.begin());
    return key;
}

std::string device_name(const PublicKey& key) {
    const Hash hash = sha256(spki_of(key));
    return hex(std::span(hash).first(16));
}

std::string own_text(std::string_view body) {
    std::string text(kOwnForm);
    if (body.size() < kOwnAt + kOwnBytes || body.substr(kOwnAt, 6) != "\"asig\"") return text.append(body);
    return text.append(body.substr(0, kOwnAt)).append(body.substr(kOwnAt + kOwnBytes));
}

std::unique_ptr<Signer> signer_from(const Seed& seed) { return std::make_unique<SeedSigner>(seed); }

bool is_signed(std::string_view bytes, const Signature& signature, const PublicKey& key) {
    return crypto_sign_verify_detached(signature.data(), unsigned_bytes(bytes), bytes.size(), key.data()) ==
           0;
}

Done verify(const Entry& entry, const PublicKey& key) {
    if (sha256(entry.body) != entry.hash) return wrong(entry, "its name does not belong to its bytes");
    if (device_name(key) != entry.device) return wrong(entry, "it names a device that has another key");
    if (!is_signed(entry.body, entry.signature, key)) return wrong(entry, "its signature is wrong");
    if (entry.own_key && !is_signed(own_text(entry.body), entry.own_signature, *entry.own_key))
        return wrong(entry, "the person's own signature is wrong");
    return {};
}

} // namespace undersheet::entry
