// Acceptance: an L-shaped extension of 27 m² taken off by hand, line by line. Worked with a pencil from the method's allowances
// (practice) and the example's invented prices; each sum stands in the working that the line itself gives.
#include "tests/job/takeoff_site.h"

using namespace undersheet;
using test::amount;
using test::bought;
using test::line;
using test::taken_off;
using test::trims;

namespace {

using Pieces = std::vector<std::int64_t>;

Pieces pieces(const job::TrimCuts& cuts, const std::string& edge) {
    for (const auto& run : cuts.runs)
        if (run.edge == edge) return run.pieces_mm;
    throw std::runtime_error("no run at " + edge);
}

std::vector<Pieces> bars(const job::TrimCuts& cuts) {
    std::vector<Pieces> all;
    for (const auto& bar : cuts.bars) {
        Pieces sorted = bar.pieces_mm;
        std::sort(sorted.rbegin(), sorted.rend());
        all.push_back(sorted);
    }
    std::sort(all.rbegin(), all.rend());
    return all;
}

const job::TakeOff& ell() {
    static const job::TakeOff made = taken_off(test::ell());
    return made;
}

std::int64_t price(const std::string& name) { return line(ell(), name).price.value(); }

} // namespace

TEST_CASE("the sheet of the L is 6.5 m off the 6.10 roll, 39.65 m², and takes two people") {
    CHECK(ell().sheet->needs_along_m == Approx(6.450));  // 200 + 6000 + 250
    CHECK(ell().sheet->needs_across_m == Approx(5.500)); // 150 + 5100 + 250
    CHECK(ell().sheet->roll_width_m == 6.1);
    CHECK(ell().sheet->length_m == Approx(6.5));
    CHECK(amount(ell(), "sheet") == "39.65 m2");
    CHECK(fixed(line(ell(), "sheet_weight").amount.value(), 1) == "59.5");
    CHECK(line(ell(), "sheet_weight").working.front().find("54.7 to 61.9 kg") != std::string::npos);
    CHECK(line(ell(), "sheet_weight").remark.text == "two people");
    CHECK(line(ell(), "sheet").working.back() == "9.15 x 5.50 m = 50.325 m², 493.19");
    CHECK(line(ell(), "sheet").working[3] == "7.60 x 5.50 m = 41.8 m², 409.64"); // dearer
}

TEST_CASE("the areas of the L: band 3.24, ring 0.69, outlet 0.16, field 21.91, contact 7.144 m²") {
    CHECK(amount(ell(), "deck") == "27 m2");
    CHECK(amount(ell(), "perimeter") == "22.2 m");
    CHECK(amount(ell(), "band") == "3.24 m2");
    CHECK(amount(ell(), "rings") == "0.69 m2");
    CHECK(amount(ell(), "squares") == "0.16 m2");
    CHECK(amount(ell(), "field") == "21.91 m2");
    CHECK(amount(ell(), "wall_strips") == "1.44 m2");
    CHECK(amount(ell(), "upstands") == "0.6 m2");
    CHECK(amount(ell(), "gutter_strips") == "0.42 m2");
    CHECK(amount(ell(), "kerb_strips") == "0.594 m2");
    CHECK(amount(ell(), "contact") == "7.144 m2");
}

TEST_CASE("the adhesives of the L are 12.05 l and 5.24 l, and the best packs of each") {
    CHECK(amount(ell(), "deck_adhesive") == "12.0505 l");
    CHECK(bought(ell(), "deck_adhesive") == "1 x 2.5, 1 x 10 for 11800"); // 15 l is 125, 5 + 5 + 2.5 is 127
    CHECK(line(ell(), "deck_adhesive").working == job::Working{"2 faces x 21.91 m² = 43.82 m²",
                                                               "/ 4 m² to the litre = 10.955 l",
                                                               "+ 10 % = 12.0505 l"});
    CHECK(fixed(line(ell(), "contact_adhesive").amount.value(), 2) == "5.24");
    CHECK(bought(ell(), "contact_adhesive") == "1 x 1, 1 x 5 for 8750");
}

