#include "trade/outline.h"

#include "trade/outline_next.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace undersheet;
using namespace undersheet::trade;

namespace {

const Polygon kEll{{0, 0}, {3.6, 0}, {3.6, 1.5}, {6, 1.5}, {6, 5.1}, {0, 5.1}};
const Polygon kSkew{{0, 0}, {4.3, -0.9}, {5.8, 2.4}, {2.2, 4.1}};

// "AB BC …" of a plan, read without error.
OutlineInput exact(const Polygon& plan, const std::string& pairs) {
    OutlineInput in;
    for (std::size_t i = 0; i < plan.size(); ++i)
        in.corners.push_back(std::string(1, static_cast<char>('A' + i)));
    for (std::size_t i = 0; i + 1 < pairs.size(); i += 3) {
        const auto a = static_cast<std::size_t>(pairs[i] - 'A');
        const auto b = static_cast<std::size_t>(pairs[i + 1] - 'A');
        in.tapes.push_back({in.corners[a], in.corners[b], distance_m(plan[a], plan[b])});
    }
    return in;
}

Fault refusal(const OutlineInput& in) {
    const Result<Outline> found = outline(in);
    REQUIRE_FALSE(found.ok());
    CHECK(found.fault().code == Code::value_impossible);
    return found.fault();
}

OutlineInput four_sides() { return exact(kSkew, "AB BC CD DA AC BD"); }

} // namespace

TEST_CASE("four sides alone leave the roof loose, and a diagonal is what to tape next") {
    CHECK(refusal(exact(kSkew, "AB BC CD DA")).clears == "tape AC next");
}

TEST_CASE("a missing side is asked for before a diagonal") {
    CHECK(refusal(exact(kSkew, "AB BC CD AC")).clears == "tape DA next");
}

TEST_CASE("enough tapes in the wrong places still leave a corner loose") {
    // Nine tapes would do for six corners, but here ABCD has one to spare and EF hangs by too few.
    CHECK(refusal(exact(kEll, "AB BC CD DA AC BD DE EF FA")).detail == "these tapes leave a corner loose");
}

TEST_CASE("the tape asked for next makes the outline whole in the end") {
    std::vector<TapedLine> lines;
    int asked = 0;
    while (const auto pair = missing_tape(7, lines)) {
        lines.push_back({pair->from, pair->to, 1, 1});
        ++asked;
    }
    CHECK(asked == 2 * 7 - 3);
}

TEST_CASE("an L held by sides and a fan of diagonals comes out as the L, with the other shape named") {
    const Result<Outline> found = outline(exact(kEll, "AB BC CD DE EF FA AC AD AE"));
    REQUIRE(found.ok());
    CHECK(found->area_m2 == Approx(27));
    CHECK(found->angles_deg[2] == Approx(270));
    REQUIRE(found->other_shape.has_value()); // corner B could as well be folded in over AC
    CHECK(std::abs(found->other_shape->here_m - found->other_shape->there_m) > 0.1);
}

TEST_CASE("with every length of the L taped no other shape is left") {
    const Result<Outline> found = outline(exact(kEll, "AB BC CD DE EF FA AC AD AE BD BE BF CE CF DF"));
    CHECK(found->area_m2 == Approx(27));
    CHECK_FALSE(found->other_shape.has_value());
    CHECK(found->spare_tapes == 6);
    CHECK(found->can_locate);
}

TEST_CASE("two shapes that nothing decides between are refused with the tape that decides") {
    // D hangs on C and A and can point out or in: both plans have one inward corner and no right angles.
    const Polygon plan{{0, 0}, {4.4, 0.4}, {1.9, 1.7}, {2.6, 4.6}, {-1.2, 2.9}};
    const Fault fault = refusal(exact(plan, "AB BC CD DE EA AC AD"));
    CHECK(fault.detail == "these tapes fit two different roofs");
    CHECK(fault.clears.rfind("tape ", 0) == 0);
}

TEST_CASE("a T whose stem is taped only from the line it stands on may as well be folded up into a U") {
    // A and B are held by C, D, G and H alone, and those four lie in one line.
    const Polygon tee{{0, 0},     {2.4, 0},    {2.4, 1.8},  {4.1, 1.8},
                      {4.1, 4.4}, {-1.5, 4.4}, {-1.5, 1.8}, {0, 1.8}};
    const std::string pairs = "AB BC CD DE EF FG GH HA AC AD AG BH CH CE DF DG EG FH";
    CHECK(refusal(exact(tee, pairs)).detail == "these tapes fit two different roofs");
    CHECK(outline(exact(tee, pairs + " AE"))->area_m2 == Approx(18.88));
}

TEST_CASE("a side longer than the way round is named with its triangle") {
    OutlineInput in = four_sides();
    in.tapes.pop_back(); // no spare tape: nothing can absorb it
    in.tapes[0].m = 16.0;
    const Fault fault = refusal(in);
    CHECK(fault.where == "tapes[0].m");
    CHECK(fault.detail.find("way round by C") != std::string::npos);
}

TEST_CASE("a corner that hangs on two tapes in one line is not held") {
    // C on the straight side from B to D: the tapes BC and CD say nothing about sideways.
    const Polygon plan{{0, 0}, {5, 0}, {5, 2}, {5, 4}, {0, 4}};
    const Fault fault = refusal(exact(plan, "AB BC CD DE EA BD AD BE"));
    CHECK(fault.where == "tapes");
}

TEST_CASE("an outline is refused by field: labels, ends, lengths, doubts") {
    OutlineInput in = four_sides();
    in.corners[2] = "B";
    CHECK(refusal(in).where == "corners[2]");
    in = four_sides();
    in.corners[1].clear();
    CHECK(refusal(in).where == "corners[1]");
    in = four_sides();
    in.tapes[1].to = "Q";
    CHECK(refusal(in).where == "tapes[1].to");
    in = four_sides();
    in.tapes[2].to = "C";
    CHECK(refusal(in).where == "tapes[2].to");
    in = four_sides();
    in.tapes[3].sd_mm = -1;
    CHECK(refusal(in).where == "tapes[3].sd_mm");
    in = four_sides();
    in.sd_mm = 0;
    CHECK(refusal(in).where == "sd_mm");
    CHECK(refusal({{"A", "B"}, {{"A", "B", 3}}}).where == "corners");
}

TEST_CASE("200 tapes tell a roof, 201 are too many to hold each against all others") {
    OutlineInput in = four_sides();
    while (in.tapes.size() < 199) in.tapes.push_back(in.tapes[in.tapes.size() - 6]);
    CHECK(outline(in).ok());
    in.tapes.push_back(in.tapes[0]);
    CHECK(outline(in).ok());
    in.tapes.push_back(in.tapes[0]);
    CHECK(refusal(in).where == "tapes");
}

TEST_CASE("a taped length is over 0 and at most 200 m, and a number") {
    for (const double m : {0.0, -3.0, 200.001, std::nan(""), HUGE_VAL}) {
        OutlineInput in = four_sides();
        in.tapes[4].m = m;
        CHECK(refusal(in).where == "tapes[4].m");
    }
    const Polygon field{{0, 0}, {160, 0}, {160, 120}, {0, 120}};
    CHECK(outline(exact(field, "AB BC CD DA AC BD"))->area_m2 == Approx(19200)); // the diagonals are 200 m
}
