// Does one thing hold by itself, whoever gave it to us? An entry, a key, a personal value, a text, a photograph.
//
// Promises: verify, take and salvage all ask here, so that none of them believes what another would not. Every answer is a
//   sentence without the file's name.
// Does not: look at what stands between entries (entry/order.h).
// Limits: 64 KiB a personal value, 16 MiB a text, 32 MiB a photograph.
#pragma once

#include "entry/compose.h"

#include <map>

namespace undersheet::book {

inline constexpr std::size_t kMostTextBytes = 16U << 20U;

using KeysByDevice = std::map<std::string, entry::PublicKey>;

// The strict form, and the name that belongs to the bytes.
[[nodiscard]] Result<entry::Entry> read_named(const entry::Hash& name, std::string_view body,
                                              const entry::Signature& signature);
// The key of its device is there, and the signature is that key's.
[[nodiscard]] Done check_signed(const entry::Entry& entry, const KeysByDevice& keys);
// Both.
[[nodiscard]] Result<entry::Entry> admit_entry(const entry::Hash& name, std::string_view body,
                                               const entry::Signature& signature, const KeysByDevice& keys);

[[nodiscard]] Result<entry::PublicKey> admit_key(std::string_view device, std::string_view spki);
// Whether any entry names it is for who has the entries.
[[nodiscard]] Result<entry::Secret> admit_secret(const entry::Hash& cid, std::string_view salt,
                                                 std::string value);
[[nodiscard]] Done check_text(const entry::Hash& hash, std::string_view body);
[[nodiscard]] Done check_photo(const entry::Hash& hash, std::string_view bytes);

} // namespace undersheet::book
