// Where the photographs of a paper were taken, and which way is north.
#include "paper/photographs.h"

#include "base/text.h"
#include "paper/plan.h"
#include "paper/text.h"
#include "tests/paper/papered.h"

#include <algorithm>

using namespace undersheet;
using namespace undersheet::paper;
using test::Papered;
using test::Site;

namespace {

void photograph(Site& site, char name, const char* shows, const char* place) {
    const std::string hash(64, name);
    site.record("photo", "08:20", R"({"sha256":")" + hash + R"(","media":"jpeg","shows":")" + shows + "\"}",
                place);
}

template <class T>
std::vector<T> blocks_of(const Document& paper) {
    std::vector<T> found;
    for (const Block& block : paper.blocks)
        if (const auto* one = std::get_if<T>(&block)) found.push_back(*one);
    return found;
}

std::vector<std::string> labels_of(const Drawing& drawing) {
    std::vector<std::string> texts;
    for (const Shape& shape : drawing.shapes)
        if (const auto* label = std::get_if<Label>(&shape)) texts.push_back(label->text);
    return texts;
}

bool has(const std::vector<std::string>& texts, const std::string& text) {
    return std::find(texts.begin(), texts.end(), text) != texts.end();
}

// The letter N, with the spot and the foot of what points to it.
struct North {
    Spot letter, foot;
};

std::optional<North> north_of(const Drawing& drawing) {
    for (std::size_t i = 0; i + 2 < drawing.shapes.size(); ++i) {
        const auto* letter = std::get_if<Label>(&drawing.shapes[i + 2]);
        const auto* line = std::get_if<Path>(&drawing.shapes[i]);
        if (letter != nullptr && letter->text == "N" && line != nullptr)
            return North{letter->at, line->spots.front()};
    }
    return std::nullopt;
}

std::optional<North> north_when(const std::string& bearing_deg) {
    Site site = test::taped_roof();
    site.record("site", "08:01", R"({"ab_bearing_deg":)" + bearing_deg + "}");
    const Papered papered(site);
    return north_of(*roof_plan(papered.making, plan_of_roof(papered.making)));
}

} // namespace

TEST_CASE("photographs taken on the roof have letters, on the plan and before what they show") {
    Site site = test::taped_roof();
    photograph(site, 'a', "the whole deck", "");
    photograph(site, 'b', "soft board", "1.20,0.60");
    photograph(site, 'c', "gutter end", "B");
    photograph(site, 'd', "the board, cut open", "1.20,0.60");
    Papered papered(site);
    const Photos photos = papered.job.all("photo");
    const auto plan =
        roof_plan(papered.making, with_photographs(papered.making, photos, plan_of_roof(papered.making)));
    REQUIRE(plan);
    CHECK(has(labels_of(*plan), "a c"));
    CHECK(has(labels_of(*plan), "b"));
    CHECK(has(plan->words, "Dashed squares are patches. Small letters are those of the photographs"));

    add_photographs(papered.making, photos, "photographs.none");
    const auto shown = blocks_of<Photographs>(papered.making.paper);
    REQUIRE(shown.size() == 1);
    REQUIRE(shown[0].pictures.size() == 4);
    CHECK(shown[0].pictures[0].caption.starts_with("the whole deck"));
    CHECK(shown[0].pictures[1].caption.starts_with("(a) soft board"));
    CHECK(shown[0].pictures[2].caption.starts_with("(b) gutter end"));
    CHECK(shown[0].pictures[3].caption.starts_with("(c) the board, cut open"));
}

TEST_CASE(
    "a paper with photographs says that the record keeps them as they were taken, one without does not") {
    Site site = test::taped_roof();
    const auto said_in = [](const Site& shown) {
        Papered papered(shown);
        add_photographs(papered.making, papered.job.all("photo"), "photographs.none");
        return render_text(papered.making.paper, papered.making.words);
    };
    CHECK(said_in(site).find("as it was taken") == std::string::npos);
    photograph(site, 'a', "soft board", "AB+0.50");
    CHECK(said_in(site).find("The record keeps every photograph as it was taken") != std::string::npos);
}

TEST_CASE("photographs of no place, or of a roof nobody taped, need no plan and no letters") {
    Site site;
    site.opened();
    photograph(site, 'a', "soft board", "1.20,0.60");
    Papered papered(site);
    const Photos photos = papered.job.all("photo");
    const PlanAbout about = with_photographs(papered.making, photos, plan_of_roof(papered.making));
    CHECK(about.marks.empty());
    CHECK(about.note.empty());
    add_photographs(papered.making, photos, "photographs.none");
    const auto shown = blocks_of<Photographs>(papered.making.paper);
    REQUIRE(shown.size() == 1);
    CHECK(shown[0].pictures[0].caption.starts_with("soft board"));
}

TEST_CASE("small letters go on past z") {
    CHECK(small_letter(0) == "a");
    CHECK(small_letter(25) == "z");
    CHECK(small_letter(26) == "aa");
    CHECK(small_letter(27) == "ab");
    CHECK(small_letter(51) == "az");
    CHECK(small_letter(52) == "ba");
}

// A and B are drawn left and right. On paper down is positive.
TEST_CASE("north is drawn by the compass along the first edge") {
    const auto eastward = north_when("90");
    REQUIRE(eastward);
    CHECK(eastward->letter.y_mm < eastward->foot.y_mm - 5);
    CHECK(eastward->letter.x_mm == Approx(eastward->foot.x_mm));
    const auto northward = north_when("0");
    REQUIRE(northward);
    CHECK(northward->letter.x_mm > northward->foot.x_mm + 5);
    const auto westward = north_when("270");
    REQUIRE(westward);
    CHECK(westward->letter.y_mm > westward->foot.y_mm + 5);
    const auto southward = north_when("180");
    REQUIRE(southward);
    CHECK(southward->letter.x_mm < southward->foot.x_mm - 5);
    const auto north_east = north_when("45");
    REQUIRE(north_east);
    CHECK(north_east->letter.x_mm > north_east->foot.x_mm + 3);
    CHECK(north_east->letter.y_mm < north_east->foot.y_mm - 3);
}

TEST_CASE("a plan says nothing of north where nobody held a compass") {
    const Papered papered(test::taped_roof());
    const auto plan = roof_plan(papered.making, plan_of_roof(papered.making));
    REQUIRE(plan);
    CHECK_FALSE(north_of(*plan));
    CHECK_FALSE(has(labels_of(*plan), "N"));
}
