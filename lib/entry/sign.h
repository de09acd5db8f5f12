// Who wrote it: a device is its key, and the device's name is made from the key, so nobody can take another's name.
//
// Promises: Ed25519 (RFC 8032) as libsodium computes it, over the stored bytes of a body and nothing else; a signature of a
//   key of small order, or one written in a second form, does not hold.
// Does not: keep keys, nor say whom to trust. A phone's own keystore can stand behind Signer.
#pragma once

#include "entry/entry.h"

#include <memory>

namespace undersheet::entry {

using Seed = std::array<std::uint8_t, 32>; // the secret half, 32 random bytes

// The key as OpenSSL reads it: SubjectPublicKeyInfo in DER (RFC 8410), 12 fixed bytes and the key.
[[nodiscard]] std::string spki_of(const PublicKey& key);
[[nodiscard]] Result<PublicKey> parse_spki(std::string_view der);
// 32 hexadecimal digits, the first half of SHA-256 over spki_of(key).
[[nodiscard]] std::string device_name(const PublicKey& key);

class Signer {
public:
    Signer() = default;
    Signer(const Signer&) = delete;
    Signer& operator=(const Signer&) = delete;
    virtual ~Signer() = default;

    [[nodiscard]] virtual PublicKey public_key() const = 0;
    [[nodiscard]] virtual Result<Signature> sign(std::string_view bytes) const = 0;
    [[nodiscard]] std::string device() const { return device_name(public_key()); }
};

// A signer that holds its secret in memory and wipes it when it goes.
[[nodiscard]] std::unique_ptr<Signer> signer_from(const Seed& seed);

// What an author's own key signs: "undersheet.asig.1", a newline, and the body without the member asig. It goes into the
// body before the device signs the whole, so neither can be changed without the other.
[[nodiscard]] std::string own_text(std::string_view body);

[[nodiscard]] bool is_signed(std::string_view bytes, const Signature& signature, const PublicKey& key);
// Hash, device name and signature of an entry belong to its bytes and to this key; so does the author's own signature,
// where there is one, to the key it names.
[[nodiscard]] Done verify(const Entry& entry, const PublicKey& key);

} // namespace undersheet::entry
