#include "trade/outline.h"

#include <catch2/catch.hpp>

#include <random>

using namespace undersheet;
using namespace undersheet::trade;

namespace {

struct ReferenceTape {
    std::size_t from, to;
    double m, sd_mm;
};
struct ReferenceCorner {
    double x_m, y_m, sd_mm;
};
struct Reference {
    const char* name;
    std::vector<ReferenceTape> tapes;
    std::vector<ReferenceCorner> corners;
    std::vector<double> residuals_mm, redundancy;
    double vpv, area_m2, area_sd_m2;
};
const Reference kReferences[] = {
#include "fixtures/reference/outlines.inc"
};
constexpr unsigned kSeed = 20260611;

std::string label(std::size_t i) { return std::string(1, static_cast<char>('A' + i)); }

OutlineInput input_of(const Reference& reference, double scale = 1) {
    OutlineInput in;
    for (std::size_t i = 0; i < reference.corners.size(); ++i) in.corners.push_back(label(i));
    for (const ReferenceTape& tape : reference.tapes)
        in.tapes.push_back({label(tape.from), label(tape.to), tape.m * scale, tape.sd_mm * scale});
    return in;
}

// The same plan seen in a mirror: the corners keep their letters and are named the other way round from A.
OutlineInput mirrored(OutlineInput in) {
    std::reverse(in.corners.begin() + 1, in.corners.end());
    return in;
}

} // namespace

TEST_CASE("an L, a T, a hexagon and a dart find their own way in and agree with scipy (computed)") {
    for (const Reference& reference : kReferences) {
        CAPTURE(reference.name);
        const Result<Outline> found = outline(input_of(reference));
        REQUIRE(found.ok());
        for (std::size_t i = 0; i < reference.corners.size(); ++i) {
            CHECK(found->corners[i].x_m == Approx(reference.corners[i].x_m).margin(2e-5));
            CHECK(found->corners[i].y_m == Approx(reference.corners[i].y_m).margin(2e-5));
            CHECK(found->corners[i].sd_mm == Approx(reference.corners[i].sd_mm).margin(0.01));
        }
        for (std::size_t i = 0; i < reference.tapes.size(); ++i) {
            CHECK(found->tapes[i].residual_mm == Approx(reference.residuals_mm[i]).margin(0.002));
            CHECK(found->tapes[i].redundancy == Approx(reference.redundancy[i]).margin(0.0002));
        }
        CHECK(found->vpv == Approx(reference.vpv).margin(0.0002));
        CHECK(found->area_m2 == Approx(reference.area_m2).margin(2e-5));
        CHECK(found->area_sd_m2 == Approx(reference.area_sd_m2).margin(2e-5));
    }
}

TEST_CASE("redundancy numbers add up to the spare tapes whatever the shape") {
    for (const Reference& reference : kReferences) {
        const Result<Outline> found = outline(input_of(reference));
        double sum = 0;
        for (const JudgedTape& tape : found->tapes) sum += tape.redundancy;
        CHECK(sum == Approx(found->spare_tapes).margin(1e-9));
    }
}

TEST_CASE(
    "a plan twice as large with tapes twice as doubtful has residuals twice as large and the same verdict") {
    for (const Reference& reference : kReferences) {
        const Result<Outline> small = outline(input_of(reference));
        const Result<Outline> large = outline(input_of(reference, 2));
        CHECK(large->vpv == Approx(small->vpv).margin(1e-6));
        CHECK(large->area_m2 == Approx(4 * small->area_m2));
        for (std::size_t i = 0; i < small->tapes.size(); ++i)
            CHECK(large->tapes[i].residual_mm == Approx(2 * small->tapes[i].residual_mm).margin(1e-4));
    }
}

TEST_CASE("a plan and its mirror image have the same size, residuals and doubts") {
    for (const Reference& reference : kReferences) {
        CAPTURE(reference.name);
        const Result<Outline> plan = outline(input_of(reference));
        const Result<Outline> image = outline(mirrored(input_of(reference)));
        REQUIRE(image.ok());
        CHECK(image->area_m2 == Approx(plan->area_m2));
        CHECK(image->area_sd_m2 == Approx(plan->area_sd_m2).epsilon(1e-6));
        CHECK(image->vpv == Approx(plan->vpv).margin(1e-6));
    }
}

TEST_CASE("it makes no difference in which order the tapes are listed or from which end they were read") {
    for (const Reference& reference : kReferences) {
        OutlineInput in = input_of(reference);
        const double area_m2 = outline(in)->area_m2;
        std::reverse(in.tapes.begin(), in.tapes.end());
        for (TapedLength& tape : in.tapes) std::swap(tape.from, tape.to);
        CHECK(outline(in)->area_m2 == Approx(area_m2).epsilon(1e-9));
    }
}

TEST_CASE("adding a good tape never widens the doubt about a corner or about the area") {
    INFO("seed " << kSeed);
    std::mt19937 random(kSeed);
    for (const Reference& reference : kReferences) {
        const OutlineInput in = input_of(reference);
        const Result<Outline> before = outline(in);
        std::uniform_int_distribution<std::size_t> corner(0, in.corners.size() - 1);
        for (int i = 0; i < 8; ++i) {
            const std::size_t a = corner(random);
            const std::size_t b = (a + 1 + corner(random) % (in.corners.size() - 1)) % in.corners.size();
            OutlineInput more = in;
            const Polygon at = polygon(*before);
            more.tapes.push_back({label(a), label(b), distance_m(at[a], at[b])});
            const Result<Outline> after = outline(more);
            CHECK(after->area_sd_m2 <= before->area_sd_m2 * (1 + 1e-9));
            for (std::size_t k = 0; k < in.corners.size(); ++k)
                CHECK(after->corners[k].sd_mm <= before->corners[k].sd_mm * (1 + 1e-9) + 1e-9);
        }
    }
}

TEST_CASE("on a roof of 12 corners and on one of 16 a tape that is a metre wrong is named, and no other") {
    for (const std::size_t n : {std::size_t{12}, std::size_t{16}}) {
        OutlineInput in;
        Polygon star;
        for (std::size_t i = 0; i < n; ++i) {
            const double angle = 2 * 3.14159265358979323846 * static_cast<double>(i) / static_cast<double>(n);
            const double radius_m = i % 2 == 0 ? 5.1 : 6;
            star.push_back({radius_m * std::cos(angle), radius_m * std::sin(angle)});
            in.corners.push_back("C" + std::to_string(i));
        }
        for (const std::size_t step : {std::size_t{1}, std::size_t{2}, n / 2 - 1})
            for (std::size_t i = 0; i < n; ++i) {
                const std::size_t j = (i + step) % n;
                in.tapes.push_back({in.corners[i], in.corners[j], distance_m(star[i], star[j])});
            }
        in.tapes[n + 3].m += 1;
        const Result<Outline> found = outline(in);
        REQUIRE(found.ok());
        for (std::size_t i = 0; i < found->tapes.size(); ++i) {
            INFO(n << " corners, tape " << i);
            CHECK(found->tapes[i].suspect == (i == n + 3));
        }
        CHECK(*found->tapes[n + 3].from_others_m == Approx(in.tapes[n + 3].m - 1).margin(1e-5));
    }
}

TEST_CASE("a length taped twice counts as a spare tape and both readings are judged") {
    OutlineInput in = input_of(kReferences[3]);
    in.tapes.push_back({"A", "B", 5.206});
    const Result<Outline> found = outline(in);
    CHECK(found->spare_tapes == 2);
    CHECK(found->tapes[0].redundancy > 0.4); // each checks the other
    CHECK(found->tapes[6].residual_mm < 0);
}
