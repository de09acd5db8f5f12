#include "trade/cuts.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <map>
#include <random>
#include <string>

using namespace undersheet;
using namespace undersheet::trade;

namespace {

using Lengths = std::vector<std::int64_t>;

std::vector<Decimal> decimals(const Lengths& mm) {
    std::vector<Decimal> all;
    for (const auto length : mm) all.push_back(Decimal::of(length));
    return all;
}

CutsInput input(const std::vector<std::pair<std::int64_t, int>>& pieces, const Lengths& stock,
                std::int64_t kerf = 0) {
    CutsInput in{{}, decimals(stock), Decimal::of(kerf), {}};
    for (const auto& [mm, count] : pieces)
        in.pieces_mm.insert(in.pieces_mm.end(), static_cast<std::size_t>(count), Decimal::of(mm));
    return in;
}

// Each piece exactly once, no bar overfull, the figures those of the bars.
void check_bars(const CutsInput& in, const Cuts& found) {
    std::map<std::string, int> left;
    for (const Decimal& piece : in.pieces_mm) ++left[piece.text()];
    double bought = 0, needed = 0;
    for (const Bar& bar : found.bars) {
        double used = 0;
        for (const Decimal& piece : bar.pieces_mm) {
            --left[piece.text()];
            used += piece.value();
        }
        const double kerfs = in.kerf_mm.value() * static_cast<double>(bar.pieces_mm.size() - 1);
        REQUIRE(used + kerfs <= bar.stock_mm.value() + 1e-9);
        bought += bar.stock_mm.value();
        needed += used;
    }
    for (const auto& [text, count] : left) REQUIRE(count == 0);
    REQUIRE(found.bought_mm.value() == Approx(bought));
    REQUIRE(found.waste_mm.value() == Approx(bought - needed).margin(1e-9));
}

std::size_t bars_used(const CutsInput& in) {
    const auto found = *cuts(in);
    check_bars(in, found);
    REQUIRE(found.best);
    return found.bars.size();
}

// The least that any plan costs, by trying every one: the next piece into each bar there is, or into a new one.
struct Tried {
    const Lengths& pieces;
    const Lengths& stock;
    const Lengths& costs;
    std::int64_t kerf;
    std::int64_t best = INT64_MAX;
    Lengths rooms = {};

    void place(std::size_t piece, std::int64_t cost) {
        if (cost >= best) return;
        if (piece == pieces.size()) {
            best = cost;
            return;
        }
        const std::int64_t size = pieces[piece] + kerf;
        for (std::size_t i = 0; i < rooms.size(); ++i) {
            if (rooms[i] < size) continue;
            rooms[i] -= size;
            place(piece + 1, cost);
            rooms[i] += size;
        }
        for (std::size_t s = 0; s < stock.size(); ++s) {
            if (stock[s] + kerf < size) continue;
            rooms.push_back(stock[s] + kerf - size);
            place(piece + 1, cost + costs[s]);
            rooms.pop_back();
        }
    }
};

std::int64_t tried(const Lengths& pieces, const Lengths& stock, const Lengths& costs, std::int64_t kerf) {
    Tried search{pieces, stock, costs, kerf};
    search.place(0, 0);
    return search.best;
}

struct Reference {
    std::int64_t kerf_mm;
    Lengths stock_mm, prices, lengths_mm;
    std::vector<int> counts;
    std::int64_t least;
};
const Reference kReference[] = {
#include "fixtures/reference/cuts.inc"
};

CutsInput input(const Reference& row) {
    CutsInput in{{}, decimals(row.stock_mm), Decimal::of(row.kerf_mm), row.prices};
    for (std::size_t i = 0; i < row.lengths_mm.size(); ++i)
        in.pieces_mm.insert(in.pieces_mm.end(), static_cast<std::size_t>(row.counts[i]),
                            Decimal::of(row.lengths_mm[i]));
    return in;
}

struct Small {
    Lengths pieces, stock, prices;
    std::int64_t kerf = 0;
};

Small small(std::mt19937& random) {
    const auto between = [&](std::int64_t least, std::int64_t most) {
        return std::uniform_int_distribution<std::int64_t>(least, most)(random);
    };
    Small made;
    made.kerf = between(0, 5);
    for (std::int64_t i = between(1, 3); i > 0; --i) {
        made.stock.push_back(between(60, 200));
        made.prices.push_back(between(1, 40));
    }
    const auto longest = *std::max_element(made.stock.begin(), made.stock.end());
    for (std::int64_t i = between(1, 7); i > 0; --i) made.pieces.push_back(between(10, longest));
    return made;
}

CutsInput input(const Small& made) {
    return {decimals(made.pieces), decimals(made.stock), Decimal::of(made.kerf), {}};
}

} // namespace

