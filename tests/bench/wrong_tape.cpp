#include "tests/bench/cases.h"

#include "trade/outline.h"

#include <cmath>

namespace undersheet::bench {

namespace {

// A star of twelve corners, each taped to the next three of its sort.
trade::OutlineInput star() {
    constexpr std::size_t kCorners = 12;
    trade::OutlineInput in;
    trade::Polygon plan;
    for (std::size_t i = 0; i < kCorners; ++i) {
        const double angle = 2 * 3.14159265358979323846 * static_cast<double>(i) / kCorners;
        const double radius_m = i % 2 == 0 ? 5.1 : 6;
        plan.push_back({radius_m * std::cos(angle), radius_m * std::sin(angle)});
        in.corners.push_back("C" + std::to_string(i));
    }
    for (std::size_t step = 1; step <= 3; ++step)
        for (std::size_t i = 0; i < kCorners; ++i) {
            const std::size_t j = (i + step) % kCorners;
            in.tapes.push_back({in.corners[i], in.corners[j], trade::distance_m(plan[i], plan[j])});
        }
    return in;
}

} // namespace

Ratios wrong_tape() {
    const trade::OutlineInput good = star();
    trade::OutlineInput wrong = good;
    wrong.tapes[3].m += 1;
    return ratio_of([&] { keep(trade::outline(wrong)); }, [&] { keep(trade::outline(good)); });
}

} // namespace undersheet::bench
