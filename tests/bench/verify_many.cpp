// What it costs to verify a book of 10,000 entries (25 jobs of 400), against reading the same entries. Prints its time besides the
// ratio, since the goal (under 3 s) is a time; believe it only on a quiet machine.
#include "tests/bench/cases.h"

#include "book/book.h"
#include "desk/desk.h"
#include "tests/support/fixed_world.h"
#include "tests/support/temp_folder.h"

#include <cstdio>
#include <ctime>
#include <stdexcept>
#include <string>

namespace undersheet::bench {
namespace {

constexpr int kJobs = 25, kEntriesInJob = 400;

entry::Draft reading(const std::string& job, int number) {
    entry::Draft draft;
    draft.kind = "moisture";
    draft.job = job;
    draft.when = *entry::parse_time("2026-06-11T08:05:00+01:00");
    draft.place = "2.10,0.80";
    draft.data.set("label", "M" + std::to_string(number)).set("reading_pct", 12).set("board_c", 15);
    draft.data.set("setting", "group 2")
        .set("note", "at the edge of the third board, read twice, no sign of an old leak");
    return draft;
}

std::vector<std::string> written(const std::string& file) {
    FixedWorld world;
    book::KeyFiles keys(file);
    auto book = book::Book::start(file, {world, keys});
    std::vector<std::string> jobs;
    for (int job = 0; job < kJobs; ++job) {
        jobs.push_back(std::string(31, 'a') + static_cast<char>('a' + job % 6));
        jobs.back()[0] = static_cast<char>('0' + job / 6);
        std::vector<entry::Draft> drafts;
        for (int i = 0; i < kEntriesInJob; ++i) drafts.push_back(reading(jobs.back(), i));
        if (!book || !book->append(std::move(drafts))) throw std::runtime_error("the book cannot be written");
    }
    return jobs;
}

} // namespace

Ratios verify_many() {
    const TempFolder folder;
    const std::string file = folder.file("many.book");
    const auto jobs = written(file);
    const auto verify = [&] {
        auto desk = desk::Desk::open({file, "2026-06-12T08:00:00+01:00"});
        const auto verified = desk ? desk->verify() : desk.fault();
        if (!verified || !verified->ok || verified->entries != kJobs * kEntriesInJob)
            throw std::runtime_error("the book does not verify");
    };
    const auto read = [&] {
        FixedWorld world;
        book::KeyFiles keys(file);
        auto book = book::Book::open(file, book::Access::read, {world, keys});
        for (const auto& job : jobs) keep(book->entries(job));
    };
    auto timed = verify;
    const std::clock_t begun = std::clock();
    const double wall_s = seconds_of(timed);
    const double processor_s = static_cast<double>(std::clock() - begun) / CLOCKS_PER_SEC;
    std::printf(
        "verify_many: %d entries verified in %.2f s (%.2f s of processor), once, inside the process\n",
        kJobs * kEntriesInJob, wall_s, processor_s);
    return ratio_of(verify, read, 5);
}

} // namespace undersheet::bench
