#include "trade/cut_filling.h"

#include <algorithm>

namespace undersheet::trade {
namespace {

constexpr int kMostLooks = 20'000;

class Filler {
public:
    Filler(const Amounts& sizes, const Counts& most, const Amounts& worths)
        : sizes_(sizes), most_(most), worths_(worths), now_(sizes.size(), 0), best_{now_, 0, 0} {
        for (std::size_t i = 0; i < sizes.size(); ++i) {
            if (most[i] > 0 && worths[i] > 0) order_.push_back(i);
        }
        std::stable_sort(order_.begin(), order_.end(), [&](std::size_t a, std::size_t b) {
            return worths[a] * sizes[b] > worths[b] * sizes[a];
        });
    }

    Filling filled(std::int64_t room) {
        const std::int64_t in_fractions = bound(0, room);
        look(0, room, 0);
        best_.at_most = looks_ < kMostLooks ? best_.worth : in_fractions;
        return best_;
    }

private:
    // What the rest could be worth if the last piece might be cut short.
    [[nodiscard]] std::int64_t bound(std::size_t from, std::int64_t room) const {
        std::int64_t worth = 0;
        for (std::size_t k = from; k < order_.size(); ++k) {
            const std::size_t i = order_[k];
            if (most_[i] * sizes_[i] > room) return worth + room * worths_[i] / sizes_[i];
            worth += most_[i] * worths_[i];
            room -= most_[i] * sizes_[i];
        }
        return worth;
    }

    void look(std::size_t k, std::int64_t room, std::int64_t worth) {
        if (worth > best_.worth) best_ = {now_, worth, 0};
        if (k == order_.size() || looks_ == kMostLooks || worth + bound(k, room) <= best_.worth) return;
        ++looks_;
        const std::size_t i = order_[k];
        const auto count = static_cast<int>(std::min<std::int64_t>(most_[i], room / sizes_[i]));
        for (now_[i] = count; now_[i] > 0; --now_[i])
            look(k + 1, room - now_[i] * sizes_[i], worth + now_[i] * worths_[i]);
        look(k + 1, room, worth);
    }

    const Amounts& sizes_;
    const Counts& most_;
    const Amounts& worths_;
    std::vector<std::size_t> order_; // most worth for its size first
    Counts now_;
    Filling best_;
    int looks_ = 0;
};

} // namespace

Filling best_filling(const Amounts& sizes, const Counts& most, const Amounts& worths, std::int64_t room) {
    return Filler(sizes, most, worths).filled(room);
}

} // namespace undersheet::trade
