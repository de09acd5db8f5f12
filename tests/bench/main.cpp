// undersheet-bench [NAME...]: measures the named cases, or all of them, and prints one line each.
#include "tests/bench/cases.h"

#include <algorithm>
#include <array>
#include <cstdio>
#include <string_view>

namespace {

using namespace undersheet::bench;

constexpr std::array kCases = {
    Case{"noise", "a parse of numbers", "itself", noise},
    Case{"one_command", "stages of the job", "opening the book", one_command},
    Case{"wrong_tape", "an outline with a tape a metre wrong", "the same without it", wrong_tape},
    Case{"verify_many", "verifying 10,000 entries", "reading them", verify_many},
};

bool is_case(std::string_view name) {
    return std::any_of(kCases.begin(), kCases.end(), [&](const Case& one) { return one.name == name; });
}

void measure(const Case& one) {
    const auto ratios = one.measure();
    std::printf("%-16s %s against %s: %.2f (%.2f to %.2f, %zu pairs)\n", one.name, one.a, one.b,
                ratios.median, ratios.min, ratios.max, ratios.pairs);
    std::fflush(stdout);
}

} // namespace

int main(int count, char** words) {
    const auto* const first = words + std::min(count, 1);
    const auto* const last = words + count;
    for (const auto* word = first; word != last; ++word) {
        if (is_case(*word)) continue;
        std::fprintf(stderr, "undersheet-bench: no case \"%s\"; there are:", *word);
        for (const auto& one : kCases) std::fprintf(stderr, " %s", one.name);
        std::fputc('\n', stderr);
        return 2;
    }
    for (const auto& one : kCases)
        if (count < 2 || std::find(first, last, std::string_view(one.name)) != last) measure(one);
}
