// Receipts, witnesses and doubts about clocks.
#include "entry/witness.h"

#include "entry/clocks.h"
#include "tests/support/device.h"

#include <algorithm>
#include <catch2/catch.hpp>

using namespace undersheet;
using namespace undersheet::entry;

namespace {

constexpr ClockLimits kLimits = {120, 600, 600};
constexpr std::int64_t kFarAhead = std::int64_t{1} << 40U;

std::vector<Entry> sorted(std::vector<Entry> entries) {
    std::sort(entries.begin(), entries.end(), comes_before);
    return entries;
}

std::size_t place_of(const std::vector<Entry>& entries, const Entry& wanted) {
    return *Causality(entries).find(wanted.hash);
}

std::vector<std::string> doubts_of(const std::vector<Entry>& entries, std::int64_t now = kFarAhead) {
    std::vector<std::string> said;
    for (const auto& doubt : clock_doubts(entries, Causality(entries), kLimits, now))
        said.push_back(doubt.what);
    return said;
}

// Two entries of one device, its wall clock moved by `seconds` in between while the steady clock goes on.
std::vector<Entry> after_step(std::int64_t seconds) {
    Device device(1);
    std::vector<Entry> entries = {device.write(air_draft(1))};
    const Time clock = device.world.clock();
    device.world.set_clock(time_at(clock.unix_s + seconds, clock.offset_min).text);
    entries.push_back(device.write(air_draft(2)));
    return entries;
}

} // namespace

TEST_CASE("a receipt is the same whatever is written later and wherever it is worked out") {
    Device one(1);
    Device two(2);
    std::vector<Entry> entries = {one.write(air_draft(1)), one.write(air_draft(2))};
    const Entry signed_at = entries.back();
    const auto before = receipt_of(sorted(entries), Causality(sorted(entries)), 1);
    entries.push_back(two.write(air_draft(3))); // written apart, and taken in later
    one.sees({entries.back()});
    entries.push_back(one.write(air_draft(4)));
    const auto all = sorted(entries);
    const auto after = receipt_of(all, Causality(all), place_of(all, signed_at));
    CHECK(after.entry == signed_at.hash);
    CHECK(after.digest == before.digest);
}

TEST_CASE("a receipt no longer fits when anything before its entry is missing") {
    Device one(1);
    Device two(2);
    std::vector<Entry> entries = {two.write(air_draft(0))};
    one.sees({entries.back()});
    for (int i = 1; i < 5; ++i) entries.push_back(one.write(air_draft(i)));
    const auto all = sorted(entries);
    const auto whole = receipt_of(all, Causality(all), all.size() - 1);
    for (std::size_t gone = 0; gone + 1 < all.size(); ++gone) {
        auto rest = all;
        rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(gone));
        CHECK(receipt_of(rest, Causality(rest), rest.size() - 1).digest != whole.digest);
    }
}

TEST_CASE("a receipt is read as it is printed, in capitals and over several lines too") {
    Device one(1);
    const std::vector<Entry> entries = {one.write(air_draft(1))};
    const auto receipt = receipt_of(entries, Causality(entries), 0);
    const std::string text = receipt_text(receipt);
    const std::string digits = text.substr(text.find(' ') + 1);
    std::string capitals = digits;
    for (char& c : capitals) c = static_cast<char>(c >= 'a' && c <= 'f' ? c - 32 : c);
    for (const std::string& typed :
         {text, "  " + text + "\n", "undersheet.receipt.1\n" + digits, "undersheet.receipt.1 " + capitals,
          "undersheet.receipt.1\n" + digits.substr(0, 30) + "\n" + digits.substr(30)}) {
        const auto read = parse_receipt(typed);
        REQUIRE(read.ok());
        CHECK(read->entry == receipt.entry);
        CHECK(read->digest == receipt.digest);
    }
    for (const std::string& typed : {std::string(), std::string("undersheet.receipt.1"), text + " x",
                                     text.substr(0, text.size() - 1), "undersheet.receipt.2 " + digits})
        CHECK_FALSE(parse_receipt(typed).ok());
}

