// A person's own key on one device, locked with a PIN: what stands behind the signature that says more than "this phone".
//
// Written form ("undersheet.pin.1"), five lines:
//   undersheet.pin.1
//   person <p and 10 hexadecimal digits>
//   key <64 hexadecimal digits>               the public half
//   argon2id <passes> <KiB> <32 digits: salt>
//   secret <48 digits: nonce><96 digits>      the seed, sealed by XSalsa20-Poly1305 under what Argon2id (RFC 9106) makes of the PIN
// Promises: who has the file and not the PIN can only try PINs, each at the price of one Argon2id. Six digits delay such a
//   search, they do not stop it: a lost phone is to be revoked all the same.
// Does not: count wrong tries, nor keep anything unlocked.
#pragma once

#include "entry/sign.h"
#include "entry/world.h"

#include <memory>

namespace undersheet::book {

constexpr std::size_t kFewestInPin = 6, kMostInPin = 64; // characters

// A fault (pin_wrong) where it is too short or too long, or no plain text.
[[nodiscard]] Done check_pin(std::string_view pin);

// The file of a new key, or of the one given.
[[nodiscard]] Result<std::string> locked(const entry::Seed& seed, std::string_view person,
                                         std::string_view pin, entry::World& world);
// The seed out of such a file; pin_wrong, or key_unusable where the file is not ours.
[[nodiscard]] Result<entry::Seed> unlocked(std::string_view file, std::string_view person,
                                           std::string_view pin);

} // namespace undersheet::book