TEST_CASE("the patches of the L take 2 m of tape, a quarter of primer and two cartridges") {
    CHECK(amount(ell(), "flashing_tape") == "1.7325 m"); // 1.575 + 10 %
    CHECK(bought(ell(), "flashing_tape") == "2 x 1 for 2900");
    CHECK(line(ell(), "primer").working.front() == "3 places at a wall x 170 x 245 mm");
    CHECK(fixed(line(ell(), "primer").amount.value(), 3) ==
          "0.106"); // 0.4251 m² / 6 = 0.0709 l, half as much again
    CHECK(bought(ell(), "primer") == "1 x 0.25 for 980");
    CHECK(amount(ell(), "lap_sealant") == "1.485 cartridge"); // 6.75 m / 5 = 1.35
    CHECK(bought(ell(), "lap_sealant") == "2 x 1 for 1580");
}

TEST_CASE("the chases of the L take four cartridges and 24 wedges") {
    CHECK(amount(ell(), "chase_sealant") == "1.056 l"); // 0.96 l + 10 %; / 0.31 = 3.41
    CHECK(bought(ell(), "chase_sealant") == "4 x 0.31 for 2480");
    CHECK(amount(ell(), "wedges") == "24 piece");
    CHECK(line(ell(), "wedges").working ==
          job::Working{"DE 3.600 m: 8 spaces, 9", "EF 6.000 m: 14 spaces, 15"});
    CHECK(bought(ell(), "wedges") == "1 x 50 for 850");
}

TEST_CASE("the gutter trims of the L: 2.500 + gap + 1.097 and 2.400, out of three lengths each") {
    for (const std::string item : {"plate", "cover"}) {
        const auto& cuts = trims(ell(), item);
        CHECK(cuts.joint_mm == 3);
        CHECK(pieces(cuts, "AB") == Pieces{2500, 1097});
        CHECK(pieces(cuts, "CD") == Pieces{2400});
        CHECK(bars(cuts) == std::vector<Pieces>{{2500}, {2400}, {1097}});
        CHECK(cuts.is_best);
    }
    CHECK(price("plate") == 3360);
    CHECK(price("cover") == 4380);
}

TEST_CASE("the kerb trims of the L leave no piece under 300 mm, out of three lengths") {
    const auto& cuts = trims(ell(), "kerb");
    CHECK(pieces(cuts, "FA") == Pieces{2500, 2294, 300}); // not 2500, 2500 and 94
    CHECK(pieces(cuts, "BC") == Pieces{1500});
    CHECK(bars(cuts) == std::vector<Pieces>{{2500}, {2294}, {1500, 300}});
    CHECK(price("kerb") == 5070);
}

TEST_CASE("the wall trims of the L lap by 50 mm, out of four lengths") {
    const auto& cuts = trims(ell(), "wall");
    CHECK(cuts.is_lapped);
    CHECK(cuts.joint_mm == 50);
    CHECK(pieces(cuts, "DE") == Pieces{2500, 1150});
    CHECK(pieces(cuts, "EF") == Pieces{2500, 2500, 1100});
    CHECK(bars(cuts) == std::vector<Pieces>{{2500}, {2500}, {2500}, {1150, 1100}});
    CHECK(price("wall") == 4960);
}

TEST_CASE("the L has two outer corners, an inner one, two stop ends and one roll of foam") {
    CHECK(amount(ell(), "corner_outer") == "2 piece");
    CHECK(line(ell(), "corner_outer").working == job::Working{"at A, B"});
    CHECK(price("corner_outer") == 1640);
    CHECK(amount(ell(), "corner_inner") == "1 piece");
    CHECK(price("corner_inner") == 860);
    CHECK(line(ell(), "stop_end").working == job::Working{"at D, F"});
    CHECK(price("stop_end") == 820);
    CHECK(amount(ell(), "foam") == "6.93 m"); // 6.6 + 5 %
    CHECK(bought(ell(), "foam") == "1 x 10 for 990");
}

TEST_CASE("the nails of the L: 60 + 44 + 6 pins and a tenth more, 35 kerb nails and a tenth more") {
    CHECK(line(ell(), "pins").working == job::Working{"holes of the covers: 25 + 11 + 24 = 60",
                                                      "holes of the back plates: 18 + 9 + 17 = 44",
                                                      "3 corner pieces x 2 = 6", "+ 10 % = 121"});
    CHECK(amount(ell(), "pins") == "121 piece");
    CHECK(bought(ell(), "pins") == "2 x 100 for 1280");
    CHECK(line(ell(), "nails").working ==
          job::Working{"holes of the kerb trims: 8 + 13 + 12 + 2 = 35", "+ 10 % = 38.5"});
    CHECK(amount(ell(), "nails") == "39 piece");
    CHECK(bought(ell(), "nails") == "1 x 100 for 720");
}

