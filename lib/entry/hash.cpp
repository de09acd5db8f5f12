#include "entry/hash.h"

#include "base/text.h"

#include <algorithm>
#include <sodium.h>

namespace undersheet::entry {

Hash sha256(std::string_view bytes) {
    Hash hash{};
    static_assert(std::tuple_size_v<Hash> == crypto_hash_sha256_BYTES);
    crypto_hash_sha256(hash.data(), reinterpret_cast<const unsigned char*>(bytes.data()), bytes.size());
    return hash;
}

std::string hash_text(const Hash& hash) { return hex(hash); }

std::string short_name(const Hash& hash) { return hex(std::span(hash).first(4)); }

Result<Hash> parse_hash(std::string_view text) {
    const auto bytes = unhex(text);
    Hash hash{};
    if (!bytes || bytes->size() != hash.size()) {
        return Fault{Code::body_malformed,
                     "'" + std::string(text.substr(0, 80)) + "' is no SHA-256 name",
                     {},
                     "64 digits 0-9 and a-f"};
    }
    std::copy(bytes->begin(), bytes->end(), hash.begin());
    return hash;
}

Hash digest_of(std::span<const Hash> hashes) {
    crypto_hash_sha256_state state;
    crypto_hash_sha256_init(&state);
    for (const Hash& hash : hashes) crypto_hash_sha256_update(&state, hash.data(), hash.size());
    Hash digest{};
    crypto_hash_sha256_final(&state, digest.data());
    return digest;
}

} // namespace undersheet::entry
