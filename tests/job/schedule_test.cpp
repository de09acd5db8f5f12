#include "job/schedule.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <random>

using namespace undersheet;
using job::Slot;
using job::Work;

namespace {

constexpr std::int64_t kQuarter_s = 15 * 60;

// A small case: which quarter hours suit which of two stages, and a row of up to three pieces of work.
struct Case {
    std::vector<bool> stage_a, stage_b;
    std::vector<Work> row;
    [[nodiscard]] bool suits(const Work& work, std::int64_t unix_s) const {
        const auto& mask = work.stage == "a" ? stage_a : stage_b;
        const auto i = static_cast<std::size_t>(unix_s / kQuarter_s);
        return i < mask.size() && mask[i];
    }
    [[nodiscard]] std::int64_t until_s() const {
        return static_cast<std::int64_t>(stage_a.size()) * kQuarter_s;
    }
};

Case random_case(std::mt19937& random) {
    const auto below = [&](unsigned n) { return static_cast<int>(random() % n); };
    Case made;
    for (int i = 0; i < 8; ++i) {
        made.stage_a.push_back(below(4) > 0);
        made.stage_b.push_back(below(4) > 0);
    }
    const int pieces = 1 + below(3);
    for (int i = 0; i < pieces; ++i)
        made.row.push_back(
            {std::to_string(i), below(2) == 0 ? "a" : "b", 15 * (1 + below(3)), 15 * below(2), 0});
    return made;
}

// Every start of every piece is tried, one after the other, and nothing is cut short.
void try_all(const Case& small, std::size_t piece, std::vector<std::int64_t>& starts,
             std::vector<std::vector<std::int64_t>>& found) {
    if (piece == small.row.size()) {
        found.push_back(starts);
        return;
    }
    const Work& work = small.row[piece];
    for (std::int64_t start = 0; start + work.minutes * 60 <= small.until_s(); start += kQuarter_s) {
        bool fits = true;
        for (std::int64_t t = start; t < start + work.minutes * 60; t += kQuarter_s)
            fits = fits && small.suits(work, t);
        if (piece > 0) {
            const Work& before = small.row[piece - 1];
            fits = fits && start >= starts.back() + (before.minutes + before.wait_min) * 60;
        }
        if (!fits) continue;
        starts.push_back(start);
        try_all(small, piece + 1, starts, found);
        starts.pop_back();
    }
}

std::vector<std::vector<std::int64_t>> every_way(const Case& small) {
    std::vector<std::vector<std::int64_t>> found;
    std::vector<std::int64_t> starts;
    try_all(small, 0, starts, found);
    return found;
}

std::int64_t end_of(const Case& small, const std::vector<std::int64_t>& starts) {
    return starts.back() + small.row.back().minutes * 60;
}

bool is_one_go(const Case& small, const std::vector<std::int64_t>& starts) {
    for (std::size_t i = 1; i < starts.size(); ++i) {
        const Work& before = small.row[i - 1];
        if (starts[i] != starts[i - 1] + (before.minutes + before.wait_min) * 60) return false;
    }
    return true;
}

} // namespace

TEST_CASE("a row of work ends as early as any way of placing it does") {
    std::mt19937 random(20261126);
    int fitting = 0;
    for (int i = 0; i < 3000; ++i) {
        const Case small = random_case(random);
        const auto suits = [&](const Work& work, std::int64_t t) { return small.suits(work, t); };
        const auto slots = job::fit_in_order(small.row, 0, small.until_s(), suits);
        const auto ways = every_way(small);
        INFO("case " << i);
        REQUIRE((slots.size() == small.row.size()) == !ways.empty());
        if (ways.empty()) continue;
        ++fitting;
        std::int64_t best = small.until_s();
        for (const auto& way : ways) best = std::min(best, end_of(small, way));
        CHECK(slots.back().to_s == best);
    }
    CHECK(fitting > 500); // the cases are not all hopeless
    CHECK(fitting < 2900);
}

TEST_CASE("a row of work in one go begins as early as any way without a pause does") {
    std::mt19937 random(40);
    for (int i = 0; i < 3000; ++i) {
        const Case small = random_case(random);
        const auto suits = [&](const Work& work, std::int64_t t) { return small.suits(work, t); };
        const auto slots = job::fit_in_one_go(small.row, 0, small.until_s(), suits);
        std::optional<std::int64_t> earliest;
        for (const auto& way : every_way(small)) {
            if (is_one_go(small, way) && (!earliest || way.front() < *earliest)) earliest = way.front();
        }
        INFO("case " << i);
        REQUIRE(slots.has_value() == earliest.has_value());
        if (slots) CHECK(slots->front().from_s == *earliest);
    }
}

TEST_CASE("what does not fit any more is left out, and what came before it stays") {
    const std::vector<Work> row{{"x", "a", 30, 0, 0}, {"y", "a", 60, 0, 0}};
    const auto always = [](const Work&, std::int64_t) { return true; };
    CHECK(job::fit_in_order(row, 0, 89 * 60, always).size() == 1);
    CHECK(job::fit_in_order(row, 0, 90 * 60, always).size() == 2);
    CHECK_FALSE(job::fit_in_one_go(row, 0, 89 * 60, always));
}

TEST_CASE("minutes are rounded up to the quarter hour") {
    const std::vector<Work> row{{"x", "a", 16, 1, 0}, {"y", "a", 15, 0, 0}};
    const auto slots = job::fit_in_order(row, 1, 1 << 20, [](const Work&, std::int64_t) { return true; });
    REQUIRE(slots.size() == 2);
    CHECK(slots[0].from_s == kQuarter_s);
    CHECK(slots[0].to_s == 3 * kQuarter_s);
    CHECK(slots[1].from_s == 4 * kQuarter_s);
}