TEST_CASE("the materials of the L come to 960.77, each line to the penny") {
    const std::vector<std::pair<std::string, std::int64_t>> lines{
        {"sheet", 38857},        {"deck_adhesive", 11800}, {"contact_adhesive", 8750},
        {"flashing_tape", 2900}, {"primer", 980},          {"lap_sealant", 1580},
        {"chase_sealant", 2480}, {"wedges", 850},          {"plate", 3360},
        {"cover", 4380},         {"kerb", 5070},           {"wall", 4960},
        {"corner_outer", 1640},  {"corner_inner", 860},    {"stop_end", 820},
        {"foam", 990},           {"pins", 1280},           {"nails", 720},
        {"outlet", 3800}};
    const auto ordered = ell().of("materials");
    REQUIRE(ordered.size() == lines.size());
    for (std::size_t i = 0; i < lines.size(); ++i) {
        CHECK(ordered[i]->name == lines[i].first);
        CHECK(ordered[i]->price == lines[i].second);
    }
    CHECK(price("materials") == 96077);
}

TEST_CASE("the work of the L is 26.037 hours of one person, about 1¾ days of two") {
    const std::vector<std::pair<std::string, std::string>> hours{
        {"set_up", "1.5"},   {"deck", "2.7"},        {"plate", "0.6"},   {"lay_out", "1.31"},
        {"field", "2.191"},  {"band", "0.756"},      {"wall", "2.88"},   {"chase", "2.4"},
        {"opening_R1", "2"}, {"opening_O1", "1.25"}, {"patches", "2.8"}, {"cover", "0.9"},
        {"kerb", "1.65"},    {"corners", "0.6"},     {"trim_off", "1"},  {"final", "1"},
        {"hand_over", "0.5"}};
    for (const auto& [name, h] : hours) CHECK(amount(ell(), "hours_" + name) == h + " h");
    CHECK(ell().of("labour").size() == hours.size() + 2);
    CHECK(amount(ell(), "hours") == "26.037 h");
    CHECK(amount(ell(), "days") == "1.75 day");
}

TEST_CASE("the price of the L is built up to 2993.98 net and 3592.78 with VAT") {
    CHECK(price("labour") == 98941);
    CHECK(price("access") == 42000);
    CHECK(price("waste") == 6000);
    CHECK(price("delivery") == 4500);
    CHECK(price("overhead") == 29702);
    CHECK(line(ell(), "overhead").working == job::Working{"12 % of 2475.18"});
    CHECK(price("profit") == 22178);
    CHECK(line(ell(), "profit").working == job::Working{"8 % of 2772.20"});
    CHECK(price("net") == 299398);
    CHECK(price("vat") == 59880);
    CHECK(line(ell(), "vat").working ==
          job::Working{"standard rate, 20 % of 2993.98: a whole covering is standard-rated"});
    CHECK(price("total") == 359278);
    CHECK(ell().currency == "GBP");
    CHECK(ell().remarks.empty());
}

TEST_CASE(
    "the last edge may be called from A: with FA recorded as AF the roof is the same, and keeps that name") {
    test::Places edges = test::kEllEdges;
    edges.back().first = "AF";
    auto site = test::ell(edges);
    const auto job = site.fold("18:00");
    REQUIRE(job.roof.closed());
    CHECK(job.roof.corners == std::vector<std::string>{"A", "B", "C", "D", "E", "F"});
    CHECK(job.roof.edge("FA") == job.roof.edge("AF"));
    CHECK(job.roof.edge("FA")->name == "AF");
    const auto made = taken_off(site);
    CHECK(made.areas.deck_m2 == ell().areas.deck_m2);
    REQUIRE(made.lines.size() == ell().lines.size());
    for (const auto& wanted : ell().lines) {
        INFO(wanted.name);
        CHECK(made.line(wanted.name)->amount == wanted.amount);
        CHECK(made.line(wanted.name)->price == wanted.price);
    }
    // Two that run against the others are none that anybody could have meant.
    edges[1].first = "CB";
    CHECK_FALSE(test::ell(edges).fold("18:00").roof.closed());
}