// Published: Wikipedia "Cutting stock problem", quoted from memory; 73 proved by an integer programme (cbc), computed.
TEST_CASE("the paper-mill example takes 73 rolls of 5600 mm, 0.401 % waste") {
    const auto in =
        input(Reference{0,
                        {5600},
                        {},
                        {1380, 1520, 1560, 1710, 1820, 1880, 1930, 2000, 2050, 2100, 2140, 2150, 2200},
                        {22, 25, 12, 14, 18, 18, 20, 10, 12, 14, 16, 18, 20},
                        0});
    const auto found = *cuts(in);
    check_bars(in, found);
    CHECK(found.best);
    CHECK(found.bars.size() == 73);
    CHECK(found.waste_mm.text() == "1640");
}

// Published: Chvátal, Linear Programming, chapter 13, quoted from memory; 453 proved by cbc, computed.
TEST_CASE("the textbook's 100 inch raws come to 453") {
    CHECK(bars_used(input({{45, 97}, {36, 610}, {31, 395}, {14, 211}}, {100})) == 453);
}

// Computed by an integer programme (cbc).
TEST_CASE("a kerf of 3 mm costs a whole length") {
    CHECK(bars_used(input({{2950, 2}, {2100, 2}, {1450, 3}, {900, 4}, {620, 3}}, {3000})) == 7);
    CHECK(bars_used(input({{1000, 6}, {1500, 4}, {750, 5}}, {3000}, 0)) == 6);
    CHECK(bars_used(input({{1000, 6}, {1500, 4}, {750, 5}}, {3000}, 3)) == 7);
}

TEST_CASE("pieces that end at the end of their bar need no kerf there") {
    CHECK(bars_used(input({{1500, 1}, {997, 1}}, {2500}, 3)) == 1);
    CHECK(bars_used(input({{1500, 1}, {998, 1}}, {2500}, 3)) == 2);
}

TEST_CASE("the least length is bought for small cases, as trying every plan shows") {
    std::mt19937 random(20);
    for (int i = 0; i < 3000; ++i) {
        const Small made = small(random);
        const auto in = input(made);
        const auto found = *cuts(in);
        check_bars(in, found);
        REQUIRE(found.best);
        REQUIRE(found.bought_mm.whole() == tried(made.pieces, made.stock, made.stock, made.kerf));
        REQUIRE(found.at_least_mm == found.bought_mm);
    }
}

TEST_CASE("with prices the least price is paid for small cases, as trying every plan shows") {
    std::mt19937 random(21);
    for (int i = 0; i < 3000; ++i) {
        const Small made = small(random);
        auto in = input(made);
        in.prices = made.prices;
        const auto found = *cuts(in);
        check_bars(in, found);
        REQUIRE(found.best);
        REQUIRE(found.price == tried(made.pieces, made.stock, made.prices, made.kerf));
        REQUIRE(found.at_least_price == found.price);
    }
}

TEST_CASE(
    "the least bought and the least paid agree with an independent integer programme (GLPK, computed)") {
    for (const Reference& row : kReference) {
        const auto in = input(row);
        const auto found = *cuts(in);
        CAPTURE(in.pieces_mm.size(), row.least);
        check_bars(in, found);
        CHECK(found.best);
        CHECK((row.prices.empty() ? found.bought_mm.whole() : found.price) == row.least);
    }
}

