#include "paper/pdf_columns.h"

#include <algorithm>
#include <numeric>

namespace undersheet::paper {
namespace {

constexpr double kShort = 1.5; // of an even share: a day and its time in a table of six columns

double least_of(const std::vector<ColumnNeed>& needs) {
    return std::accumulate(needs.begin(), needs.end(), 0.0,
                           [](double sum_pt, const ColumnNeed& need) { return sum_pt + need.least_pt; });
}

// The widest columns give way until all fit: none gets more than what the others leave it, and none less than its share.
std::vector<double> squeezed(const std::vector<ColumnNeed>& needs, double width_pt) {
    std::vector<double> widths(needs.size(), 0);
    std::vector<std::size_t> order(needs.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::sort(order.begin(), order.end(),
              [&](std::size_t a, std::size_t b) { return needs[a].least_pt < needs[b].least_pt; });
    double left_pt = width_pt;
    for (std::size_t i = 0; i < order.size(); ++i) {
        const double share_pt = left_pt / static_cast<double>(order.size() - i);
        widths[order[i]] = std::min(needs[order[i]].least_pt, share_pt);
        left_pt -= widths[order[i]];
    }
    return widths;
}

// Short columns keep all they need, so that a name is not broken for the sake of a long text beside it.
std::vector<ColumnNeed> with_short_ones_whole(std::vector<ColumnNeed> needs, double width_pt) {
    const double short_pt = kShort * width_pt / static_cast<double>(needs.size());
    const std::vector<ColumnNeed> given = needs;
    for (ColumnNeed& need : needs)
        if (need.whole_pt <= short_pt) need.least_pt = need.whole_pt;
    return least_of(needs) <= width_pt ? needs : given;
}

// `whole` fits: what is left over is shared out. It does not: what there is above the least is.
double column_width(const ColumnNeed& need, double whole_pt, double least_pt, double width_pt) {
    if (whole_pt > width_pt)
        return need.least_pt +
               (width_pt - least_pt) * (need.whole_pt - need.least_pt) / (whole_pt - least_pt);
    return whole_pt > 0 ? need.whole_pt * width_pt / whole_pt : 0;
}

} // namespace

std::vector<double> column_widths(const std::vector<ColumnNeed>& asked, double width_pt) {
    if (least_of(asked) > width_pt) return squeezed(asked, width_pt);
    const std::vector<ColumnNeed> needs = with_short_ones_whole(asked, width_pt);
    double whole_pt = 0;
    for (const ColumnNeed& need : needs) whole_pt += need.whole_pt;
    std::vector<double> widths;
    for (const ColumnNeed& need : needs)
        widths.push_back(column_width(need, whole_pt, least_of(needs), width_pt));
    return widths;
}

} // namespace undersheet::paper
