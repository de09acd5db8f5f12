// Not by chance but all of them: every short row of what two phones can do to one part, and every order in which a few
// entries can arrive. UNDERSHEET_EVERY_SCHEDULE=4 makes the rows a step longer than every run does.
#include "tests/job/pictured.h"
#include "tests/support/how_many.h"
#include "tests/support/phones.h"

#include <array>
#include <numeric>

using namespace undersheet;
using test::check_sound;
using test::deck_done;
using test::Phones;
using test::picture_of;

namespace {

const std::array<const char*, 5> kMoves{"sign", "send_back", "reopen", "begin", "finish"};

// Both phones may make each of the moves, or settle what is open, or the two may meet.
constexpr std::size_t kSteps = 2 * (kMoves.size() + 1) + 1;

void settle_first(Phones& phones, std::size_t phone, const std::string& now) {
    const auto job = phones.fold_latest(phone);
    if (job.to_settle.empty()) return;
    const auto& item = job.to_settle.front();
    phones.record(phone, "settle", now, test::keep(*item.sides[phone].entry, item.id));
}

void make(std::size_t step, std::size_t row, Phones& phones) {
    if (step == kSteps - 1) return phones.meet(0, 1);
    const std::size_t phone = step % 2, move = step / 2;
    const std::string now = "10:1" + std::to_string(row);
    if (move == kMoves.size()) return settle_first(phones, phone, now);
    phones.record(phone, kMoves[move], now, R"({"why":"said so"})", "", "deck");
}

struct Rows {
    int made = 0, apart = 0, settled = 0;

    void make_all(const Phones& phones, int steps, std::size_t row = 0) {
        if (steps == 0) return end(phones);
        for (std::size_t step = 0; step < kSteps; ++step) {
            Phones further = phones;
            make(step, row, further);
            make_all(further, steps - 1, row + 1);
        }
    }

private:
    void end(Phones phones) {
        phones.meet(0, 1);
        const auto job = phones.fold_latest(0);
        check_sound(job);
        REQUIRE(picture_of(phones.fold_latest(1)) == picture_of(job));
        ++made;
        apart += job.to_settle.empty() ? 0 : 1;
        settled += job.settled.empty() ? 0 : 1;
    }
};

// Two phones that said different things of the deck, and know it.
Phones met_over_a_clash() {
    Phones phones(2, deck_done());
    phones.record(0, "sign", "09:00", "{}", "", "deck");
    phones.record(1, "send_back", "09:00", R"({"why":"a soft board"})", "", "deck");
    phones.meet(0, 1);
    return phones;
}

int to_the_power(std::size_t base, int times) {
    int made = 1;
    for (int i = 0; i < times; ++i) made *= static_cast<int>(base);
    return made;
}

// Three phones that know of a deck that is done, and then write two entries each without a word to one another.
Phones three_apart() {
    Phones phones(3, deck_done());
    phones.record(0, "sign", "10:00", "{}", "", "deck");
    phones.record(0, "chase", "10:01", R"({"height_mm":160})", "CD+0.10");
    phones.record(1, "send_back", "10:00", R"({"why":"a soft board"})", "", "deck");
    phones.record(1, "chase", "10:01", R"({"height_mm":140})", "CD+0.10");
    phones.record(2, "revoke", "10:00", R"({"device":"phone1","why":"lost"})");
    phones.record(2, "reopen", "10:01", R"({"why":"rain came in"})", "", "deck");
    return phones;
}

} // namespace

TEST_CASE("whatever two phones do to one part in a few steps, they end alike once they have met") {
    const int steps = test::how_many("UNDERSHEET_EVERY_SCHEDULE", 3);
    Rows rows;
    rows.make_all(Phones(2, deck_done()), steps);
    rows.make_all(met_over_a_clash(), steps);
    CHECK(rows.made == 2 * to_the_power(kSteps, steps));
    CHECK(rows.apart > rows.made / 20);
    CHECK(rows.settled > rows.made / 20);
}

TEST_CASE("six entries that three phones wrote apart fold to the same job in every order of arrival") {
    Phones phones = three_apart();
    phones.meet(0, 1);
    phones.meet(0, 2);
    const auto entries = phones.known_to(0);
    const auto job = phones.fold_latest(0);
    const std::string first = picture_of(job);
    CHECK_FALSE(job.to_settle.empty());

    std::vector<std::size_t> order(6);
    std::iota(order.begin(), order.end(), entries.size() - order.size());
    int orders = 0;
    do {
        std::vector<entry::Entry> arrived(entries.begin(), entries.end() - 6);
        for (const std::size_t at : order) arrived.push_back(entries[at]);
        const auto again =
            job::fold(std::move(arrived), test::default_method(), test::default_kinds(), job.as_of);
        REQUIRE(again.ok());
        REQUIRE(picture_of(*again) == first);
        ++orders;
    } while (std::next_permutation(order.begin(), order.end()));
    CHECK(orders == 720);
}