TEST_CASE("no kerf never needs more than some kerf, and twice as long everything the same") {
    std::mt19937 random(22);
    for (int i = 0; i < 300; ++i) {
        Small made = small(random);
        const auto with_kerf = *cuts(input(made));
        Small twice = made;
        for (auto* list : {&twice.pieces, &twice.stock})
            for (auto& mm : *list) mm *= 2;
        twice.kerf *= 2;
        REQUIRE(cuts(input(twice))->bought_mm.whole() == 2 * with_kerf.bought_mm.whole());
        made.kerf = 0;
        REQUIRE_FALSE(with_kerf.bought_mm < cuts(input(made))->bought_mm);
    }
}

TEST_CASE("the order of pieces and stocks changes nothing") {
    std::mt19937 random(23);
    for (int i = 0; i < 200; ++i) {
        Small made = small(random);
        const auto one = *cuts(input(made));
        std::shuffle(made.pieces.begin(), made.pieces.end(), random);
        std::shuffle(made.stock.begin(), made.stock.end(), random);
        const auto other = *cuts(input(made));
        REQUIRE(one.bars.size() == other.bars.size());
        for (std::size_t b = 0; b < one.bars.size(); ++b) {
            REQUIRE(one.bars[b].stock_mm == other.bars[b].stock_mm);
            REQUIRE(one.bars[b].pieces_mm == other.bars[b].pieces_mm);
        }
    }
}

TEST_CASE("sixty pieces of twenty lengths are planned, proved or with a bound that no plan beats") {
    std::mt19937 random(60);
    int proved = 0;
    for (int i = 0; i < 20; ++i) {
        Lengths sizes;
        for (int s = 0; s < 20; ++s)
            sizes.push_back(std::uniform_int_distribution<std::int64_t>(300, 2500)(random));
        CutsInput in{{}, decimals({2500, 3000}), Decimal::of(3), {}};
        for (std::size_t p = 0; p < 60; ++p) in.pieces_mm.push_back(Decimal::of(sizes[p % 20]));
        const auto found = *cuts(in);
        check_bars(in, found);
        REQUIRE_FALSE(found.bought_mm < found.at_least_mm);
        REQUIRE(found.best == (found.at_least_mm == found.bought_mm));
        proved += found.best ? 1 : 0;
    }
    CHECK(proved >= 18); // counted steps, the same on every machine
}

TEST_CASE("when the effort is used up the plan is still whole, and says what it could not do better than") {
    const auto in = input({{1000, 6}, {1500, 4}, {750, 5}, {430, 7}, {1110, 6}}, {3000, 2500}, 3);
    const auto found = *cuts(in, {.steps = 0, .fillings = 0});
    check_bars(in, found);
    CHECK_FALSE(found.best);
    const auto proved = *cuts(in);
    REQUIRE(proved.best);
    CHECK_FALSE(proved.bought_mm < found.at_least_mm);
    CHECK_FALSE(found.bought_mm < proved.bought_mm);
}

TEST_CASE("half millimetres are cut exactly") {
    const CutsInput in{
        {*Decimal::parse("999.5"), *Decimal::parse("1000.5")}, {Decimal::of(2000)}, Decimal::of(0), {}};
    CHECK(cuts(in)->bars.size() == 1);
    CHECK(cuts(in)->waste_mm.text() == "0");
}

TEST_CASE("what cannot be cut is refused by its field") {
    const auto field = [](const CutsInput& in) { return cuts(in).fault().where; };
    CHECK(field(input({}, {2500})) == "pieces_mm");
    CHECK(field(input({{100, 1}}, {})) == "stock_mm");
    CHECK(field(input({{100, 2001}}, {2500})) == "pieces_mm");
    CHECK(cuts(input({{100, 2000}}, {2500})));
    CHECK(field(input({{2500, 1}, {2501, 1}}, {2500})) == "pieces_mm[1]");
    CHECK(field(input({{0, 1}}, {2500})) == "pieces_mm[0]");
    CHECK(field(input({{100, 1}}, {100'001})) == "stock_mm[0]");
    CHECK(field(input({{100, 1}}, {2500}, 101)) == "kerf_mm");
    CHECK(field(input({{100, 1}}, {2500}, -1)) == "kerf_mm");
    auto priced = input({{100, 1}}, {2500});
    priced.prices = {100, 200};
    CHECK(field(priced) == "prices");
    priced.prices = {-1};
    CHECK(field(priced) == "prices[0]");
}
