#include "book/machine.h"

#include "base/text.h"

#include <array>
#include <chrono>
#include <ctime>
#include <sodium.h>
#include <stdexcept>

namespace undersheet::book {
namespace {

int local_offset_min(std::time_t now) {
    std::tm local{};
    if (::localtime_r(&now, &local) == nullptr) return 0;
    return static_cast<int>(local.tm_gmtoff / 60);
}

class Machine : public entry::World {
public:
    explicit Machine(std::optional<entry::Time> set_by_hand) : set_by_hand_(std::move(set_by_hand)) {
        if (sodium_init() < 0) throw std::logic_error("the system has no random numbers");
        std::array<std::uint8_t, 8> bytes{};
        randombytes_buf(bytes.data(), bytes.size());
        boot_ = hex(bytes);
    }

    [[nodiscard]] entry::Time clock() override {
        if (set_by_hand_) return *set_by_hand_;
        const std::time_t now = std::chrono::system_clock::to_time_t(std::chrono::system_clock::now());
        return entry::time_at(now, local_offset_min(now));
    }
    [[nodiscard]] bool is_simulated() override { return set_by_hand_.has_value(); }
    [[nodiscard]] std::int64_t mono_millis() override {
        return std::chrono::duration_cast<std::chrono::milliseconds>(std::chrono::steady_clock::now() -
                                                                     started_)
            .count();
    }
    [[nodiscard]] std::string boot() override { return boot_; }
    void random(std::span<std::uint8_t> bytes) override { randombytes_buf(bytes.data(), bytes.size()); }

private:
    std::optional<entry::Time> set_by_hand_;
    std::chrono::steady_clock::time_point started_ = std::chrono::steady_clock::now();
    std::string boot_;
};

} // namespace

std::unique_ptr<entry::World> this_machine(std::optional<entry::Time> clock_set_by_hand) {
    return std::make_unique<Machine>(std::move(clock_set_by_hand));
}

} // namespace undersheet::book
