#include "trade/trims.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <numeric>
#include <random>

using namespace undersheet;
using namespace undersheet::trade;

namespace {

using Pieces = std::vector<std::int64_t>;

Pieces with_gaps(std::int64_t run_mm, std::int64_t stock_mm = 2500, std::int64_t least_mm = 300) {
    return *trim_pieces({run_mm, stock_mm, 3, false, least_mm});
}

Pieces with_laps(std::int64_t run_mm, std::int64_t least_mm = 300) {
    return *trim_pieces({run_mm, 2500, 50, true, least_mm});
}

std::int64_t sum(const Pieces& pieces) {
    return std::accumulate(pieces.begin(), pieces.end(), std::int64_t{0});
}

} // namespace

// Worked by hand: 2500 mm lengths, gaps of 3 mm, laps of 50 mm, no piece under 300 mm (common practice).
TEST_CASE("a run longer than one length is whole lengths and what is missing, a gap between them") {
    CHECK(with_gaps(3600) == Pieces{2500, 1097});
    CHECK(with_gaps(2400) == Pieces{2400});
}

TEST_CASE("a run of exactly one length is one piece, and one millimetre more makes a joint") {
    CHECK(with_gaps(2500) == Pieces{2500});
    CHECK(with_gaps(2501) == Pieces{2198, 300});
}

TEST_CASE("a last piece under the shortest allowed is raised to it, and the one before gives") {
    CHECK(with_gaps(5100) == Pieces{2500, 2294, 300}); // else the last would be 94
    CHECK(with_gaps(2803) == Pieces{2500, 300});       // at the limit
    CHECK(with_gaps(2802) == Pieces{2499, 300});       // just under
    CHECK(with_gaps(2804) == Pieces{2500, 301});       // just over
}

TEST_CASE("each lap takes its length off the run") {
    CHECK(with_laps(3600) == Pieces{2500, 1150});
    CHECK(with_laps(6000) == Pieces{2500, 2500, 1100});
    CHECK(with_laps(2750) == Pieces{2500, 300});
    CHECK(with_laps(2749) == Pieces{2499, 300});
}

TEST_CASE("a run shorter than the shortest piece stays one piece") { CHECK(with_gaps(120) == Pieces{120}); }

TEST_CASE("where the rest is narrower than the gap the last piece is still a piece") {
    CHECK(with_gaps(2502, 2500, 0) == Pieces{2498, 1});
    CHECK(with_gaps(2504, 2500, 0) == Pieces{2500, 1});
}

TEST_CASE("pieces and joints always come to the run, and none is too short or too long") {
    std::mt19937 random(4711);
    const auto between = [&](std::int64_t least, std::int64_t most) {
        return std::uniform_int_distribution<std::int64_t>(least, most)(random);
    };
    for (int i = 0; i < 20'000; ++i) {
        const std::int64_t stock = between(10, 6000);
        const std::int64_t joint = between(0, std::min<std::int64_t>(stock / 2, 200));
        const std::int64_t least = between(0, (stock - joint) / 2);
        const bool lapped = between(0, 1) == 1;
        const std::int64_t run = between(1, 30'000);
        CAPTURE(run, stock, joint, least, lapped);
        const Pieces pieces = *trim_pieces({run, stock, joint, lapped, least});
        const auto joints = static_cast<std::int64_t>(pieces.size()) - 1;
        REQUIRE(sum(pieces) + (lapped ? -joints : joints) * joint == run);
        REQUIRE(*std::max_element(pieces.begin(), pieces.end()) <= stock);
        REQUIRE(*std::min_element(pieces.begin(), pieces.end()) >=
                std::min(run, std::max<std::int64_t>(1, least)));
    }
}

TEST_CASE("what cannot be laid is refused by its field") {
    const auto field = [](const TrimRunInput& in) { return trim_pieces(in).fault().where; };
    CHECK(field({0, 2500, 3, false, 300}) == "run_mm");
    CHECK(field({1'000'001, 2500, 3, false, 300}) == "run_mm");
    CHECK(field({3600, 0, 0, false, 0}) == "stock_mm");
    CHECK(field({3600, 2500, 1251, true, 300}) == "joint_mm");
    CHECK(field({3600, 2500, -1, false, 300}) == "joint_mm");
    CHECK(field({3600, 2500, 3, false, 1249}) == "least_mm");
    CHECK(trim_pieces({3600, 2500, 3, false, 1248}));
}
