#include "book/keys.h"

#include "base/text.h"
#include "book/files.h"
#include "entry/names.h"

#include <algorithm>
#include <sodium.h>

namespace undersheet::book {
namespace {

constexpr std::string_view kKeysForm = "undersheet.key.1";
constexpr std::size_t kMostBytes = 1000;

Fault unusable(const std::string& file) {
    return {Code::key_unusable, "this is no key file of ours", file,
            "put the right one back, or move it away to go on as a new device"};
}

std::string written(const Key& key) {
    std::string text(kKeysForm);
    text.append("\ndevice ").append(key.device).append("\ninstall ").append(key.install);
    return text.append("\nsecret ").append(hex(key.seed)).append("\n");
}

// What stands behind `name` in its line; empty when the line is another one.
std::string_view value_of(std::string_view line, std::string_view name) {
    return line.starts_with(name) ? line.substr(name.size()) : std::string_view();
}

std::optional<Key> read_key(std::string_view text) {
    const auto lines = split(text, '\n');
    if (lines.size() != 5 || lines[0] != kKeysForm || !lines[4].empty()) return std::nullopt;
    Key key;
    key.device = value_of(lines[1], "device ");
    key.install = value_of(lines[2], "install ");
    auto secret = unhex(value_of(lines[3], "secret "));
    if (!entry::is_hex(key.install, 32) || !secret || secret->size() != key.seed.size()) return std::nullopt;
    std::copy(secret->begin(), secret->end(), key.seed.begin());
    sodium_memzero(secret->data(), secret->size());
    if (entry::signer_from(key.seed)->device() != key.device) return std::nullopt;
    return key;
}

} // namespace

Key::~Key() { sodium_memzero(seed.data(), seed.size()); }

std::string KeyFiles::file_of(const std::string& device) const { return book_path_ + "." + device + ".key"; }

Result<std::optional<Key>> KeyFiles::load(const std::string& device) {
    const std::string file = file_of(device);
    auto text = read_whole(file, kMostBytes);
    if (!text && text.fault().code == Code::book_missing) return std::optional<Key>();
    if (!text) return Fault{Code::key_unusable, "this device's key cannot be read", file, "let it be read"};
    auto key = read_key(*text);
    sodium_memzero(text->data(), text->size());
    if (!key || key->device != device) return unusable(file);
    return key;
}

std::string KeyFiles::pin_file_of(const std::string& device, const std::string& person) const {
    return book_path_ + "." + device + "." + person + ".pin";
}

Result<std::optional<std::string>> KeyFiles::load_locked(const std::string& device,
                                                         const std::string& person) {
    const std::string file = pin_file_of(device, person);
    auto text = read_whole(file, kMostBytes);
    if (!text && text.fault().code == Code::book_missing) return std::optional<std::string>();
    if (!text) return Fault{Code::key_unusable, "a person's own key cannot be read", file, "let it be read"};
    return std::optional<std::string>(std::move(*text));
}

Done KeyFiles::save_locked(const std::string& device, const std::string& person, std::string_view text) {
    return write_durably(pin_file_of(device, person), text, Readers::owner);
}

Done KeyFiles::save(const Key& key) {
    std::string text = written(key);
    auto done = write_durably(file_of(key.device), text, Readers::owner);
    sodium_memzero(text.data(), text.size());
    return done;
}

} // namespace undersheet::book
