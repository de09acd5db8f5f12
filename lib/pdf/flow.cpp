#include "pdf/flow.h"

#include <algorithm>
#include <utility>

namespace undersheet::pdf {
namespace {

constexpr double kHeightDust_pt = 0.01; // what a sum of many heights may be off by

class Layer {
public:
    Layer(const Story& story, const Frame& frame) : story_(story), frame_(frame) {
        laid_.pages.emplace_back();
    }

    void lay(std::size_t at) {
        const Group& group = story_.groups[at];
        if (group.strips.empty()) {
            wants_page_ = wants_page_ || group.starts_page;
            return;
        }
        const bool begins = std::exchange(wants_page_, false) || group.starts_page;
        if (!at_top_ && (begins || needed(at) > left_pt() + kHeightDust_pt)) turn_over(group);
        if (!at_top_) {
            down_pt_ += group.before_pt;
            for (const Strip& strip : group.lead) put(strip);
        }
        if (group.sinks && !at_top_)
            down_pt_ = std::max(down_pt_, frame_.height_pt - height_of(group.strips));
        if (group.level > 0) add_bookmark(group);
        const double foot_pt = is_kept_whole(group) ? 0 : foot_after(at);
        for (const Strip& strip : group.strips)
            lay(strip, group, &strip == &group.strips.back() ? foot_pt : 0);
    }
    Flowed laid() && { return std::move(laid_); }

private:
    [[nodiscard]] double left_pt() const { return frame_.height_pt - down_pt_; }

    // How much room there has to be for this group to begin here: its beginning, and those of what it keeps.
    [[nodiscard]] double needed(std::size_t at) const {
        double sum_pt = 0;
        for (; at < story_.groups.size(); ++at) {
            const Group& group = story_.groups[at];
            if (group.strips.empty()) continue;
            const bool is_whole = group.keeps_next || is_kept_whole(group);
            sum_pt += group.before_pt + height_of(group.lead) +
                      (is_whole ? height_of(group.strips) : group.strips.front().height_pt);
            if (group.keeps_next) continue;
            const double foot_pt = is_whole || group.strips.size() == 1 ? foot_after(at) : 0;
            return sum_pt + foot_pt <= frame_.height_pt ? sum_pt + foot_pt : sum_pt;
        }
        return sum_pt;
    }

    [[nodiscard]] bool is_kept_whole(const Group& group) const {
        return group.is_whole && height_of(group.strips) <= frame_.height_pt;
    }

    // What sinks to the foot of a page takes along the end of what comes before it, so that it is not alone there.
    [[nodiscard]] double foot_after(std::size_t at) const {
        for (++at; at < story_.groups.size(); ++at) {
            const Group& group = story_.groups[at];
            if (group.starts_page) break;
            if (group.strips.empty()) continue;
            return group.sinks ? group.before_pt + height_of(group.strips) : 0;
        }
        return 0;
    }

    void turn_over(const Group& group) {
        laid_.pages.emplace_back();
        down_pt_ = 0;
        at_top_ = true;
        if (!group.header) return;
        for (const Strip& strip : story_.headers[*group.header]) put(strip);
        at_top_ = true; // whatever comes next stands right under it
    }

    void lay(const Strip& strip, const Group& group, double foot_pt) {
        const bool takes_foot = strip.height_pt + foot_pt <= frame_.height_pt;
        const double needed_pt = strip.height_pt + (takes_foot ? foot_pt : 0);
        if (!at_top_ && needed_pt > left_pt() + kHeightDust_pt) turn_over(group);
        put(strip);
    }

    void put(const Strip& strip) {
        for (const Mark& mark : strip.marks)
            laid_.pages.back().marks.push_back(moved(mark, frame_.left_pt, frame_.top_pt + down_pt_));
        down_pt_ += strip.height_pt;
        at_top_ = false;
    }

    // A bookmark may be one level below the last one, no more.
    void add_bookmark(const Group& group) {
        const int last = laid_.bookmarks.empty() ? 0 : laid_.bookmarks.back().level;
        laid_.bookmarks.push_back(
            {std::min(group.level, last + 1), group.title, laid_.pages.size() - 1, frame_.top_pt + down_pt_});
    }

    const Story& story_;
    const Frame& frame_;
    Flowed laid_;
    double down_pt_ = 0;
    bool at_top_ = true, wants_page_ = false;
};

} // namespace

Flowed flowed(const Story& story, const Frame& frame) {
    Layer layer(story, frame);
    for (std::size_t at = 0; at < story.groups.size(); ++at) layer.lay(at);
    return std::move(layer).laid();
}

} // namespace undersheet::pdf
