#include "trade/outline_check.h"

#include "trade/chi_square.h"
#include "trade/outline_shape.h"

#include <algorithm>
#include <cmath>

namespace undersheet::trade {

namespace {

constexpr double kGross = 100; // times the limit

enum class RefitFrom { near_by, afresh };

int spare(const Polygon& corners, std::size_t tapes) {
    return static_cast<int>(tapes) - 2 * static_cast<int>(corners.size()) + 3;
}

bool is_accepted(double vpv, int spare_tapes, double share) {
    return spare_tapes <= 0 || vpv <= chi_square_at(share, spare_tapes);
}

// From the whole fit, or from wherever a fresh search leads if that is better.
Fit refitted(const Fit& whole, const std::vector<TapedLine>& others, double share, RefitFrom search) {
    const Fit near = fit(whole.corners, others);
    const int left = spare(whole.corners, others.size());
    if (search == RefitFrom::near_by || is_accepted(near.vpv, left, share)) return near;
    // Only a shape that the others nearly agree on would matter.
    const double hopeless_vpv = kGross * chi_square_at(share, std::max(left, 1));
    const auto fresh =
        found_shape(whole.corners.size(), others, SearchEffort::again(whole.corners.size(), hopeless_vpv));
    return fresh && fresh->fit.vpv < near.vpv ? fresh->fit : near;
}

WithoutOne without_tape(const Fit& whole, const std::vector<TapedLine>& lines, std::size_t i, double share,
                        RefitFrom search) {
    std::vector<TapedLine> others = lines;
    others.erase(others.begin() + static_cast<std::ptrdiff_t>(i));
    const Fit left = refitted(whole, others, share, search);
    return {taped_length_m(left.corners, lines[i]), left.vpv};
}

std::vector<std::size_t> checked_ones(const TapeCheck& check) {
    std::vector<std::size_t> ones;
    for (std::size_t i = 0; i < check.without.size(); ++i)
        if (check.without[i].from_others_m) ones.push_back(i);
    std::stable_sort(ones.begin(), ones.end(), [&](std::size_t a, std::size_t b) {
        return check.without[a].vpv < check.without[b].vpv;
    });
    return ones;
}

// Names the tape whose absence explains the misfit, or all those whose absence explains it about as well.
void find_wrong(TapeCheck& check, const Fit& whole, std::size_t tapes, const CheckRules& rules) {
    check.wrong.reset();
    check.perhaps.clear();
    const std::vector<std::size_t> ones = checked_ones(check);
    if (ones.empty()) return;
    const double best = check.without[ones[0]].vpv;
    const int left = spare(whole.corners, tapes) - 1;
    if (whole.vpv - best < rules.suspect_w * rules.suspect_w &&
        is_accepted(whole.vpv, left + 1, rules.accept_share))
        return;
    if (!is_accepted(best, left, rules.accept_share)) return;
    for (const std::size_t i : ones)
        if (check.without[i].vpv < best + rules.clearer_by) check.perhaps.push_back(i);
    if (left < 1 || check.perhaps.size() > 1) return;
    check.wrong = ones[0];
    check.perhaps.clear();
}

std::vector<double> sizes_of_w(const Fit& whole, const Strength& strength,
                               const std::vector<TapedLine>& lines) {
    std::vector<double> sizes;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const double residual_mm = (taped_length_m(whole.corners, lines[i]) - lines[i].m) * 1000;
        const double doubt_mm = lines[i].sd_mm * std::sqrt(std::max(strength.redundancy[i], kUnchecked));
        sizes.push_back(std::abs(residual_mm) / doubt_mm);
    }
    return sizes;
}

void leave_out(TapeCheck& check, const Fit& whole, const std::vector<TapedLine>& lines,
               const std::vector<std::size_t>& ones, double share, RefitFrom search) {
    for (const std::size_t i : ones) check.without[i] = without_tape(whole, lines, i, share, search);
}

} // namespace

TapeCheck checked_tapes(const Fit& whole, const Strength& strength, const std::vector<TapedLine>& lines,
                        const CheckRules& rules) {
    TapeCheck check;
    check.without.resize(lines.size());
    const int spare_tapes = spare(whole.corners, lines.size());
    if (spare_tapes < 1) return check;
    const std::vector<double> w = sizes_of_w(whole, strength, lines);
    const double largest = *std::max_element(w.begin(), w.end());
    std::vector<std::size_t> poor;
    std::vector<std::size_t> fair;
    for (std::size_t i = 0; i < lines.size(); ++i)
        if (strength.redundancy[i] > kUnchecked) (w[i] > largest / 2 ? poor : fair).push_back(i);
    // A gross slip can pull the whole shape to where the others do not find home; the tapes that fit badly are tried
    // afresh first, and before any is named the rest get the same chance.
    const bool is_gross = !is_accepted(whole.vpv / kGross, spare_tapes, rules.accept_share);
    leave_out(check, whole, lines, poor, rules.accept_share,
              is_gross ? RefitFrom::afresh : RefitFrom::near_by);
    leave_out(check, whole, lines, fair, rules.accept_share, RefitFrom::near_by);
    find_wrong(check, whole, lines.size(), rules);
    if (!is_gross || !check.wrong) return check;
    leave_out(check, whole, lines, fair, rules.accept_share, RefitFrom::afresh);
    find_wrong(check, whole, lines.size(), rules);
    return check;
}

} // namespace undersheet::trade
