#include "entry/causality.h"

#include "tests/support/device.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <random>
#include <set>

using namespace undersheet;
using namespace undersheet::entry;

namespace {

// Devices that write, hear of one another and are copied by chance.
std::vector<Entry> random_job(unsigned seed, int entries) {
    std::mt19937 chance(seed);
    std::vector<std::unique_ptr<Device>> devices;
    for (std::uint8_t i = 1; i <= 3; ++i) devices.push_back(std::make_unique<Device>(i));
    std::vector<Entry> made;
    for (int i = 0; i < entries; ++i) {
        const std::size_t at = chance() % devices.size();
        std::vector<Entry> heard;
        for (unsigned k = 0; k < chance() % 3 && !made.empty(); ++k)
            heard.push_back(made[chance() % made.size()]);
        std::sort(heard.begin(), heard.end(), [](const Entry& a, const Entry& b) { return a.hash < b.hash; });
        heard.erase(std::unique(heard.begin(), heard.end(),
                                [](const Entry& a, const Entry& b) { return a.hash == b.hash; }),
                    heard.end());
        if (!heard.empty()) devices[at]->sees(heard);
        if (i % 7 == 6) { // a copy goes on from here under the same name
            devices.push_back(std::make_unique<Device>(static_cast<std::uint8_t>(at % 3 + 1)));
            devices.back()->chain = devices[at]->chain;
        }
        made.push_back(devices[at]->write(air_draft(i)));
    }
    std::sort(made.begin(), made.end(), comes_before);
    return made;
}

// The past, found by walking back over what every entry names.
std::set<std::size_t> past_of(const std::vector<Entry>& entries, std::size_t of) {
    std::set<std::size_t> past = {of};
    std::vector<std::size_t> open = {of};
    while (!open.empty()) {
        const Entry& entry = entries[open.back()];
        open.pop_back();
        std::vector<Hash> named = entry.seen;
        if (entry.prev) named.push_back(*entry.prev);
        for (std::size_t i = 0; i < entries.size(); ++i) {
            const bool is_named = std::find(named.begin(), named.end(), entries[i].hash) != named.end();
            if (is_named && past.insert(i).second) open.push_back(i);
        }
    }
    return past;
}

} // namespace

TEST_CASE("who knew what is what one finds by walking back over everything that entries name") {
    for (unsigned seed = 1; seed <= 60; ++seed) {
        const auto entries = random_job(seed, 40);
        const Causality causality(entries);
        for (std::size_t later = 0; later < entries.size(); ++later) {
            const auto past = past_of(entries, later);
            for (std::size_t earlier = 0; earlier < entries.size(); ++earlier) {
                INFO("seed " << seed << ", " << later << " and " << earlier);
                REQUIRE(causality.knew(later, earlier) == past.contains(earlier));
            }
        }
    }
}

TEST_CASE("what an entry stands on at once is the least that gives its whole past") {
    const auto entries = random_job(5, 60);
    const Causality causality(entries);
    for (std::size_t entry = 0; entry < entries.size(); ++entry) {
        std::set<std::size_t> past = {entry};
        for (const std::size_t parent : causality.parents(entry)) past.merge(past_of(entries, parent));
        CHECK(past == past_of(entries, entry));
        for (const std::size_t one : causality.parents(entry)) {
            for (const std::size_t other : causality.parents(entry))
                CHECK((one == other || causality.apart(one, other)));
        }
    }
}

TEST_CASE("the tips are what lies in nobody's past, and together they know everything") {
    const auto entries = random_job(9, 50);
    const Causality causality(entries);
    std::set<std::size_t> known;
    for (const std::size_t tip : causality.tips()) {
        known.merge(past_of(entries, tip));
        for (std::size_t other = 0; other < entries.size(); ++other)
            CHECK((other == tip || !causality.knew(other, tip)));
    }
    CHECK(known.size() == entries.size());
}

TEST_CASE("one device's entries, one behind the other, are one run") {
    Device device(1);
    std::vector<Entry> entries;
    for (int i = 0; i < 5; ++i) entries.push_back(device.write(air_draft(i)));
    CHECK(Causality(entries).is_one_run());
    Device other(2);
    other.sees({entries.back()});
    entries.push_back(other.write(air_draft(9)));
    CHECK_FALSE(Causality(entries).is_one_run());
    CHECK(Causality({}).is_one_run());
}
