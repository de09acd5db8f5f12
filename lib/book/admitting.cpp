#include "book/admitting.h"

#include "base/text.h"
#include "book/photos.h"
#include "picture/media.h"

#include <algorithm>

namespace undersheet::book {
namespace {

using entry::Entry;
using entry::Hash;

constexpr std::size_t kMostPersonalBytes = 64U << 10U;

Fault wrong(std::string what) { return {Code::book_damaged, std::move(what)}; }

} // namespace

Result<Entry> read_named(const Hash& name, std::string_view body, const entry::Signature& signature) {
    auto entry = entry::read_entry(body, signature);
    if (entry && entry->hash != name) return wrong("its name does not belong to its bytes");
    return entry;
}

Done check_signed(const Entry& entry, const KeysByDevice& keys) {
    const auto key = keys.find(entry.device);
    if (key == keys.end()) return wrong("the key of its device is missing");
    return entry::verify(entry, key->second);
}

Result<Entry> admit_entry(const Hash& name, std::string_view body, const entry::Signature& signature,
                          const KeysByDevice& keys) {
    auto entry = read_named(name, body, signature);
    if (!entry) return entry;
    if (auto done = check_signed(*entry, keys); !done) return done.fault();
    return entry;
}

Result<entry::PublicKey> admit_key(std::string_view device, std::string_view spki) {
    auto key = entry::parse_spki(spki);
    if (!key || entry::device_name(*key) != device)
        return wrong("the key kept for this device is not its own");
    return key;
}

Result<entry::Secret> admit_secret(const Hash& cid, std::string_view salt, std::string value) {
    entry::Secret secret{cid, {}, std::move(value)};
    if (salt.size() != secret.salt.size() || secret.value.size() > kMostPersonalBytes)
        return wrong("a personal value is not of its size");
    std::copy(salt.begin(), salt.end(), secret.salt.begin());
    if (entry::commitment(secret.salt, secret.value) != cid)
        return wrong("a personal value is not the one that was recorded");
    if (!is_utf8(secret.value) || has_control_characters(secret.value))
        return wrong("a personal value is no plain text");
    return secret;
}

Done check_text(const Hash& hash, std::string_view body) {
    if (body.size() > kMostTextBytes) return wrong("a method in it is larger than 16 MiB");
    if (entry::sha256(body) != hash) return wrong("a method in it is not the one that was kept");
    return {};
}

Done check_photo(const Hash& hash, std::string_view bytes) {
    if (entry::sha256(bytes) != hash) return wrong("a photograph is not the one that was recorded");
    if (bytes.size() > kMostPhotoBytes || (!picture::is_jpeg(bytes) && !picture::is_png(bytes)))
        return wrong("a photograph is no JPEG or PNG of at most 32 MiB");
    return {};
}

} // namespace undersheet::book
