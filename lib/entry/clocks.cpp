#include "entry/clocks.h"

#include <algorithm>
#include <cmath>

namespace undersheet::entry {
namespace {

// The latest clock among what an entry stands on, and its own.
class Clocks {
public:
    Clocks(const std::vector<Entry>& entries, const Causality& causality, const ClockLimits& limits,
           std::int64_t now)
        : entries_(entries), causality_(causality), limits_(limits), now_(now), latest_(entries.size()) {}

    std::vector<ClockDoubt> run() {
        for (std::size_t i = 0; i < entries_.size(); ++i) {
            std::int64_t seen = INT64_MIN;
            for (const std::size_t parent : causality_.parents(i)) seen = std::max(seen, latest_[parent]);
            if (!entries_[i].simulated) look(i, seen);
            latest_[i] = std::max(seen, entries_[i].simulated ? seen : entries_[i].clock.unix_s);
        }
        return std::move(doubts_);
    }

private:
    void look(std::size_t at, std::int64_t seen) {
        const Entry& entry = entries_[at];
        const std::int64_t clock = entry.clock.unix_s;
        if (entry.prev) look_at_before(at, *entry.prev);
        if (seen != INT64_MIN && static_cast<double>(seen - clock) > limits_.cause_s)
            add(at, "its clock is " + span_words(seen - clock) + " before something its writer had seen");
        if (static_cast<double>(clock - now_) > limits_.ahead_s)
            add(at, "its clock is " + span_words(clock - now_) + " ahead of the clock here");
    }

    void look_at_before(std::size_t at, const Hash& prev) {
        const auto before = causality_.find(prev);
        if (!before || entries_[*before].simulated) return;
        const Entry& entry = entries_[at];
        const Entry& other = entries_[*before];
        const std::int64_t went = entry.clock.unix_s - other.clock.unix_s;
        if (went < 0) add(at, "its clock went back " + span_words(-went));
        if (entry.boot != other.boot || went < 0) return;
        const std::int64_t steady = (entry.mono_millis - other.mono_millis) / 1000;
        if (std::abs(static_cast<double>(went - steady)) > limits_.step_s)
            add(at, "its clock was moved by " + span_words(std::abs(went - steady)));
    }

    void add(std::size_t at, std::string what) { doubts_.push_back({at, std::move(what)}); }

    const std::vector<Entry>& entries_;
    const Causality& causality_;
    const ClockLimits& limits_;
    std::int64_t now_;
    std::vector<std::int64_t> latest_;
    std::vector<ClockDoubt> doubts_ = {};
};

} // namespace

std::vector<ClockDoubt> clock_doubts(const std::vector<Entry>& entries, const Causality& causality,
                                     const ClockLimits& limits, std::int64_t now) {
    return Clocks(entries, causality, limits, now).run();
}

std::string span_words(std::int64_t seconds) {
    constexpr std::int64_t kMinute = 60, kHour = 3600, kDay = 86400;
    if (seconds < kMinute) return std::to_string(seconds) + " s";
    if (seconds < kHour) return std::to_string(seconds / kMinute) + " min";
    if (seconds < kDay)
        return std::to_string(seconds / kHour) + " h " + std::to_string(seconds % kHour / kMinute) + " min";
    return std::to_string(seconds / kDay) + " d " + std::to_string(seconds % kDay / kHour) + " h";
}

} // namespace undersheet::entry
