#include "trade/cuts.h"

#include "trade/cut_plan.h"
#include "trade/field_check.h"
#include "trade/whole_units.h"

#include <algorithm>
#include <functional>
#include <numeric>
#include <string>

namespace undersheet::trade {
namespace {

constexpr std::size_t kMostPieces = 2000;
constexpr std::size_t kMostSizes = 100;
constexpr std::size_t kMostStocks = 20;
constexpr double kLongest_mm = 100'000;
constexpr double kWidestKerf_mm = 100;
constexpr double kMostPrice = 1e9;
constexpr std::int64_t kMostUnitsInStock = 100'000'000; // in the longest stock and a kerf

// All lengths in whole units; a room is a stock length and one kerf, in the order of the list.
struct Whole {
    int places = 0;
    std::int64_t kerf = 0;
    Amounts pieces; // longest first, without kerf
    Amounts rooms;
    std::int64_t cost_step = 0;
    Amounts costs; // of a bar, in the order of the promise: price or length first, then one for the bar
};

std::string field_of(const char* list, std::size_t index) {
    return std::string(list) + "[" + std::to_string(index) + "]";
}

std::optional<Fault> wrong_length(const char* list, const std::vector<Decimal>& lengths) {
    for (std::size_t i = 0; i < lengths.size(); ++i) {
        const FieldCheck check = FieldCheck().above(field_of(list, i), lengths[i].value(), 0, kLongest_mm);
        if (check.fault()) return check.fault();
    }
    return std::nullopt;
}

Worded at_most(std::size_t most) {
    return worded("at most {n} can be worked out at once", {{"n", std::to_string(most)}});
}

std::optional<Fault> wrong_number(const char* list, std::size_t count, std::size_t most) {
    if (count == 0) return impossible(list, "there is none", "give at least one");
    if (count <= most) return std::nullopt;
    return impossible(list, worded("{n} are too many", {{"n", std::to_string(count)}}), at_most(most));
}

std::optional<Fault> wrong_prices(const CutsInput& in) {
    if (!in.prices.empty() && in.prices.size() != in.stock_mm.size())
        return impossible("prices",
                          worded("{prices} prices for {lengths} stock lengths cannot be",
                                 {{"prices", std::to_string(in.prices.size())},
                                  {"lengths", std::to_string(in.stock_mm.size())}}),
                          "give one for each, or none");
    for (std::size_t i = 0; i < in.prices.size(); ++i) {
        const FieldCheck check =
            FieldCheck().between(field_of("prices", i), static_cast<double>(in.prices[i]), 0, kMostPrice);
        if (check.fault()) return check.fault();
    }
    return std::nullopt;
}

std::optional<Fault> wrong_piece(const CutsInput& in) {
    const Decimal longest = *std::max_element(in.stock_mm.begin(), in.stock_mm.end());
    for (std::size_t i = 0; i < in.pieces_mm.size(); ++i) {
        if (longest < in.pieces_mm[i])
            return impossible(field_of("pieces_mm", i),
                              worded("{mm} mm is longer than the longest stock, {longest} mm",
                                     {{"mm", in.pieces_mm[i].text()}, {"longest", longest.text()}}),
                              "join it from two, or find a longer stock");
    }
    auto sizes = in.pieces_mm;
    std::sort(sizes.begin(), sizes.end());
    const auto different = static_cast<std::size_t>(std::unique(sizes.begin(), sizes.end()) - sizes.begin());
    if (different <= kMostSizes) return std::nullopt;
    return impossible("pieces_mm",
                      worded("{n} different lengths are too many", {{"n", std::to_string(different)}}),
                      at_most(kMostSizes));
}

std::optional<Fault> wrong_field(const CutsInput& in) {
    if (auto wrong = wrong_number("pieces_mm", in.pieces_mm.size(), kMostPieces)) return wrong;
    if (auto wrong = wrong_number("stock_mm", in.stock_mm.size(), kMostStocks)) return wrong;
    if (auto wrong = wrong_length("pieces_mm", in.pieces_mm)) return wrong;
    if (auto wrong = wrong_length("stock_mm", in.stock_mm)) return wrong;
    const FieldCheck kerf = FieldCheck().between("kerf_mm", in.kerf_mm.value(), 0, kWidestKerf_mm);
    if (kerf.fault()) return kerf.fault();
    if (auto wrong = wrong_prices(in)) return wrong;
    return wrong_piece(in);
}

int finest_place(const CutsInput& in) {
    return std::max({finest_places(in.pieces_mm), finest_places(in.stock_mm), in.kerf_mm.places()});
}

Result<Whole> in_whole_numbers(const CutsInput& in) {
    Whole whole;
    whole.places = finest_place(in);
    const auto longest = units(Decimal::of(static_cast<std::int64_t>(kLongest_mm)), whole.places);
    if (!longest || *longest > kMostUnitsInStock)
        return impossible("pieces_mm", "too fine a decimal place here to be worked out exactly",
                          "give lengths and kerf to a thousandth of a millimetre at most");
    whole.kerf = *units(in.kerf_mm, whole.places);
    for (const Decimal& piece : in.pieces_mm) whole.pieces.push_back(*units(piece, whole.places));
    std::sort(whole.pieces.begin(), whole.pieces.end(), std::greater<>());
    const auto one_bar = static_cast<std::int64_t>(in.pieces_mm.size()) + 1;
    for (std::size_t i = 0; i < in.stock_mm.size(); ++i) {
        const std::int64_t length = *units(in.stock_mm[i], whole.places);
        whole.rooms.push_back(length + whole.kerf);
        const std::int64_t price = in.prices.empty() ? length : in.prices[i];
        whole.costs.push_back(price * one_bar + 1);
        whole.cost_step = std::gcd(whole.cost_step, price * one_bar);
    }
    if (whole.cost_step == 0) whole.cost_step = one_bar; // everything is for nothing
    return whole;
}

CutTask task_of(const Whole& whole) {
    CutTask task;
    for (const std::int64_t piece : whole.pieces) {
        if (task.sizes.empty() || task.sizes.back() != piece + whole.kerf) {
            task.sizes.push_back(piece + whole.kerf);
            task.need.push_back(0);
        }
        ++task.need.back();
    }
    task.cost_step = whole.cost_step;
    std::vector<CutStock> stocks;
    for (std::size_t i = 0; i < whole.rooms.size(); ++i) stocks.push_back({whole.rooms[i], whole.costs[i]});
    std::sort(stocks.begin(), stocks.end(), [](const CutStock& a, const CutStock& b) {
        return a.room != b.room ? a.room > b.room : a.cost < b.cost;
    });
    for (const CutStock& stock : stocks) {
        if (task.stocks.empty() || stock.cost < task.stocks.back().cost) task.stocks.push_back(stock);
    }
    return task;
}

// The shortest stock on the list that will do for no more money.
std::size_t stock_for(const Whole& whole, std::int64_t used, std::int64_t cost) {
    std::size_t best = whole.rooms.size();
    for (std::size_t i = 0; i < whole.rooms.size(); ++i) {
        if (whole.rooms[i] < used || whole.costs[i] > cost) continue;
        if (best == whole.rooms.size() || whole.rooms[i] < whole.rooms[best]) best = i;
    }
    return best;
}

Decimal in_mm(const Whole& whole, std::int64_t counted) { return *Decimal::scaled(counted, whole.places); }

Bar bar_of(const Whole& whole, const CutTask& task, const CutBar& cut, std::size_t stock) {
    Bar bar{in_mm(whole, whole.rooms[stock] - whole.kerf), {}, {}};
    for (std::size_t i = 0; i < task.sizes.size(); ++i)
        bar.pieces_mm.insert(bar.pieces_mm.end(), static_cast<std::size_t>(cut.pieces[i]),
                             in_mm(whole, task.sizes[i] - whole.kerf));
    const std::int64_t left = whole.rooms[stock] - whole.kerf - total_of(cut.pieces, task.sizes);
    bar.offcut_mm = in_mm(whole, std::max<std::int64_t>(0, left));
    return bar;
}

Cuts answer(const CutsInput& in, const Whole& whole, const CutTask& task, CutPlan plan) {
    std::stable_sort(plan.bars.begin(), plan.bars.end(), [](const CutBar& a, const CutBar& b) {
        return a.pieces != b.pieces ? a.pieces > b.pieces : a.stock < b.stock;
    });
    Cuts found;
    std::int64_t bought = 0;
    for (const CutBar& cut : plan.bars) {
        const std::size_t stock =
            stock_for(whole, total_of(cut.pieces, task.sizes), task.stocks[cut.stock].cost);
        bought += whole.rooms[stock] - whole.kerf;
        if (!in.prices.empty()) found.price += in.prices[stock];
        found.bars.push_back(bar_of(whole, task, cut, stock));
    }
    const std::int64_t needed = std::accumulate(whole.pieces.begin(), whole.pieces.end(), std::int64_t{0});
    found.bought_mm = in_mm(whole, bought);
    found.waste_mm = in_mm(whole, bought - needed);
    found.best = plan.best;
    const std::int64_t at_least = plan.at_least / (static_cast<std::int64_t>(whole.pieces.size()) + 1);
    if (in.prices.empty())
        found.at_least_mm = in_mm(whole, at_least);
    else
        found.at_least_price = at_least;
    return found;
}

} // namespace

Result<Cuts> cuts(const CutsInput& in, const CutsEffort& effort) {
    if (const auto wrong = wrong_field(in)) return *wrong;
    const auto whole = in_whole_numbers(in);
    if (!whole) return whole.fault();
    const CutTask task = task_of(*whole);
    return answer(in, *whole, task, best_plan(task, effort));
}

} // namespace undersheet::trade
