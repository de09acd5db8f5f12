// The roof from above: to scale, everything named, nothing drawn over something else.
#include "paper/plan.h"

#include "base/text.h"
#include "paper/inspection.h"
#include "paper/plan_sheet.h"
#include "tests/paper/papered.h"

#include <algorithm>
#include <cmath>

using namespace undersheet;
using namespace undersheet::paper;
using test::Papered;
using test::Site;

namespace {

// A roof of these sides, the tapes from A to every corner besides.
Site roof_of(const trade::Polygon& corners) {
    Site site;
    site.opened();
    const auto letter = [](std::size_t i) { return std::string(1, static_cast<char>('A' + i)); };
    const auto tape = [&](std::size_t a, std::size_t b) {
        const double m = trade::distance_m(corners[a], corners[b]);
        site.record("tape", "08:10", R"({"m":)" + shortest(m, 3) + "}", letter(a) + letter(b));
    };
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const std::size_t next = (i + 1) % corners.size();
        const char* kind = i == 0 ? "gutter" : i % 2 == 0 ? "wall" : "kerb";
        site.record("edge", "08:05", std::string(R"({"kind":")") + kind + "\"}", letter(i) + letter(next));
        tape(i, next);
    }
    for (std::size_t i = 1; i < corners.size(); ++i)
        for (std::size_t j = i + 2; j < corners.size(); ++j) tape(i, j);
    for (std::size_t i = 2; i + 1 < corners.size(); ++i) tape(0, i);
    return site;
}

const trade::Polygon kEll{{0, 0}, {4.2, 0}, {4.2, 1.2}, {6, 1.2}, {6, 4.8}, {0, 4.8}};
// Eleven corners: a bay, a step and a cut-off corner.
const trade::Polygon kMany{{0, 0},   {2, 0},     {2.5, -0.6}, {3.5, -0.6}, {4, 0}, {5, 0},
                           {5, 1.5}, {6.2, 1.5}, {6.2, 3.2},  {5.4, 4},    {0, 4}};

std::vector<Label> labels_of(const Drawing& drawing) {
    std::vector<Label> labels;
    for (const Shape& shape : drawing.shapes)
        if (const auto* label = std::get_if<Label>(&shape)) labels.push_back(*label);
    return labels;
}

Box box_of(const Label& label) {
    const double wide = width_of(label.text, label.size_mm);
    const double left = label.anchor == Anchor::start ? label.at.x_mm
                        : label.anchor == Anchor::end ? label.at.x_mm - wide
                                                      : label.at.x_mm - wide / 2;
    return {left, label.at.y_mm - 0.7 * label.size_mm, left + wide, label.at.y_mm};
}

std::vector<std::string> covered(const Drawing& drawing) {
    std::vector<std::string> both;
    const auto labels = labels_of(drawing);
    for (std::size_t i = 0; i < labels.size(); ++i) {
        for (std::size_t j = i + 1; j < labels.size(); ++j) {
            const Box a = box_of(labels[i]), b = box_of(labels[j]);
            if (a.left_mm < b.right_mm && b.left_mm < a.right_mm && a.top_mm < b.bottom_mm &&
                b.top_mm < a.bottom_mm)
                both.push_back(labels[i].text + " over " + labels[j].text);
        }
    }
    return both;
}

std::vector<std::string> off_the_sheet(const Drawing& drawing) {
    std::vector<std::string> off;
    for (const Label& label : labels_of(drawing)) {
        const Box box = box_of(label);
        if (box.left_mm < 0 || box.right_mm > drawing.width_mm || box.top_mm < 0 ||
            box.bottom_mm > drawing.height_mm)
            off.push_back(label.text);
    }
    return off;
}

// Lines that end in the middle of letters.
std::vector<std::string> struck_through(const Drawing& drawing) {
    std::vector<std::string> struck;
    for (const Shape& shape : drawing.shapes) {
        const auto* line = std::get_if<Path>(&shape);
        if (line == nullptr || line->is_closed) continue;
        const Spot end = line->spots.back();
        for (const Label& label : labels_of(drawing)) {
            const Box box = box_of(label);
            if (end.x_mm > box.left_mm && end.x_mm < box.right_mm && end.y_mm > box.top_mm &&
                end.y_mm < box.bottom_mm)
                struck.push_back(label.text);
        }
    }
    return struck;
}

bool has_words(const Drawing& drawing, const std::string& words) {
    return std::find(drawing.words.begin(), drawing.words.end(), words) != drawing.words.end();
}

} // namespace

TEST_CASE("a plan names every corner and every edge with what it is and how long, and the low side") {
    const Papered papered(roof_of(kEll));
    const auto plan = roof_plan(papered.making, plan_of_roof(papered.making));
    REQUIRE(plan.has_value());
    std::vector<std::string> letters;
    for (const Label& label : labels_of(*plan))
        if (label.text.size() == 1) letters.push_back(label.text);
    CHECK(letters == std::vector<std::string>{"A", "B", "C", "D", "E", "F"});
    CHECK(has_words(*plan, "edge AB gutter, 4.20 m, the low side"));
    CHECK(has_words(*plan, "edge CD wall, 1.80 m"));
    CHECK(has_words(*plan, "edge DE kerb, 3.60 m"));
}

