#include "trade/outline.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace undersheet;
using namespace undersheet::trade;

namespace {

const OutlineInput kRectangle{{"A", "B", "C", "D"},
                              {{"A", "B", 6.004},
                               {"B", "C", 3.998},
                               {"C", "D", 6.001},
                               {"D", "A", 4.003},
                               {"A", "C", 7.214},
                               {"B", "D", 7.209}}};
const OutlineInput kFiveCorners{{"A", "B", "C", "D", "E"},
                                {{"A", "B", 7.202},
                                 {"B", "C", 3.097},
                                 {"C", "D", 3.723},
                                 {"D", "E", 4.044},
                                 {"E", "A", 4.403},
                                 {"A", "C", 7.837},
                                 {"A", "D", 6.405},
                                 {"B", "D", 5.935},
                                 {"B", "E", 8.438},
                                 {"C", "E", 7.317}}};

OutlineInput with_tape(OutlineInput in, std::size_t i, double m) {
    in.tapes[i].m = m;
    return in;
}

struct Known {
    std::vector<Point> corners;
    std::vector<double> residuals_mm, redundancy, w;
    double vpv, area_m2;
    int spare;
    bool accepted;
};

// Tolerances as published with the values: 0.2 mm, |w| 0.02.
void check_against(const OutlineInput& in, const Known& known) {
    const Result<Outline> found = outline(in);
    REQUIRE(found.ok());
    for (std::size_t i = 0; i < known.corners.size(); ++i) {
        CHECK(found->corners[i].x_m == Approx(known.corners[i].x_m).margin(0.0002));
        CHECK(found->corners[i].y_m == Approx(known.corners[i].y_m).margin(0.0002));
    }
    for (std::size_t i = 0; i < known.residuals_mm.size(); ++i) {
        CAPTURE(i);
        CHECK(found->tapes[i].residual_mm == Approx(known.residuals_mm[i]).margin(0.02));
        CHECK(found->tapes[i].redundancy == Approx(known.redundancy[i]).margin(0.0003));
        CHECK(std::abs(found->tapes[i].w) == Approx(std::abs(known.w[i])).margin(0.02));
    }
    CHECK(found->vpv == Approx(known.vpv).margin(0.001));
    CHECK(found->area_m2 == Approx(known.area_m2).margin(0.0001));
    CHECK(found->spare_tapes == known.spare);
    CHECK(found->accepted == known.accepted);
}

bool is_any_suspect(const Outline& found) {
    for (const JudgedTape& tape : found.tapes)
        if (tape.suspect) return true;
    return false;
}

} // namespace

TEST_CASE("a clean taped rectangle comes out as scipy adjusts it (case 5a, computed)") {
    check_against(kRectangle, {{{0, 0}, {6.0032, 0}, {6.0064, 3.9975}, {0.0062, 4.0025}},
                               {-0.81, -0.54, -0.82, -0.54, 0.98, 0.98},
                               {0.173, 0.077, 0.1732, 0.0768, 0.2502, 0.2498},
                               {-0.653, -0.653, -0.653, -0.653, 0.653, 0.653},
                               0.4264,
                               24.0065,
                               1,
                               true});
}

TEST_CASE("a 50 mm slip in a diagonal is not accepted, and six equal w say that nobody can tell which (case "
          "5b, computed)") {
    const OutlineInput slipped = with_tape(kRectangle, 4, 7.264);
    check_against(slipped, {{{0, 0}, {6.0136, 0}, {6.0468, 4.0043}, {0.0361, 4.0092}},
                            {9.61, 6.41, 9.61, 6.4, -11.59, -11.5},
                            {0.173, 0.077, 0.173, 0.077, 0.2519, 0.2481},
                            {7.698, 7.698, 7.698, 7.698, -7.698, -7.698},
                            59.2527,
                            24.0891,
                            1,
                            false});
    const Result<Outline> found = outline(slipped);
    CHECK_FALSE(found->can_locate);
    CHECK_FALSE(is_any_suspect(*found));
    for (const JudgedTape& tape : found->tapes) CHECK(tape.perhaps);
    REQUIRE(found->next_tape.has_value()); // taping any one length again would begin to tell
}

TEST_CASE("five corners with all ten tapes come out as scipy adjusts them (case 5c, computed)") {
    check_against(kFiveCorners,
                  {{{0, 0}, {7.2011, 0}, {7.2009, 3.0961}, {4.0022, 5.0}, {0.0023, 4.4029}},
                   {-0.87, -0.92, -0.55, 0.25, -0.12, 1.29, -0.5, 0.76, 0.54, -0.72},
                   {0.2217, 0.19, 0.3952, 0.3643, 0.1248, 0.318, 0.2508, 0.3302, 0.3886, 0.4165},
                   {-0.614, -0.702, -0.293, 0.137, -0.11, 0.76, -0.333, 0.438, 0.288, -0.371},
                   0.584,
                   31.7593,
                   3,
                   true});
    CHECK(outline(kFiveCorners)->can_locate);
    CHECK_FALSE(is_any_suspect(*outline(kFiveCorners)));
    CHECK_FALSE(outline(kFiveCorners)->next_tape.has_value());
}

