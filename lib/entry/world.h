// What comes from outside: the machine's clock, a clock that only goes forward, and chance.
//
// Promises: nothing else in the library reads a clock or makes a random number, so a test or a phone can bring its own.
// Does not: say which time an entry is about; that is what its author claims.
// Threads: one world belongs to one thread.
#pragma once

#include "entry/time.h"

#include <cstdint>
#include <span>
#include <string>

namespace undersheet::entry {

class World {
public:
    World() = default;
    World(const World&) = delete;
    World& operator=(const World&) = delete;
    virtual ~World() = default;

    [[nodiscard]] virtual Time clock() = 0;        // the machine's wall clock, with its offset
    [[nodiscard]] virtual bool is_simulated() = 0; // true when that clock was set by hand (tests, demos)
    [[nodiscard]] virtual std::int64_t mono_millis() = 0; // never goes back while the program runs
    [[nodiscard]] virtual std::string boot() = 0; // 16 hexadecimal digits, new at each start of the program
    virtual void random(std::span<std::uint8_t> bytes) = 0;
};

} // namespace undersheet::entry
