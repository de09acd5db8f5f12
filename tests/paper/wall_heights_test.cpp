#include "paper/wall_heights.h"

#include "tests/paper/troubled_roof.h"

#include <algorithm>

using namespace undersheet;
using namespace undersheet::paper;

namespace {

// 3.20 by 2.10 m with a wall at CD, which runs from C to D, and no height yet.
test::Site walled(const std::string& abutment = "brick") {
    test::Site site;
    site.opened();
    for (const auto& [place, kind] :
         {std::pair{"AB", "gutter"}, {"BC", "kerb"}, {"CD", "wall"}, {"DA", "kerb"}})
        site.record("edge", "08:10", std::string(R"({"kind":")") + kind + R"("})", place);
    for (const auto& [place, m] :
         {std::pair{"AB", "3.2"}, {"BC", "2.1"}, {"CD", "3.2"}, {"DA", "2.1"}, {"AC", "3.828"}})
        site.record("tape", "08:20", std::string(R"({"m":)") + m + "}", place);
    site.record("abutment", "08:30", R"({"type":")" + abutment + R"("})", "CD");
    return site;
}

std::optional<Drawing> drawn(const test::Site& site, const char* edge) {
    const auto job = site.fold("12:00");
    const auto judged = job::judge(job, test::default_method(), test::default_kinds());
    const auto setting = test::test_setting();
    const Making making(job, judged, setting, "inspection.name");
    return wall_heights(making, *job.roof.edge(edge));
}

double right_of(const Drawing& drawing, const std::string& text) {
    for (const Shape& shape : drawing.shapes)
        if (const auto* label = std::get_if<Label>(&shape); label != nullptr && label->text == text)
            return label->at.x_mm;
    return -1;
}

} // namespace

TEST_CASE(
    "every height along a wall is drawn at its place and said in words, with the least that is asked for") {
    auto site = walled();
    site.record("chase", "09:00", R"({"height_mm":165})", "CD+0.80");
    site.record("chase", "09:01", R"({"height_mm":152})", "CD+2.40");
    const auto drawing = drawn(site, "CD");
    REQUIRE(drawing);
    CHECK(drawing->title == "Wall CD, heights along it");
    CHECK(drawing->words == std::vector<std::string>{"dashed: at least 150 mm, BS 6229:2018",
                                                     "165 mm at edge CD, 0.80 m from C",
                                                     "152 mm at edge CD, 2.40 m from C"});
    const double c = right_of(*drawing, "C"), d = right_of(*drawing, "D");
    CHECK(right_of(*drawing, "165") == Approx(c + (d - c) * 0.25).margin(0.2));
    CHECK(right_of(*drawing, "152") == Approx(c + (d - c) * 0.75).margin(0.2));
}

TEST_CASE("at a door threshold the lower limit is drawn") {
    auto site = walled("door_threshold");
    site.record("chase", "09:00", R"({"height_mm":90})", "CD+0.80");
    const auto drawing = drawn(site, "CD");
    REQUIRE(drawing);
    CHECK(drawing->words.front().starts_with("dashed: at least 75 mm"));
}

TEST_CASE("figures that would cover one another are left to the words") {
    auto site = walled();
    site.record("chase", "09:00", R"({"height_mm":165})", "CD+0.80");
    site.record("chase", "09:01", R"({"height_mm":166})", "CD+0.82");
    const auto drawing = drawn(site, "CD");
    REQUIRE(drawing);
    CHECK(right_of(*drawing, "165") > 0);
    CHECK(right_of(*drawing, "166") < 0);
    CHECK(drawing->words.size() == 3);
}

TEST_CASE("a wall without a height, and a roof that was not taped, have no drawing") {
    CHECK_FALSE(drawn(walled(), "CD"));
    test::Site site;
    site.opened();
    for (const auto& [place, kind] :
         {std::pair{"AB", "gutter"}, {"BC", "kerb"}, {"CD", "wall"}, {"DA", "kerb"}})
        site.record("edge", "08:10", std::string(R"({"kind":")") + kind + R"("})", place);
    site.record("chase", "09:00", R"({"height_mm":165})", "CD+0.80");
    CHECK_FALSE(drawn(site, "CD"));
}