TEST_CASE("with three spare tapes the diagonal that reads 100 mm long is named, and the slip with it (case "
          "5d, computed)") {
    const OutlineInput slipped = with_tape(kFiveCorners, 7, 6.035);
    check_against(slipped, {{{0, 0}, {7.2044, 0}, {7.1752, 3.1151}, {3.9649, 5.0533}, {-0.0194, 4.3946}},
                            {2.37, 18.21, 27.04, -5.62, -8.35, -14.82, 18.12, -32.45, 17.52, -9.53},
                            {0.2208, 0.1922, 0.3935, 0.3605, 0.1283, 0.3157, 0.2538, 0.3326, 0.3878, 0.4147},
                            {1.684, 13.846, 14.369, -3.12, -7.774, -8.793, 11.988, -18.751, 9.376, -4.933},
                            352.0181,
                            31.936,
                            3,
                            false});
    const Result<Outline> found = outline(slipped);
    CHECK(found->can_locate);
    for (std::size_t i = 0; i < found->tapes.size(); ++i) CHECK(found->tapes[i].suspect == (i == 7));
    REQUIRE(found->tapes[7].slips.size() == 1);
    CHECK(found->tapes[7].slips[0].kind == SlipKind::hundred_mm);
    CHECK(found->tapes[7].slips[0].would_be_m == Approx(5.935));
    CHECK(found->tapes[7].m == 6.035); // suggested, never changed
}

TEST_CASE("without the wrong diagonal the true shape is back (case 5d without BD, computed)") {
    OutlineInput in = kFiveCorners;
    in.tapes.erase(in.tapes.begin() + 7);
    const Result<Outline> found = outline(in);
    CHECK(found->vpv == Approx(0.3918).margin(0.0001));
    CHECK(found->spare_tapes == 2);
    CHECK(found->area_m2 == Approx(31.7633).margin(0.0001));
    CHECK(found->accepted);
    CHECK(*outline(kFiveCorners)->tapes[7].from_others_m == Approx(5.9373).margin(0.0001));
}

TEST_CASE(
    "the small dormer's BD follows from its other five tapes as 3826.8 mm, misclosure under 1 mm (by hand)") {
    const OutlineInput dormer{{"A", "B", "C", "D"},
                              {{"A", "B", 3.200},
                               {"B", "C", 2.100},
                               {"C", "D", 3.199},
                               {"D", "A", 2.101},
                               {"A", "C", 3.828},
                               {"B", "D", 3.827}}};
    const Result<Outline> found = outline(dormer);
    CHECK(*found->tapes[5].from_others_m * 1000 == Approx(3826.8).margin(0.05));
    REQUIRE(found->misclosure_mm.has_value());
    CHECK(*found->misclosure_mm < 1);
    CHECK(found->area_m2 == Approx(6.72).margin(0.005));
    CHECK(found->perimeter_m == Approx(10.6).margin(0.005));
}

TEST_CASE("the inner angles of the outline are given corner by corner") {
    const std::vector<double> angles = outline(kRectangle)->angles_deg;
    REQUIRE(angles.size() == 4);
    for (const double angle : angles) CHECK(angle == Approx(90).margin(0.2));
}

TEST_CASE("Brahmagupta's quadrilateral of sides 25, 39, 60, 52 and diagonals 56 and 63 has an area of 1764 "
          "(published)") {
    // Tenfold smaller, in metres: every length is exact, so nothing is left over.
    const OutlineInput in{{"A", "B", "C", "D"},
                          {{"A", "B", 2.5},
                           {"B", "C", 3.9},
                           {"C", "D", 6.0},
                           {"D", "A", 5.2},
                           {"A", "C", 5.6},
                           {"B", "D", 6.3}}};
    const Result<Outline> found = outline(in);
    CHECK(found->area_m2 == Approx(17.64).margin(1e-9));
    CHECK(found->vpv == Approx(0).margin(1e-12));
    CHECK(*found->misclosure_mm == Approx(0).margin(1e-6));
}

TEST_CASE("without a spare tape nothing is checked: accepted, no w, no misclosure, and a tape to take next") {
    OutlineInput in = kRectangle;
    in.tapes.pop_back();
    const Result<Outline> found = outline(in);
    CHECK(found->spare_tapes == 0);
    CHECK(found->accepted);
    CHECK_FALSE(found->misclosure_mm.has_value());
    CHECK_FALSE(found->tapes[0].from_others_m.has_value());
    REQUIRE(found->next_tape.has_value());
    CHECK(found->next_tape->from + found->next_tape->to == "BD");
}
