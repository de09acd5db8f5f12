// A small dormer taken off by hand (practice; prices invented), and how a take-off grows with its roof.
#include "tests/job/takeoff_site.h"

using namespace undersheet;
using test::amount;
using test::bought;
using test::line;
using test::Site;
using test::taken_off;
using test::trims;

namespace {

const test::Places kEdges{{"AB", "gutter"}, {"BC", "kerb"}, {"CD", "wall"}, {"DA", "kerb"}};

Site rectangle(double x_m, double y_m, const std::string& wall, const test::Places& edges = kEdges) {
    Site site;
    site.opened();
    test::record_edges(site, edges);
    test::tape_all(site, {{'A', {0, 0}}, {'B', {x_m, 0}}, {'C', {x_m, y_m}}, {'D', {0, y_m}}});
    if (!wall.empty()) site.record("abutment", "09:08", R"({"type":")" + wall + R"("})", "CD");
    return site;
}

const job::TakeOff& dormer() {
    static const job::TakeOff made = taken_off(rectangle(3.2, 2.1, "pitched_roof"));
    return made;
}

} // namespace

TEST_CASE("the sheet of a small dormer under a pitched roof is 3.60 m off the 3.05 roll") {
    CHECK(dormer().sheet->roll_width_m == 3.05);
    CHECK(dormer().sheet->length_m == Approx(3.6));        // 200 + 3200 + 200
    CHECK(dormer().sheet->needs_across_m == Approx(2.55)); // 150 + 2100 + 300 up the slope
    CHECK(fixed(dormer().sheet->area_m2, 2) == "10.98");
    CHECK(fixed(line(dormer(), "sheet_weight").amount.value(), 1) == "16.5");
    CHECK(line(dormer(), "sheet_weight").remark.empty()); // one person carries it
}

TEST_CASE("the adhesives of a small dormer are one tin of 5 l and two of 1 l") {
    CHECK(amount(dormer(), "field") == "5.22 m2");
    CHECK(amount(dormer(), "deck_adhesive") == "2.871 l");
    CHECK(bought(dormer(), "deck_adhesive") == "1 x 5 for 4900");
    CHECK(amount(dormer(), "contact") == "2.582 m2");
    CHECK(fixed(line(dormer(), "contact_adhesive").amount.value(), 2) == "1.89");
    CHECK(bought(dormer(), "contact_adhesive") == "2 x 1 for 3700"); // one of 2.5 l is 39.00
}

TEST_CASE("the trims of a small dormer: 2.500 + gap + 0.697, and 56 holes in plate and cover") {
    CHECK(trims(dormer(), "cover").runs.front().pieces_mm == std::vector<std::int64_t>{2500, 697});
    CHECK(line(dormer(), "pins").working[0] == "holes of the covers: 25 + 7 = 32");
    CHECK(line(dormer(), "pins").working[1] == "holes of the back plates: 18 + 6 = 24");
    CHECK(line(dormer(), "nails").working[0] == "holes of the kerb trims: 11 + 11 = 22");
}

TEST_CASE("under a pitched roof there is no chase: no sealant for it, no wedges, no wall trim, no hours") {
    for (const char* name : {"chase_sealant", "wedges", "wall", "hours_chase"}) {
        INFO(name);
        CHECK(dormer().line(name) == nullptr);
    }
    CHECK(dormer().line("hours_wall") != nullptr);
}

TEST_CASE("a wall that nobody described is counted with a chase, and the take-off says so") {
    const auto made = taken_off(rectangle(3.2, 2.1, ""));
    CHECK(made.line("wedges") != nullptr);
    CHECK(test::remarks(made) ==
          std::vector<std::string>{"nobody said what the wall at CD is: counted with a chase"});
}

TEST_CASE("a chase that is left out to somebody else is not ordered") {
    auto site = rectangle(3.2, 2.1, "brick");
    site.record("leave_out", "10:00", R"({"why":"the builder points it next week","agreed_by":"x"})", "",
                "chase/CD");
    CHECK(taken_off(site).line("chase_sealant") == nullptr);
}

TEST_CASE("a roof twice as long and wide takes four times the deck and twice the edge") {
    const auto large = taken_off(rectangle(6.4, 4.2, "pitched_roof"));
    const auto number = [](const job::TakeOff& made, const char* name) {
        return line(made, name).amount.value();
    };
    CHECK(number(large, "deck") == Approx(4 * number(dormer(), "deck")));
    CHECK(number(large, "hours_deck") == Approx(4 * number(dormer(), "hours_deck")));
    CHECK(number(large, "foam") == Approx(2 * number(dormer(), "foam")));
    CHECK(number(large, "corner_outer") == number(dormer(), "corner_outer"));
}

TEST_CASE("a roof without a wall has four outer corners, no patch and no stop end") {
    const auto made = taken_off(
        rectangle(3.2, 2.1, "", {{"AB", "gutter"}, {"BC", "kerb"}, {"CD", "kerb"}, {"DA", "kerb"}}));
    CHECK(amount(made, "corner_outer") == "4 piece");
    for (const char* name : {"corner_inner", "stop_end", "flashing_tape", "primer", "hours_wall"}) {
        INFO(name);
        CHECK(made.line(name) == nullptr);
    }
}

TEST_CASE("a sheet whose thickness and density are recorded is weighed by them") {
    auto site = rectangle(3.2, 2.1, "pitched_roof");
    site.record("sheet", "10:00", R"({"batch":"SH-1","thickness_mm":1.5,"density_kg_m3":1200})");
    CHECK(line(taken_off(site), "sheet_weight").amount.value() == Approx(10.98 * 1.5 * 1.2));
}

TEST_CASE("a patch asked for besides takes its own tape") {
    auto site = rectangle(3.2, 2.1, "pitched_roof");
    const double before = line(taken_off(site), "flashing_tape").amount.value();
    site.record("patch", "10:00", R"({"label":"P9","why":"old fixing hole"})", "1.2,0.6");
    CHECK(line(taken_off(site), "flashing_tape").amount.value() == Approx(before + 0.225 * 1.1));
}

TEST_CASE("a roof laid out twice the same comes out the same") {
    const auto first = taken_off(test::ell());
    const auto second = taken_off(test::ell());
    REQUIRE(first.lines.size() == second.lines.size());
    for (std::size_t i = 0; i < first.lines.size(); ++i) {
        CHECK(first.lines[i].name == second.lines[i].name);
        CHECK(first.lines[i].amount == second.lines[i].amount);
        CHECK(first.lines[i].price == second.lines[i].price);
    }
}
