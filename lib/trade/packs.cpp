#include "trade/packs.h"

#include "trade/field_check.h"
#include "trade/whole_units.h"

#include <algorithm>
#include <numeric>
#include <string>

namespace undersheet::trade {
namespace {

constexpr std::int64_t kMostPackPrice = 1'000'000'000'000;
constexpr std::int64_t kMostPackSteps = 1'000'000;

// Every amount in whole units of the finest decimal place that occurs.
struct WholePacks {
    int places = 0;
    std::int64_t need = 0;
    std::vector<std::int64_t> sizes;
    std::int64_t measure = 0; // greatest common measure of the sizes: every total is a multiple of it
};

// What it takes to cover a number of steps. Compared in the order of the promise.
struct Cover {
    std::int64_t price = 0;
    std::int64_t steps = 0; // supplied
    std::int64_t count = 0;
    std::size_t first_pack = 0;
};

bool is_better(const Cover& a, const Cover& b) {
    if (a.price != b.price) return a.price < b.price;
    if (a.steps != b.steps) return a.steps < b.steps;
    return a.count < b.count;
}

std::string pack_field(std::size_t index, const char* member) {
    return "packs[" + std::to_string(index) + "]." + member;
}

std::optional<Fault> wrong_pack(const Pack& pack, std::size_t index) {
    if (!(Decimal() < pack.size)) {
        return impossible(pack_field(index, "size"),
                          worded("{value} cannot be", {{"value", pack.size.text()}}),
                          "a pack holds more than nothing");
    }
    if (pack.price >= 0 && pack.price <= kMostPackPrice) return std::nullopt;
    return impossible(pack_field(index, "price"),
                      worded("{value} cannot be", {{"value", std::to_string(pack.price)}}),
                      "give the price in minor units, 0 or more");
}

std::optional<Fault> wrong_field(const PacksInput& in) {
    if (in.need < Decimal())
        return impossible("need", worded("{value} cannot be", {{"value", in.need.text()}}),
                          "it must be 0 or more");
    if (in.packs.empty())
        return impossible("packs", "there is no pack to choose from", "give at least one size and price");
    for (std::size_t i = 0; i < in.packs.size(); ++i) {
        if (auto wrong = wrong_pack(in.packs[i], i)) return wrong;
    }
    return std::nullopt;
}

int finest_place(const PacksInput& in) {
    std::vector<Decimal> amounts{in.need};
    for (const auto& pack : in.packs) amounts.push_back(pack.size);
    return finest_places(amounts);
}

Fault too_fine(const std::string& field) {
    return impossible(field, "too large beside the finest decimal place here to be worked out exactly",
                      "round the need or the sizes");
}

Result<WholePacks> in_whole_numbers(const PacksInput& in) {
    WholePacks whole;
    whole.places = finest_place(in);
    const auto need = units(in.need, whole.places);
    if (!need) return too_fine("need");
    whole.need = *need;
    for (std::size_t i = 0; i < in.packs.size(); ++i) {
        const auto size = units(in.packs[i].size, whole.places);
        if (!size) return too_fine(pack_field(i, "size"));
        whole.sizes.push_back(*size);
        whole.measure = std::gcd(whole.measure, *size);
    }
    return whole;
}

// best[r] covers r steps or more. Price, supply and count all add up, so the best cover of r is one pack and
// the best cover of what is then left.
std::vector<Cover> best_covers(std::int64_t steps, const WholePacks& whole, const std::vector<Pack>& packs) {
    std::vector<Cover> best(static_cast<std::size_t>(steps) + 1);
    for (std::size_t r = 1; r < best.size(); ++r) {
        for (std::size_t i = 0; i < packs.size(); ++i) {
            const std::int64_t size = whole.sizes[i] / whole.measure;
            const Cover& left = best[static_cast<std::size_t>(
                std::max<std::int64_t>(0, static_cast<std::int64_t>(r) - size))];
            const Cover tried{left.price + packs[i].price, left.steps + size, left.count + 1, i};
            if (i == 0 || is_better(tried, best[r])) best[r] = tried;
        }
    }
    return best;
}

std::vector<PackCount> mix_of(const std::vector<Cover>& best, const WholePacks& whole,
                              const std::vector<Pack>& packs) {
    std::vector<std::int64_t> counts(packs.size());
    for (auto left = static_cast<std::int64_t>(best.size()) - 1; left > 0;) {
        const std::size_t pack = best[static_cast<std::size_t>(left)].first_pack;
        ++counts[pack];
        left -= whole.sizes[pack] / whole.measure;
    }
    std::vector<PackCount> mix;
    for (std::size_t i = 0; i < packs.size(); ++i) {
        if (counts[i] > 0) mix.push_back({packs[i].size, counts[i]});
    }
    return mix;
}

Result<Packs> answer(const std::vector<Cover>& best, const WholePacks& whole,
                     const std::vector<Pack>& packs) {
    const std::int64_t supplied = best.back().steps * whole.measure;
    auto total = Decimal::scaled(supplied, whole.places);
    auto spare = Decimal::scaled(supplied - whole.need, whole.places);
    if (!total || !spare) return too_fine("need");
    return Packs{mix_of(best, whole, packs), *total, *spare, best.back().price};
}

} // namespace

Result<Packs> packs(const PacksInput& in) {
    if (const auto wrong = wrong_field(in)) return *wrong;
    const auto whole = in_whole_numbers(in);
    if (!whole) return whole.fault();
    const std::int64_t steps = whole->need / whole->measure + (whole->need % whole->measure != 0 ? 1 : 0);
    if (steps > kMostPackSteps) return too_fine("need");
    return answer(best_covers(steps, *whole, in.packs), *whole, in.packs);
}

} // namespace undersheet::trade
