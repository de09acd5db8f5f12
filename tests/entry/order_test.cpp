#include "entry/order.h"

#include "tests/support/device.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <random>

using namespace undersheet;
using namespace undersheet::entry;

namespace {

// Two phones that hear of each other after every third entry.
std::vector<Entry> two_phones(int rounds) {
    Device one(1);
    Device two(2);
    std::vector<Entry> entries;
    for (int i = 0; i < rounds; ++i) {
        entries.push_back(one.write(air_draft(i)));
        const Entry ours = entries.back();
        entries.push_back(two.write(air_draft(i + 0.5)));
        if (i % 3 == 2) {
            one.sees({entries.back()});
            two.sees({ours});
        }
    }
    return entries;
}

std::vector<DeviceLink> links_of(const std::vector<Entry>& entries) {
    std::vector<DeviceLink> links;
    for (const Entry& entry : entries) links.push_back(device_link(entry));
    return links;
}

std::string only_fault(const std::vector<ChainFault>& faults) {
    return faults.size() == 1 ? faults[0].what : std::to_string(faults.size()) + " faults";
}

} // namespace

TEST_CASE("an honest job has no faults, in whatever order its entries come") {
    auto entries = two_phones(12);
    CHECK(check_job(entries).empty());
    std::mt19937 chance(4);
    for (int i = 0; i < 20; ++i) {
        std::shuffle(entries.begin(), entries.end(), chance);
        CHECK(check_job(entries).empty());
        CHECK(check_devices(links_of(entries), {entries[0].device, entries[1].device}).empty());
    }
}

TEST_CASE("what somebody knew always comes before what they wrote") {
    auto entries = two_phones(12);
    std::sort(entries.begin(), entries.end(), comes_before);
    std::vector<Hash> earlier;
    const auto came = [&](const Hash& hash) {
        return std::find(earlier.begin(), earlier.end(), hash) != earlier.end();
    };
    for (const Entry& entry : entries) {
        if (entry.prev) CHECK(came(*entry.prev));
        for (const Hash& head : entry.seen) CHECK(came(head));
        earlier.push_back(entry.hash);
    }
}

TEST_CASE("each single entry taken from the middle is missed, and its follower named") {
    const auto entries = two_phones(12);
    for (std::size_t i = 0; i + 4 < entries.size(); ++i) {
        auto left = entries;
        left.erase(left.begin() + static_cast<std::ptrdiff_t>(i));
        const auto faults = check_job(left);
        const std::string wanted =
            "the chain is broken: number " + std::to_string(entries[i].seq) + " before it";
        CHECK(std::any_of(faults.begin(), faults.end(), [&](const ChainFault& fault) {
            return fault.device == entries[i].device && fault.seq == entries[i].seq + 1 &&
                   fault.what.starts_with(wanted);
        }));
    }
}

TEST_CASE("the tail of a device that nobody else knew is not missed by the chain alone") {
    Device device(1);
    std::vector<Entry> entries = {device.write(air_draft()), device.write(air_draft())};
    entries.pop_back();
    CHECK(check_job(entries).empty()); // an honest limit: only a witness outside can show it
}

TEST_CASE("a tail that another device knew is missed") {
    Device one(1);
    Device two(2);
    const Entry theirs = one.write(air_draft());
    two.sees({theirs});
    const Entry ours = two.write(air_draft());
    CHECK(only_fault(check_job({ours})) ==
          "it knew entry " + short_name(theirs.hash) + ", which is missing or was changed");
}

TEST_CASE("a device that was copied shows two entries of one number") {
    Device device(1);
    const Entry first = device.write(air_draft());
    Device copy(1);
    copy.chain = device.chain;
    const Entry a = device.write(air_draft(10));
    const Entry b = copy.write(air_draft(20));
    CHECK(only_fault(check_job({first, a, b})) == "the device was copied: there are two entries number 2");
}

TEST_CASE("a lamport number that was made up is found") {
    Device device(1);
    const Entry first = device.write(air_draft());
    device.chain.lam = 500;
    const Entry second = device.write(air_draft());
    CHECK(only_fault(check_job({first, second})) == "its lam is 501, not 2");
}

TEST_CASE("an entry that stands on another device's entry as if it were its own is found") {
    Device one(1);
    Device two(2);
    const Entry theirs = one.write(air_draft());
    two.chain = one.chain;
    const Entry ours = two.write(air_draft());
    const auto faults = check_job({theirs, ours});
    CHECK(only_fault(faults) == "the chain is broken: what stands before it is not number 1");
    CHECK(only_fault(check_devices(links_of({theirs, ours}), {})) ==
          "what it names as this device's entry before is not entry 1 of all jobs");
}

TEST_CASE("an entry that leaves out a number, or stands on another job, is found") {
    Device device(1);
    const Entry first = device.write(air_draft());
    const Chain after_first = device.chain;
    device.chain.seq = device.chain.dctr = 2;
    const Entry third = device.write(air_draft());
    CHECK(only_fault(check_job({first, third})) ==
          "the chain is broken: what stands before it is not number 2");
    CHECK(only_fault(check_devices(links_of({first, third}), {})) ==
          "what it names as this device's entry before is not entry 2 of all jobs");
    device.chain = after_first;
    Draft elsewhere = air_draft();
    elsewhere.job = std::string(32, 'f');
    CHECK(only_fault(check_job({first, device.write(elsewhere)})) ==
          "the chain is broken: what stands before it is not number 1");
}

TEST_CASE("a whole job that was taken away is missed for the book's own device only") {
    Device device(1);
    device.write(air_draft()); // in a job that is not here any more
    device.chain.prev.reset();
    device.chain.seq = 0;
    device.chain.lam = 0;
    const Entry here = device.write(air_draft());
    CHECK(check_job({here}).empty());
    CHECK(check_devices(links_of({here}), {}).empty());
    CHECK(only_fault(check_devices(links_of({here}), {here.device})) ==
          "this device's entry 1 of all jobs is missing or was changed");
}

TEST_CASE("heads are the entries that nothing of the same device stands on") {
    Device one(1);
    Device two(2);
    const Entry a1 = one.write(air_draft());
    const Entry a2 = one.write(air_draft());
    const Entry b1 = two.write(air_draft());
    auto heads = heads_of({a1, a2, b1});
    std::vector<Hash> wanted = {a2.hash, b1.hash};
    std::sort(wanted.begin(), wanted.end());
    CHECK(heads == wanted);
    CHECK(heads_of({}).empty());
}
