// Where a device keeps its secret key: beside the book, in a file only its owner may read; or wherever a phone wants it.
//
// A book remembers the device it was last written on and a nonce made together with that device's key. When key and nonce
// are not there (a restored phone, a book copied to another machine), a new key is made and the old chain is never gone
// on with: two machines writing under one name would look like forgery.
// Promises: a key is saved for good before anything is signed with it.
// Does not: encrypt the device's key. Who can read the owner's files can sign as this device, though not as a person who has a
//   PIN; the first thing a lost phone needs is revoking.
#pragma once

#include "entry/sign.h"

#include <optional>

namespace undersheet::book {

struct Key {
    std::string device = {};  // entry::device_name of the public half
    std::string install = {}; // 32 hexadecimal digits, also in the book
    entry::Seed seed = {};

    Key() = default;
    Key(const Key&) = default;
    Key& operator=(const Key&) = default;
    ~Key(); // wipes the seed
};

class KeyStore {
public:
    KeyStore() = default;
    KeyStore(const KeyStore&) = delete;
    KeyStore& operator=(const KeyStore&) = delete;
    virtual ~KeyStore() = default;

    [[nodiscard]] virtual Result<std::optional<Key>>
    load(const std::string& device) = 0; // nothing when it is not here
    [[nodiscard]] virtual Done save(const Key& key) = 0;
    // A person's own key on that device, as pins.h locks it.
    [[nodiscard]] virtual Result<std::optional<std::string>> load_locked(const std::string& device,
                                                                         const std::string& person) = 0;
    [[nodiscard]] virtual Done save_locked(const std::string& device, const std::string& person,
                                           std::string_view text) = 0;
};

// "<book>.<device>.key", mode 0600, four lines:
//   undersheet.key.1
//   device <32 hexadecimal digits>
//   install <32 hexadecimal digits>
//   secret <64 hexadecimal digits>     the 32-byte Ed25519 seed of RFC 8032
// Beside it "<book>.<device>.<person>.pin" for each person who has a PIN here.
class KeyFiles : public KeyStore {
public:
    explicit KeyFiles(std::string book_path) : book_path_(std::move(book_path)) {}
    [[nodiscard]] Result<std::optional<Key>> load(const std::string& device) override;
    [[nodiscard]] Done save(const Key& key) override;
    [[nodiscard]] Result<std::optional<std::string>> load_locked(const std::string& device,
                                                                 const std::string& person) override;
    [[nodiscard]] Done save_locked(const std::string& device, const std::string& person,
                                   std::string_view text) override;
    [[nodiscard]] std::string file_of(const std::string& device) const;
    [[nodiscard]] std::string pin_file_of(const std::string& device, const std::string& person) const;

private:
    std::string book_path_;
};

} // namespace undersheet::book
