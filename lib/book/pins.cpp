#include "book/pins.h"

#include "base/text.h"

#include <algorithm>
#include <sodium.h>

namespace undersheet::book {
namespace {

using entry::Seed;

constexpr std::string_view kPinsForm = "undersheet.pin.1";
// What libsodium advises where a person waits: two passes over 64 MiB.
constexpr std::uint64_t kPasses = crypto_pwhash_OPSLIMIT_INTERACTIVE;
constexpr std::uint64_t kKib = crypto_pwhash_MEMLIMIT_INTERACTIVE / 1024;
// No file may make this machine work for minutes, or run out of memory.
constexpr std::uint64_t kMostPasses = 16, kMostKib = 1024UL * 1024UL;

using LockSalt = std::array<std::uint8_t, crypto_pwhash_SALTBYTES>;
using LockKey = std::array<std::uint8_t, crypto_secretbox_KEYBYTES>;
using Nonce = std::array<std::uint8_t, crypto_secretbox_NONCEBYTES>;
using Sealed = std::array<std::uint8_t, crypto_secretbox_MACBYTES + std::tuple_size_v<Seed>>;

struct Lock {
    std::uint64_t passes = kPasses, kib = kKib;
    LockSalt salt = {};
};

Fault unusable() {
    return {Code::key_unusable,
            "the file that a PIN locks is none of ours",
            {},
            "set the PIN anew: undersheet pin --forgotten WHY"};
}

Result<LockKey> key_of(const Lock& lock, std::string_view pin) {
    LockKey key{};
    const int failed =
        crypto_pwhash(key.data(), key.size(), pin.data(), pin.size(), lock.salt.data(), lock.passes,
                      static_cast<std::size_t>(lock.kib) * 1024, crypto_pwhash_ALG_ARGON2ID13);
    if (failed != 0) return Fault{Code::key_unusable, "there is not enough memory to unlock a PIN"};
    return key;
}

template <std::size_t Bytes>
bool take_hex(std::string_view digits, std::array<std::uint8_t, Bytes>& into) {
    const auto bytes = unhex(digits);
    if (!bytes || bytes->size() != Bytes) return false;
    std::copy(bytes->begin(), bytes->end(), into.begin());
    return true;
}

bool take_count(std::string_view digits, std::uint64_t most, std::uint64_t& into) {
    constexpr std::size_t kMostDigits = 9;
    if (digits.empty() || digits.size() > kMostDigits) return false;
    if (!std::all_of(digits.begin(), digits.end(), [](char c) { return c >= '0' && c <= '9'; })) return false;
    into = std::stoull(std::string(digits));
    return into >= 1 && into <= most;
}

struct PinFile {
    std::string person = {};
    entry::PublicKey key = {};
    Lock lock = {};
    Nonce nonce = {};
    Sealed sealed = {};
};

std::optional<PinFile> read_pin_file(std::string_view text) {
    const auto lines = split(text, '\n');
    if (lines.size() != 6 || lines[0] != kPinsForm || !lines[5].empty()) return std::nullopt;
    const auto lock = split(lines[3], ' ');
    PinFile file;
    if (!lines[1].starts_with("person ") || !lines[2].starts_with("key ") || lock.size() != 4 ||
        lock[0] != "argon2id" || !lines[4].starts_with("secret "))
        return std::nullopt;
    file.person = lines[1].substr(7);
    const std::string_view secret = std::string_view(lines[4]).substr(7);
    const bool is_read = take_hex(std::string_view(lines[2]).substr(4), file.key) &&
                         take_count(lock[1], kMostPasses, file.lock.passes) &&
                         take_count(lock[2], kMostKib, file.lock.kib) && take_hex(lock[3], file.lock.salt) &&
                         take_hex(secret.substr(0, 2 * file.nonce.size()), file.nonce) &&
                         take_hex(secret.substr(std::min(secret.size(), 2 * file.nonce.size())), file.sealed);
    if (!is_read) return std::nullopt;
    return file;
}

} // namespace

Done check_pin(std::string_view pin) {
    if (!is_utf8(pin) || has_control_characters(pin))
        return Fault{Code::pin_wrong, "a PIN is plain text", "PIN", "digits are best typed on a roof"};
    if (pin.size() >= kFewestInPin && pin.size() <= kMostInPin) return {};
    return Fault{Code::pin_wrong,
                 pin.size() < kFewestInPin ? "this PIN is too short" : "this PIN is too long", "PIN",
                 "take " + std::to_string(kFewestInPin) + " to " + std::to_string(kMostInPin) +
                     " characters; digits are best typed on a roof"};
}

Result<std::string> locked(const Seed& seed, std::string_view person, std::string_view pin,
                           entry::World& world) {
    Lock lock;
    Nonce nonce{};
    Sealed sealed{};
    world.random(lock.salt);
    world.random(nonce);
    auto key = key_of(lock, pin);
    if (!key) return key.fault();
    crypto_secretbox_easy(sealed.data(), seed.data(), seed.size(), nonce.data(), key->data());
    sodium_memzero(key->data(), key->size());
    std::string text(kPinsForm);
    text.append("\nperson ").append(person);
    text.append("\nkey ").append(hex(entry::signer_from(seed)->public_key()));
    text.append("\nargon2id " + std::to_string(lock.passes) + " " + std::to_string(lock.kib) + " ");
    text.append(hex(lock.salt)).append("\nsecret ").append(hex(nonce)).append(hex(sealed));
    return text.append("\n");
}

Result<Seed> unlocked(std::string_view file, std::string_view person, std::string_view pin) {
    const auto read = read_pin_file(file);
    if (!read || read->person != person) return unusable();
    auto key = key_of(read->lock, pin);
    if (!key) return key.fault();
    Seed seed{};
    const bool is_open = crypto_secretbox_open_easy(seed.data(), read->sealed.data(), read->sealed.size(),
                                                    read->nonce.data(), key->data()) == 0;
    sodium_memzero(key->data(), key->size());
    if (!is_open)
        return Fault{Code::pin_wrong, "this is not the PIN", "PIN",
                     "try again; if it is forgotten: undersheet pin --forgotten WHY"};
    if (entry::signer_from(seed)->public_key() != read->key) return unusable();
    return seed;
}

} // namespace undersheet::book