TEST_CASE("an entry is witnessed by another device that wrote on top of it, or by a receipt") {
    Device one(1);
    Device two(2);
    std::vector<Entry> entries = {one.write(air_draft(1)), one.write(air_draft(2))};
    CHECK(count_unwitnessed(entries, Causality(entries), {}) == 2);
    two.sees({entries.back()});
    entries.push_back(two.write(air_draft(3)));
    entries.push_back(two.write(air_draft(4)));
    entries.push_back(one.write(air_draft(5))); // has not heard of the other
    auto all = sorted(entries);
    CHECK(count_unwitnessed(all, Causality(all), {}) == 3);
    const auto at = place_of(all, entries.back());
    CHECK(count_unwitnessed(all, Causality(all), {receipt_of(all, Causality(all), at)}) == 2);
    one.sees({entries[3]});
    entries.push_back(one.write(air_draft(6)));
    all = sorted(entries);
    CHECK(count_unwitnessed(all, Causality(all), {}) == 2);
}

TEST_CASE("a signature stands after what its writer had seen of others, and before what others wrote on it") {
    Device one(1);
    Device two(2);
    const Entry first = two.write(air_draft(1));
    one.sees({first});
    const Entry middle = one.write(air_draft(2));
    two.sees({middle});
    const Entry last = two.write(air_draft(3));
    const auto all = sorted({first, middle, last});
    const auto bracket = bracket_of(all, Causality(all), place_of(all, middle));
    CHECK(bracket.after == place_of(all, first));
    CHECK(bracket.before == place_of(all, last));
    const auto open = bracket_of(all, Causality(all), place_of(all, last));
    CHECK(open.after == place_of(all, middle));
    CHECK_FALSE(open.before.has_value());
}

TEST_CASE("a clock that parts from the steady one is doubted beyond the limit and not at it") {
    CHECK(doubts_of(after_step(0)).empty());
    CHECK(doubts_of(after_step(119)).empty());
    CHECK(doubts_of(after_step(120)).empty());
    REQUIRE(doubts_of(after_step(121)).size() == 1);
    CHECK(doubts_of(after_step(121))[0] == "its clock was moved by 2 min");
}

TEST_CASE("a clock that goes back is doubted from the first second, by however much") {
    for (const std::int64_t back : {std::int64_t{1}, std::int64_t{3600}, std::int64_t{20} * 365 * 86400}) {
        const auto doubts = doubts_of(after_step(-back));
        REQUIRE_FALSE(doubts.empty());
        CHECK(doubts[0] == "its clock went back " + span_words(back));
    }
}

TEST_CASE("a clock before something its writer had seen is doubted beyond the limit and not at it") {
    for (const std::int64_t before : {std::int64_t{599}, std::int64_t{600}, std::int64_t{601}}) {
        Device one(1);
        Device two(2);
        one.world.forward(before);
        std::vector<Entry> entries = {one.write(air_draft(1))};
        two.sees({entries.back()});
        entries.push_back(two.write(air_draft(2)));
        CHECK(doubts_of(entries).size() == (before > 600 ? 1U : 0U));
    }
}

TEST_CASE("a clock ahead of the one it is checked by is doubted beyond the limit and not at it") {
    Device one(1);
    const std::vector<Entry> entries = {one.write(air_draft(1))};
    const std::int64_t clock = entries[0].clock.unix_s;
    CHECK(doubts_of(entries, clock - 600).empty());
    REQUIRE(doubts_of(entries, clock - 601).size() == 1);
    CHECK(doubts_of(entries, clock - 601)[0] == "its clock is 10 min ahead of the clock here");
}

TEST_CASE("a clock that was set by hand says so itself and is not doubted") {
    Device one(1);
    one.world.set_simulated(true);
    std::vector<Entry> entries = {one.write(air_draft(1))};
    one.world.set_clock("2020-01-01T08:00:00+00:00");
    entries.push_back(one.write(air_draft(2)));
    CHECK(doubts_of(entries).empty());
}

TEST_CASE("a span of time is said in the two units that matter") {
    CHECK(span_words(0) == "0 s");
    CHECK(span_words(59) == "59 s");
    CHECK(span_words(60) == "1 min");
    CHECK(span_words(3599) == "59 min");
    CHECK(span_words(3600) == "1 h 0 min");
    CHECK(span_words(86399) == "23 h 59 min");
    CHECK(span_words(3 * 86400 + 4 * 3600) == "3 d 4 h");
}
