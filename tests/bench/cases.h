// One case of the benchmark: a name, what is held against what, and the measuring itself.
//
// A case lives in its own file, which defines a function made known in kCases of main.cpp.
#pragma once

#include "tests/bench/ratio.h"

namespace undersheet::bench {

struct Case {
    const char* name;
    const char* a;
    const char* b;
    Ratios (*measure)();
};

// The same work twice: how far from 1 this machine's ratios wander by themselves.
[[nodiscard]] Ratios noise();
// "What may I do now?" on a book, against opening it. No pairs when there is no book.
[[nodiscard]] Ratios one_command();
// An outline whose tapes contradict one another, against the same without a contradiction.
[[nodiscard]] Ratios wrong_tape();
// Verifying 10,000 entries, against reading them.
[[nodiscard]] Ratios verify_many();

} // namespace undersheet::bench
