// The people's own keys on this device: kept beside the device's key, unlocked for one act of writing.
#include "book/pins.h"
#include "book/session.h"

#include <sodium.h>
#include <stdexcept>

namespace undersheet::book {
namespace {

// Wiped when it goes.
struct Secret {
    entry::Seed seed = {};
    Secret() = default;
    Secret(const Secret&) = delete;
    Secret& operator=(const Secret&) = delete;
    ~Secret() { sodium_memzero(seed.data(), seed.size()); }
};

} // namespace

std::optional<std::string> Session::pin_file(const std::string& person) {
    if (device_.empty()) return std::nullopt;
    return value_or_trouble(around_.keys.load_locked(device_, person));
}

bool Session::has_pin(const std::string& person) { return pin_file(person).has_value(); }

std::unique_ptr<entry::Signer> Session::unlock(const std::string& person, std::string_view pin) {
    const auto file = pin_file(person);
    if (!file) throw Trouble{{Code::pin_wrong, "no PIN is set on this device", "PIN", "undersheet pin"}};
    Secret secret;
    secret.seed = value_or_trouble(unlocked(*file, person, pin));
    return entry::signer_from(secret.seed);
}

entry::PublicKey Session::lock(const std::string& person, const NewPin& pin) {
    if (!action_) throw std::logic_error("a PIN is set within an action");
    done_or_trouble(check_pin(pin.pin));
    find_key(); // the file stands under this device's name
    const auto file = pin_file(person);
    Secret secret;
    if (file && !pin.forgotten)
        secret.seed = value_or_trouble(unlocked(*file, person, pin.old_pin));
    else
        around_.world.random(secret.seed);
    const auto text = value_or_trouble(locked(secret.seed, person, pin.pin, around_.world));
    done_or_trouble(around_.keys.save_locked(device_, person, text));
    return entry::signer_from(secret.seed)->public_key();
}

} // namespace undersheet::book
