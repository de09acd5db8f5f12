// Three phones (and copies of them) that record, sign, send back, open again, settle, are lost and meet, by chance.
// Their clocks may be twenty years wrong. UNDERSHEET_SCHEDULES=100000 makes more of them than the few that every run makes;
// UNDERSHEET_SCHEDULES_BEFORE=20000 leaves out the first, so that a long row is made in pieces.
#include "tests/job/pictured.h"
#include "tests/support/how_many.h"
#include "tests/support/phones.h"

#include <random>

using namespace undersheet;
using test::check_sound;
using test::Phones;
using test::picture_of;
using test::Site;

namespace {

const Site& small_roof() {
    static const Site made = [] {
        Site site;
        site.opened();
        site.record("edge", "08:01", R"({"kind":"gutter"})", "AB");
        return site;
    }();
    return made;
}

class Schedule {
public:
    explicit Schedule(unsigned seed) : chance_(seed), phones_(3, small_roof()) {}

    void run(int steps) {
        for (int i = 0; i < steps; ++i) step();
    }
    // Everybody meets everybody, in an order of chance.
    void meet_all() {
        std::vector<std::size_t> order;
        for (std::size_t i = 0; i < phones_.count(); ++i) order.push_back(i);
        std::shuffle(order.begin(), order.end(), chance_);
        for (std::size_t i = 1; i < order.size(); ++i) phones_.meet(order[0], order[i]);
        for (std::size_t i = 1; i < order.size(); ++i) phones_.meet(order[0], order[i]);
    }
    [[nodiscard]] const Phones& phones() const { return phones_; }

private:
    std::size_t any(std::size_t below) { return chance_() % below; }
    std::string time() {
        return (any(2) == 0 ? "0" : "1") + std::to_string(any(9)) + ":" + std::to_string(10 + any(49));
    }

    void step() {
        const std::size_t phone = any(phones_.count());
        switch (any(8)) {
        case 0:
            return phones_.meet(phone, any(phones_.count()));
        case 1:
            return read(phone);
        case 2:
            return settle(phone);
        case 3:
            return rarely(phone);
        default:
            return move(phone);
        }
    }

    void move(std::size_t phone) {
        static const std::vector<std::string> events{"begin",  "finish", "sign",    "send_back", "pause",
                                                     "resume", "reopen", "confirm", "leave_out", "take_back"};
        static const std::vector<std::string> parts{"deck",    "plate/AB", "lay-out",
                                                    "field/1", "band/AB",  "final"};
        phones_.record(phone, events[any(events.size())], time(), R"({"why":"said so","agreed_by":"x"})", "",
                       parts[any(parts.size())], any(2) == 0 ? "ip" : "wp");
    }
    void read(std::size_t phone) {
        if (any(2) == 0)
            phones_.record(phone, "chase", time(), R"({"height_mm":)" + std::to_string(90 + any(90)) + "}",
                           "CD+0.10");
        else if (any(2) == 0)
            phones_.record(phone, "heads", time(),
                           R"({"total":9,"checked":9,"below":8,"flush":0,"proud":1})");
        else
            phones_.record(phone, "punch_add", time(), R"({"number":1,"text":"scuff"})", "AB");
    }
    void settle(std::size_t phone) {
        const auto job = phones_.fold_latest(phone);
        if (job.to_settle.empty()) return move(phone);
        const auto& item = job.to_settle[any(job.to_settle.size())];
        const auto& side = item.sides[any(item.sides.size())];
        phones_.record(phone, "settle", time(),
                       R"({"item":")" + item.id + R"(","keep":")" + entry::hash_text(side.entry->hash) +
                           R"(","why":"looked again"})");
    }
    void rarely(std::size_t phone) {
        if (any(6) == 0 && phones_.count() < 5) {
            phones_.copy_of(phone);
        } else if (any(6) == 0) {
            phones_.set_clock_wrong(phone, 20 * (static_cast<int>(any(3)) - 1));
        } else if (any(6) == 0) {
            phones_.record(phone, "revoke", time(),
                           R"({"device":"phone)" + std::to_string(any(3)) + R"(","why":"lost"})");
        } else if (any(8) == 0) {
            for (const char* event : {"begin", "finish", "sign"})
                phones_.record(phone, event, time(), R"({"not_present":"by post"})", "", "hand-over");
        } else {
            move(phone);
        }
    }

    std::mt19937 chance_;
    Phones phones_;
};

// How many of the schedules reach what they are made for.
struct Reached {
    int contested = 0, settled = 0, handed_over = 0, revoked = 0, wrong_clocks = 0;

    void note(const job::Job& job) {
        const auto has = [&](job::Apart about) {
            return std::any_of(job.to_settle.begin(), job.to_settle.end(),
                               [&](const auto& item) { return item.about == about; });
        };
        contested += has(job::Apart::part_state) ? 1 : 0;
        revoked += has(job::Apart::after_revocation) ? 1 : 0;
        settled += job.settled.empty() ? 0 : 1;
        handed_over += job.handed_over == nullptr ? 0 : 1;
        const auto& entries = *job.entries;
        const auto by_clock = [](const auto& a, const auto& b) { return a.when.unix_s < b.when.unix_s; };
        wrong_clocks += std::is_sorted(entries.begin(), entries.end(), by_clock) ? 0 : 1;
    }
};

} // namespace

TEST_CASE("whatever phones do apart, they end alike, and never better than the most careful of them") {
    const int many = test::how_many("UNDERSHEET_SCHEDULES", 1500),
              before = test::how_many("UNDERSHEET_SCHEDULES_BEFORE", 0);
    Reached reached;
    for (int seed = before + 1; seed <= before + many; ++seed) {
        Schedule schedule(static_cast<unsigned>(seed));
        schedule.run(24);
        schedule.meet_all();
        INFO("seed " << seed);
        const Phones& phones = schedule.phones();
        const auto job = phones.fold_latest(0);
        check_sound(job);
        const std::string first = picture_of(job);
        for (std::size_t phone = 1; phone < phones.count(); ++phone) REQUIRE(phones.know_the_same(phone, 0));
        const std::size_t other = 1 + static_cast<std::size_t>(seed) % (phones.count() - 1);
        REQUIRE(picture_of(phones.fold_latest(other)) == first);
        reached.note(job);
    }
    CHECK(reached.contested > many / 10);
    CHECK(reached.settled > many / 50);
    CHECK(reached.revoked > many / 100);
    CHECK(reached.wrong_clocks > many / 10);
    CHECK(reached.handed_over > 0);
}

// Shuffled before they are folded: what a book hands over has no order either.
TEST_CASE("entries that arrive in any order fold to the same job") {
    for (unsigned seed = 1; seed <= 20; ++seed) {
        Schedule schedule(seed);
        schedule.run(20);
        schedule.meet_all();
        auto entries = schedule.phones().known_to(0);
        const auto job = schedule.phones().fold_latest(0);
        const std::string first = picture_of(job);
        std::mt19937 chance(seed);
        for (int i = 0; i < 20; ++i) {
            std::shuffle(entries.begin(), entries.end(), chance);
            const auto again = job::fold(entries, test::default_method(), test::default_kinds(), job.as_of);
            REQUIRE(again.ok());
            CHECK(picture_of(*again) == first);
        }
    }
}
