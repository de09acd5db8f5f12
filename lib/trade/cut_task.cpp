#include "trade/cut_task.h"

#include <algorithm>
#include <numeric>

namespace undersheet::trade {

std::int64_t total_of(const Counts& counts, const Amounts& each) {
    return std::inner_product(counts.begin(), counts.end(), each.begin(), std::int64_t{0});
}

int total_of(const Counts& counts) { return std::accumulate(counts.begin(), counts.end(), 0); }

Counts without(Counts counts, const Counts& taken) {
    for (std::size_t i = 0; i < counts.size(); ++i) counts[i] -= taken[i];
    return counts;
}

bool has_none(const Counts& counts) { return first_of(counts) == counts.size(); }

std::size_t first_of(const Counts& counts) {
    const auto found = std::find_if(counts.begin(), counts.end(), [](int count) { return count != 0; });
    return static_cast<std::size_t>(found - counts.begin());
}

} // namespace undersheet::trade
