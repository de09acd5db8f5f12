// What lies on the roof with an extent: patches and standing water, to scale and in words.
#include "paper/plan.h"
#include "tests/paper/papered.h"

#include <catch2/catch.hpp>

using namespace undersheet;
using namespace undersheet::paper;
using test::Papered;
using test::Site;

namespace {

// With a rooflight in the middle of it.
Site opened() {
    Site site = test::taped_roof();
    site.record("opening", "08:15", R"({"label":"R1","type":"rooflight","size_x_mm":800,"size_y_mm":800})",
                "2.00,1.50");
    return site;
}

// Falling to AB, but for a hollow at 1,1 whose lowest way out lies higher by so much.
Site with_hollow(int depth_mm) {
    Site site = opened();
    for (int y = 0; y <= 3; ++y)
        for (int x = 0; x <= 4; ++x) {
            const int z_mm = x == 1 && y == 1 ? -depth_mm : 20 * y;
            site.record("level", "08:30", R"({"run":"1","z_mm":)" + std::to_string(z_mm) + "}",
                        std::to_string(x) + ".00," + std::to_string(y) + ".00");
        }
    return site;
}

bool says(const PlanAbout& about, const std::string& words) {
    return about.note.find(words) != std::string::npos;
}

} // namespace

TEST_CASE("each patch that is to be there is a dashed square on its corner, and is named") {
    const Papered papered(opened());
    const PlanAbout about = plan_of_roof(papered.making);
    REQUIRE(about.shapes.size() == 6); // C and D at the wall, and four at the rooflight
    std::vector<trade::Point> middles;
    for (const PlanShape& shape : about.shapes) {
        REQUIRE(shape.points.size() == 4);
        CHECK(trade::distance_m(shape.points[0], shape.points[1]) == Approx(0.225)); // as wide as the tape
        middles.push_back(trade::centre(shape.points));
    }
    const auto is_one = [&](trade::Point at) {
        return std::count_if(middles.begin(), middles.end(),
                             [&](trade::Point middle) { return trade::distance_m(middle, at) < 0.001; }) == 1;
    };
    for (const trade::Point at : {trade::Point{4, 3}, {0, 3}, {1.6, 1.1}, {2.4, 1.1}, {2.4, 1.9}, {1.6, 1.9}})
        CHECK(is_one(at));
    CHECK(about.shapes.back().says == "patches at C, D, R1-1, R1-2, R1-3, R1-4");
    CHECK(says(about, "Dashed squares are patches."));
    const auto plan = roof_plan(papered.making, about);
    REQUIRE(plan);
    const auto dashed = std::count_if(plan->shapes.begin(), plan->shapes.end(), [](const Shape& shape) {
        const auto* path = std::get_if<Path>(&shape);
        return path != nullptr && path->stroke == Stroke::dashed && path->is_closed;
    });
    CHECK(dashed == 6);
}

TEST_CASE("a patch that was left out is not drawn") {
    Site site = opened();
    site.record("leave_out", "09:00",
                R"({"why":"the wall comes next year","agreed_by":"c","whose":"the builder"})", "",
                "patches/C");
    const Papered papered(site);
    CHECK(plan_of_roof(papered.making).shapes.size() == 5);
}

TEST_CASE("water too deep to pass is drawn where it ends on the deck, shallower water is not") {
    const Papered passed(with_hollow(5)); // the method's limit
    const PlanAbout shallow = plan_of_levels(passed.making);
    CHECK(shallow.shapes.empty());
    CHECK_FALSE(says(shallow, "dashed"));
    const Papered papered(with_hollow(6));
    const PlanAbout deep = plan_of_levels(papered.making);
    REQUIRE(deep.shapes.size() == 1); // one line round the hollow, or to the edge and back
    CHECK(says(deep, "Inside a dashed line on the roof water would stand."));
    for (const trade::Point at : deep.shapes[0].points) {
        CHECK(at.y_m <= 2); // the levels there are 20 mm and more above the water
        CHECK(at.x_m <= 2);
    }
    CHECK(roof_plan(papered.making, deep).has_value());
}

TEST_CASE("boards with a place on the roof stand on a plan by their names, others are in the table only") {
    Site site = opened();
    site.record("board", "08:40", R"({"label":"B1","thickness_mm":18})", "1.20,0.60");
    site.record("board", "08:41", R"({"label":"B2","thickness_mm":18})", "B2");
    const Papered papered(site);
    const PlanAbout about = plan_of_boards(papered.making);
    REQUIRE(about.marks.size() == 1);
    CHECK(about.marks[0].text == "B1");
    const auto words = roof_plan(papered.making, about)->words;
    CHECK(std::find(words.begin(), words.end(), "B1: 1.20 m along AB, 0.60 m up the roof") != words.end());
}
