// What a one-line command costs: open the book, fold and judge the job, answer; against opening the book and naming its jobs.
// UNDERSHEET_BENCH_BOOK names the book; build/demo/demo.book is what the goal speaks of. Prints its time besides the ratio,
// since the goal (under 50 ms) is a time; believe it only on a quiet machine.
#include "tests/bench/cases.h"

#include "desk/desk.h"

#include <cstdio>
#include <cstdlib>
#include <string>

namespace undersheet::bench {
namespace {

std::string book_file() {
    const char* named = std::getenv("UNDERSHEET_BENCH_BOOK");
    return named == nullptr ? "build/demo/demo.book" : named;
}

// The kinds of answer: everything judged, or only the list of jobs. False when there is no such book.
bool answer_stages() {
    auto desk = desk::Desk::open({book_file(), {}});
    return desk && desk->stages({}).ok();
}

bool answer_jobs() {
    auto desk = desk::Desk::open({book_file(), {}});
    return desk && desk->jobs().ok();
}

} // namespace

Ratios one_command() {
    if (!answer_stages() || !answer_jobs()) {
        std::fprintf(stderr, "one_command: no book at %s; run fixtures/demo.sh first\n", book_file().c_str());
        return {};
    }
    const auto stages = [] { keep(answer_stages()); };
    const auto jobs = [] { keep(answer_jobs()); };
    auto timed = stages;
    std::printf("one_command: stages took %.1f ms, once, inside the process\n", seconds_of(timed) * 1000);
    return ratio_of(stages, jobs);
}

} // namespace undersheet::bench
