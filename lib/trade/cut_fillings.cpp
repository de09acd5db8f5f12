#include "trade/cut_fillings.h"

#include <algorithm>
#include <utility>

namespace undersheet::trade {
namespace {

// A round that takes longer than this is left for a thorough one at the end.
constexpr std::int64_t kLooksInARound = 5000;
constexpr std::int64_t kFirstBand = 256; // parts of the longest bar

} // namespace

CutFillings::CutFillings(const CutTask& task, Counts need, Counts bars, std::int64_t spare)
    : task_(task), need_(std::move(need)), bars_(std::move(bars)), rest_(need_.size() + 1, 0),
      longest_(first_of(need_)) {
    for (std::size_t i = need_.size(); i-- > 0;) rest_[i] = rest_[i + 1] + need_[i] * task_.sizes[i];
    plan_rounds(spare);
}

void CutFillings::plan_rounds(std::int64_t spare) {
    std::int64_t above = -1;
    for (std::int64_t up_to = 0; up_to < spare;) {
        add_rounds({0, above, up_to, false});
        above = up_to;
        up_to = up_to == 0 ? task_.stocks[0].room / kFirstBand + 1 : 2 * up_to;
    }
    add_rounds({0, above, spare, false});
}

void CutFillings::add_rounds(const Round& band) {
    for (std::size_t stock = 0; stock < bars_.size(); ++stock) {
        if (bars_[stock] == 0 || task_.stocks[stock].room < task_.sizes[longest_]) continue;
        rounds_.push_back(band);
        rounds_.back().stock = stock;
    }
}

std::optional<CutBar> CutFillings::next(std::int64_t& looks) {
    while (round_ < rounds_.size()) {
        while (looks > 0 && advance()) {
            --looks;
            if (is_wanted()) return CutBar{rounds_[round_].stock, pieces_};
        }
        if (looks == 0) return std::nullopt;
        const Round done = rounds_[round_];
        if (++round_ == rounds_.size() && was_cut_short_ && !done.is_thorough)
            add_rounds({0, -1, done.up_to, true});
        pieces_.clear();
    }
    return std::nullopt;
}

bool CutFillings::advance() {
    if (pieces_.empty()) {
        begin();
        return true;
    }
    if (++looks_here_ < kLooksInARound || rounds_[round_].is_thorough) return turn();
    was_cut_short_ = true;
    return false;
}

void CutFillings::begin() {
    looks_here_ = 0;
    pieces_.assign(need_.size(), 0);
    room_ = task_.stocks[rounds_[round_].stock].room;
    fill_from(longest_);
}

// The next filling in the order of longest pieces first: the shortest piece that can make way does.
bool CutFillings::turn() {
    for (std::size_t i = pieces_.size(); i-- > longest_;) {
        const int least = i == longest_ ? 1 : 0;
        while (pieces_[i] > least) {
            --pieces_[i];
            room_ += task_.sizes[i];
            const std::int64_t left_over = room_ - rest_[i + 1];
            // Otherwise too much stays over whatever follows, or the piece that made way fits again.
            if (left_over > rounds_[round_].up_to || left_over >= task_.sizes[i]) continue;
            fill_from(i + 1);
            return true;
        }
    }
    return false;
}

void CutFillings::fill_from(std::size_t size) {
    for (std::size_t i = size; i < pieces_.size(); ++i) {
        pieces_[i] = static_cast<int>(std::min<std::int64_t>(need_[i], room_ / task_.sizes[i]));
        room_ -= pieces_[i] * task_.sizes[i];
    }
}

bool CutFillings::is_wanted() const {
    if (room_ <= rounds_[round_].above || room_ > rounds_[round_].up_to) return false;
    for (std::size_t i = longest_; i < pieces_.size(); ++i) {
        if (pieces_[i] < need_[i] && task_.sizes[i] <= room_) return false;
    }
    return true;
}

} // namespace undersheet::trade
