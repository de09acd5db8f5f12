// SHA-256 names: of an entry's bytes, of a photograph, of a method file, of a personal value with its salt.
//
// Promises: FIPS 180-4 as libsodium computes it; compares and orders as plain bytes.
#pragma once

#include "base/result.h"

#include <array>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>

namespace undersheet::entry {

using Hash = std::array<std::uint8_t, 32>;

[[nodiscard]] Hash sha256(std::string_view bytes);
[[nodiscard]] std::string hash_text(const Hash& hash);  // 64 hexadecimal digits
[[nodiscard]] std::string short_name(const Hash& hash); // the first 8: how an entry is named to people
[[nodiscard]] Result<Hash> parse_hash(std::string_view text);
// SHA-256 over the raw 32-byte hashes, in the order given.
[[nodiscard]] Hash digest_of(std::span<const Hash> hashes);

} // namespace undersheet::entry