TEST_CASE("lengths on paper are lengths of the roof at the scale that is printed") {
    const Papered papered(roof_of(kEll));
    const auto plan = roof_plan(papered.making, plan_of_roof(papered.making));
    REQUIRE(plan.has_value());
    const auto& outline = std::get<Path>(plan->shapes.front()).spots;
    REQUIRE(outline.size() == kEll.size());
    const auto labels = labels_of(*plan);
    CHECK(std::any_of(labels.begin(), labels.end(), [](const Label& label) {
        return label.text == "2 m; 1:50 where it is printed 176 mm wide";
    }));
    for (std::size_t i = 0; i < kEll.size(); ++i) {
        const Spot a = outline[i], b = outline[(i + 1) % kEll.size()];
        const double on_paper_mm = std::hypot(b.x_mm - a.x_mm, b.y_mm - a.y_mm);
        CHECK(on_paper_mm ==
              Approx(1000 * trade::distance_m(kEll[i], kEll[(i + 1) % kEll.size()]) / 50).margin(0.01));
    }
    CHECK(outline[0].y_mm > outline[5].y_mm); // A is at the bottom left
    CHECK(outline[0].x_mm < outline[1].x_mm);
}

TEST_CASE("on an L-shaped and on a many-cornered roof no label covers another or leaves the sheet") {
    for (const auto& corners : {kEll, kMany}) {
        Site site = roof_of(corners);
        int number = 0;
        for (double x_m = 0; x_m <= 6; x_m += 1)
            for (double y_m = 0; y_m <= 4; y_m += 1)
                if (trade::contains(corners, trade::Point{x_m, y_m}))
                    site.record("level", "08:30", R"({"run":"1","z_mm":)" + std::to_string(++number) + "}",
                                shortest(x_m, 2) + "," + shortest(y_m, 2));
        site.record("opening", "08:40",
                    R"({"label":"R1","type":"rooflight","size_x_mm":1000,"size_y_mm":800})", "2.10,2");
        const Papered papered(site);
        REQUIRE(papered.job.roof.outline.has_value());
        const auto plan = roof_plan(papered.making, plan_of_levels(papered.making));
        REQUIRE(plan.has_value());
        CHECK(covered(*plan) == std::vector<std::string>{});
        CHECK(off_the_sheet(*plan) == std::vector<std::string>{});
        CHECK(labels_of(*plan).size() > 2 * corners.size() + static_cast<std::size_t>(number));
    }
}

TEST_CASE("forty readings at one place all stand on the plan, none over another") {
    Site site = roof_of(kEll);
    for (int i = 10; i < 50; ++i)
        site.record("moisture", "08:30",
                    R"({"reading_pct":)" + std::to_string(i) + R"(,"label":"M)" + std::to_string(i) + "\"}",
                    "1.00,1.00");
    const Papered papered(site);
    const auto plan = roof_plan(papered.making, plan_of_moisture(papered.making));
    REQUIRE(plan.has_value());
    const auto labels = labels_of(*plan);
    for (int i = 10; i < 50; ++i)
        CHECK(std::count_if(labels.begin(), labels.end(),
                            [&](const Label& label) { return label.text == std::to_string(i); }) == 1);
    CHECK(covered(*plan) == std::vector<std::string>{});
    CHECK(struck_through(*plan) == std::vector<std::string>{});
}

TEST_CASE("the line that leads to a mark crosses no letters, not those that stand on its place either") {
    Drawing drawing;
    const trade::Polygon outline{{0, 0}, {6, 0}, {6, 5}, {0, 5}};
    PlanSheet sheet(drawing, outline, false);
    const Spot centre = sheet.at({3, 2.5});
    sheet.placed(centre, "R1 rooflight", 2.6);
    for (int i = 1; i <= 6; ++i) sheet.placed(centre, "(" + std::to_string(i) + ")", 3);
    std::size_t leaders = 0;
    for (const Shape& shape : drawing.shapes) {
        const auto* line = std::get_if<Path>(&shape);
        if (line == nullptr) continue;
        ++leaders;
        const Spot from = line->spots.front(), to = line->spots.back();
        for (const double share : {0.05, 0.25, 0.5, 0.75, 0.95}) {
            const double x_mm = from.x_mm + (to.x_mm - from.x_mm) * share;
            const double y_mm = from.y_mm + (to.y_mm - from.y_mm) * share;
            for (const Label& label : labels_of(drawing)) {
                const Box box = box_of(label);
                CAPTURE(label.text, x_mm, y_mm);
                CHECK_FALSE(
                    (box.left_mm < x_mm && x_mm < box.right_mm && box.top_mm < y_mm && y_mm < box.bottom_mm));
            }
        }
    }
    CHECK(leaders > 0);
}

TEST_CASE("the numbers on the plan are those of the findings, at their places, and said in words") {
    const Papered papered(test::troubled_roof(), test::kHandedOver);
    const auto about = plan_of_findings(papered.making);
    REQUIRE(!about.marks.empty());
    const auto plan = roof_plan(papered.making, about);
    REQUIRE(plan.has_value());
    for (const PlanMark& mark : about.marks) {
        CHECK(mark.says.starts_with(mark.text + ": "));
        CHECK(has_words(*plan, mark.says));
    }
}

TEST_CASE("a roof that was not taped has no plan, and the paper says which tape is missing") {
    Site site;
    site.opened();
    const Papered bare(site);
    CHECK(!roof_plan(bare.making, plan_of_roof(bare.making)));
    for (const char* edge : {"AB", "BC", "CD", "DA"})
        site.record("edge", "08:05", R"({"kind":"kerb"})", edge);
    site.record("tape", "08:10", R"({"m":3})", "AB");
    const Papered open(site);
    Making making(open.job, open.judgement, open.setting, "inspection.name");
    add_plan(making, plan_of_roof(making));
    const auto& paragraph = std::get<Paragraph>(making.paper.blocks.back());
    CHECK(paragraph.text.words() == "There is no plan: " + open.job.roof.outline_says + ".");
    CHECK(!open.job.roof.outline_says.empty());
}
