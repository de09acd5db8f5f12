#include "trade/packs.h"

#include <catch2/catch.hpp>

#include <random>
#include <string>
#include <tuple>

using namespace undersheet;
using namespace undersheet::trade;

namespace {

Decimal d(std::string_view text) { return *Decimal::parse(text); }

std::string told(const Packs& bought) {
    std::string text;
    for (const auto& row : bought.mix) text += std::to_string(row.count) + "x" + row.size.text() + " ";
    return text + "= " + bought.total.text() + " spare " + bought.spare.text() + " for " +
           std::to_string(bought.price);
}

std::string best(std::string_view need, std::vector<Pack> choice) {
    return told(*packs({d(need), std::move(choice)}));
}

// Price, supplied and count of the best mix, by trying every mix that is not already enough without its last pack.
using Mark = std::tuple<std::int64_t, std::int64_t, std::int64_t>;
Mark tried(std::int64_t need, const std::vector<std::pair<std::int64_t, std::int64_t>>& choice,
           std::size_t from, Mark so_far) {
    if (std::get<1>(so_far) >= need) return so_far;
    Mark least{INT64_MAX, 0, 0};
    for (std::size_t i = from; i < choice.size(); ++i) {
        const auto& [size, price] = choice[i];
        const Mark next{std::get<0>(so_far) + price, std::get<1>(so_far) + size, std::get<2>(so_far) + 1};
        least = std::min(least, tried(need, choice, i, next));
    }
    return least;
}

struct Reference {
    std::string need;
    std::vector<std::string> sizes;
    std::vector<std::int64_t> prices;
    std::int64_t least;
};
const Reference kReference[] = {
#include "fixtures/reference/packs.inc"
};

} // namespace

TEST_CASE("the least price agrees with an independent integer programme (GLPK, computed)") {
    for (const Reference& row : kReference) {
        PacksInput in{d(row.need), {}};
        for (std::size_t i = 0; i < row.sizes.size(); ++i)
            in.packs.push_back({d(row.sizes[i]), row.prices[i]});
        CAPTURE(row.need, row.least);
        CHECK(packs(in)->price == row.least);
    }
}

TEST_CASE("the cheapest mix of packs is found") {
    // Computed: the cbc integer programme and brute force agree; whole money units, here times 100.
    CHECK(best("13.4", {{d("2.5"), 3100}, {d("5"), 5400}, {d("10"), 9700}}) ==
          "1x5 1x10 = 15 spare 1.6 for 15100");
    CHECK(best("7.6", {{d("1"), 1650}, {d("2.5"), 3600}, {d("5"), 6800}}) ==
          "3x1 1x5 = 8 spare 0.4 for 11750");
    CHECK(best("21", {{d("2.5"), 2900}, {d("5"), 5500}, {d("15"), 15800}}) ==
          "1x2.5 1x5 1x15 = 22.5 spare 1.5 for 24200");
}

TEST_CASE("at the same price the mix with less left over wins") {
    CHECK(best("5", {{d("7"), 100}, {d("6"), 100}}) == "1x6 = 6 spare 1 for 100");
}

TEST_CASE("at the same price and the same spare the fewest packs win") {
    CHECK(best("10", {{d("5"), 50}, {d("10"), 100}}) == "1x10 = 10 spare 0 for 100");
}

TEST_CASE("of mixes that are alike in everything the one that stands first in the list is bought") {
    CHECK(best("4", {{d("4"), 10}, {d("4"), 10}}) == "1x4 = 4 spare 0 for 10");
}

TEST_CASE("decimal sizes are worked exactly") {
    CHECK(best("0.3", {{d("0.1"), 1}}) ==
          "3x0.1 = 0.3 spare 0 for 3"); // 0.1 three times is more than 0.3 in binary
    CHECK(best("7.5", {{d("2.5"), 10}}) == "3x2.5 = 7.5 spare 0 for 30");
    CHECK(best("7.501", {{d("2.5"), 10}}) == "4x2.5 = 10 spare 2.499 for 40");
    CHECK(best("7.499", {{d("2.5"), 10}}) == "3x2.5 = 7.5 spare 0.001 for 30");
}

TEST_CASE("no need buys nothing") { CHECK(best("0", {{d("2.5"), 10}}) == "= 0 spare 0 for 0"); }

TEST_CASE("packs that cost nothing are still bought as few and as small as will do") {
    CHECK(best("4", {{d("10"), 0}, {d("5"), 0}}) == "1x5 = 5 spare 1 for 0");
}

TEST_CASE("the best mix is as good as the best of all mixes tried one by one") {
    constexpr unsigned seed = 20250612;
    std::mt19937 dice(seed);
    CAPTURE(seed);
    const auto roll = [&](int low, int high) {
        return low + static_cast<int>(dice() % static_cast<unsigned>(high - low + 1));
    };
    for (int round = 0; round < 3000; ++round) {
        const int need = roll(0, 60);
        std::vector<std::pair<std::int64_t, std::int64_t>> choice;
        PacksInput in{*Decimal::scaled(need, 1), {}};
        for (int i = roll(1, 3); i > 0; --i) {
            choice.emplace_back(roll(3, 40), roll(0, 30));
            in.packs.push_back({*Decimal::scaled(choice.back().first, 1), choice.back().second});
        }
        const auto [price, supplied, count] = tried(need, choice, 0, {0, 0, 0});
        const auto found = packs(in);
        std::int64_t bought = 0;
        std::int64_t tenths = 0;
        for (const auto& row : found->mix) {
            bought += row.count;
            tenths += row.count * (row.size.places() == 0 ? row.size.digits() * 10 : row.size.digits());
        }
        CAPTURE(round, need, told(*found));
        REQUIRE(found->price == price);
        REQUIRE(found->total == *Decimal::scaled(supplied, 1));
        REQUIRE(found->spare == *Decimal::scaled(supplied - need, 1));
        REQUIRE(bought == count);
        REQUIRE(tenths == supplied);
    }
}

TEST_CASE("a large order in small steps is still worked out") {
    CHECK(packs({d("999999"), {{d("1"), 1}}})->price == 999999);
    CHECK(packs({d("1000000"), {{d("1"), 1}}})->price == 1000000);
    CHECK(packs({d("1000001"), {{d("1"), 1}}}).fault().where == "need");
}

TEST_CASE("packs that cannot be are refused by the name of their field") {
    CHECK(packs({d("-0.1"), {{d("1"), 1}}}).fault().where == "need");
    CHECK(packs({d("1"), {}}).fault().where == "packs");
    CHECK(packs({d("1"), {{d("1"), 1}, {d("0"), 1}}}).fault().where == "packs[1].size");
    CHECK(packs({d("1"), {{d("-2"), 1}}}).fault().where == "packs[0].size");
    CHECK(packs({d("1"), {{d("1"), -1}}}).fault().where == "packs[0].price");
    CHECK(packs({d("1"), {{d("1"), 1'000'000'000'001}}}).fault().where == "packs[0].price");
    CHECK(packs({d("100000000000000"), {{d("0.0001"), 1}}}).fault().where == "need");
}
