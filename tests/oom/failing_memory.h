// Memory that runs out on purpose: the operator new of this program, and the memory of SQLite, each refuse on request.
//
// Only this program has them. Nothing is refused until begin() and after end().
#pragma once

#include <cstdint>

namespace undersheet::oom {

enum class Whose { ours, sqlite }; // operator new; what SQLite asks for

struct Plan {
    Whose whose = Whose::ours;
    std::int64_t at = 0;   // the number of the request that is refused, 1 for the first; 0 refuses nothing
    bool for_good = false; // and every one after it
};

// Puts the refusing memory under SQLite; once, before SQLite is used.
void set_up();
void begin(const Plan& plan);
// How many requests there were since begin().
std::int64_t end();

} // namespace undersheet::oom
