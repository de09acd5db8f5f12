// A world for tests: a clock that stands until it is moved, and chance that repeats itself for the same seed.
#pragma once

#include "entry/world.h"

#include <random>

namespace undersheet {

class FixedWorld : public entry::World {
public:
    explicit FixedWorld(std::uint64_t seed = 1, std::string_view clock = "2026-06-11T08:00:00+01:00")
        : chance_(seed), clock_(*entry::parse_time(clock)) {}

    void set_clock(std::string_view text) { clock_ = *entry::parse_time(text); }
    void forward(std::int64_t seconds) {
        clock_ = entry::time_at(clock_.unix_s + seconds, clock_.offset_min);
        mono_millis_ += seconds * 1000;
    }
    void set_simulated(bool simulated) { simulated_ = simulated; }

    [[nodiscard]] entry::Time clock() override { return clock_; }
    [[nodiscard]] bool is_simulated() override { return simulated_; }
    [[nodiscard]] std::int64_t mono_millis() override { return ++mono_millis_; }
    [[nodiscard]] std::string boot() override { return "00000000000000b0"; }
    void random(std::span<std::uint8_t> bytes) override {
        for (auto& byte : bytes) byte = static_cast<std::uint8_t>(chance_());
    }

private:
    std::mt19937_64 chance_;
    entry::Time clock_;
    bool simulated_ = false;
    std::int64_t mono_millis_ = 0;
};

} // namespace undersheet
